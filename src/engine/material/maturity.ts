import { listArguments } from '../standards/clause.ts';
import { materialClause } from './material-clause.ts';

/** One reading of the temperature in the concrete; hours rise from reading to reading. */
export interface TemperatureReading {
  readonly hours: number;
  /** °C. */
  readonly temperature: number;
}

/** 0 °C [K]. */
const KELVIN = 273.15;
/** Gas constant [J/(mol K)], CODATA 2018. */
const GAS_CONSTANT = 8.314_462_618;

/**
 * How much faster concrete ages at a temperature than at the reference, exp(−E/R (1/T − 1/T_r)), T in kelvin.
 * Source: ASTM C1074, Arrhenius form (E/R there is Q).
 * @param E apparent activation energy [J/mol]
 * @param T temperature of the concrete [°C]
 * @param T_r reference temperature [°C]
 * @returns rate [-]. Example: 33 500, 40, 20 → 2.406.
 */
export function agingRate(E: number, T: number, T_r: number): number {
  return Math.exp((-E / GAS_CONSTANT) * (1 / (T + KELVIN) - 1 / (T_r + KELVIN)));
}

export const AGING_RATE = materialClause({
  document: 'ASTM C1074',
  edition: '19',
  clause: 'Arrhenius',
  gives: 'rate of aging over that at the reference temperature',
  symbol: 'rate',
  unit: '-',
  formula: 'exp(-E / 8.314462618 * (1 / (T + 273.15) - 1 / (T_r + 273.15)))',
  args: listArguments(
    ['E', 'J/mol', 'apparent activation energy', 2e4, 6e4],
    ['T', '°C', 'temperature of the concrete', -10, 90],
    ['T_r', '°C', 'reference temperature', 5, 40],
  ),
  recalled: true,
  fn: agingRate,
});

/**
 * Equivalent age by Nurse–Saul: the index over what an hour at the reference temperature brings.
 * Source: ASTM C1074, temperature–time factor.
 * @param M temperature–time factor [°C h]
 * @param T_r reference temperature [°C], above the datum
 * @param T_0 datum temperature [°C]
 * @returns equivalent age [h]. Example: 720, 20, 0 → 36.
 */
export function ageFromIndex(M: number, T_r: number, T_0: number): number {
  return M / (T_r - T_0);
}

export const AGE_FROM_INDEX = materialClause({
  document: 'ASTM C1074',
  edition: '19',
  clause: 'Nurse-Saul',
  gives: 'equivalent age at the reference temperature',
  symbol: 't_e',
  unit: 'h',
  formula: 'M / (T_r - T_0)',
  args: listArguments(
    ['M', '°C h', 'temperature-time factor', 0, 1e5],
    ['T_r', '°C', 'reference temperature', 15, 30],
    ['T_0', '°C', 'datum temperature', -12, 5],
  ),
  recalled: true,
  fn: ageFromIndex,
});

/** Sums what a part of the log gives between each two readings. */
function sumSegments(
  log: readonly TemperatureReading[],
  give: (hours: number, from: number, to: number) => number,
): number {
  let sum = 0;
  for (let i = 1; i < log.length; i++) {
    const [before, after] = [log[i - 1]!, log[i]!];
    sum += give(after.hours - before.hours, before.temperature, after.temperature);
  }
  return sum;
}

/**
 * Gives the Nurse–Saul index, the temperature–time factor ∫ max(0, T − T_0) dt [°C h]. Between readings the temperature runs straight;
 * what lies below the datum counts zero, cut exactly where a segment crosses it.
 *
 * - log: at least two readings, hours rising; datum: T_0 [°C]
 * Source: ASTM C1074 (Nurse, Saul). Example: 24 h from 20 to 40 °C, datum 0 → 720 °C h.
 */
export function sumMaturity(log: readonly TemperatureReading[], datum: number): number {
  return sumSegments(log, (hours, from, to) => {
    const [a, b] = [from - datum, to - datum];
    const [low, high] = [Math.min(a, b), Math.max(a, b)];
    if (high <= 0) return 0;
    // The part above the datum is a trapezoid, or a triangle over the share high/(high − low) of the time.
    return low >= 0 ? (hours * (low + high)) / 2 : (hours * high * high) / (2 * (high - low));
  });
}

/** Gauss–Legendre, four points each side of the middle: place in half lengths, and weight. */
const GAUSS: readonly (readonly [place: number, weight: number])[] = [
  [0.183_434_642_495_649_8, 0.362_683_783_378_362],
  [0.525_532_409_916_329, 0.313_706_645_877_887_3],
  [0.796_666_477_413_626_7, 0.222_381_034_453_374_5],
  [0.960_289_856_497_536_2, 0.101_228_536_290_376_3],
];
/** A part of a segment spans at most this much of ln(rate): the eight points are then exact to the last digits. */
const SPAN = 2;

/**
 * Gives the equivalent age by Arrhenius [h]: ∫ rate dt, the temperature running straight between readings. No datum: cold concrete ages
 * slowly, and never not at all.
 *
 * - log: at least two readings, hours rising; E: apparent activation energy [J/mol]; T_r: reference temperature [°C]
 * Source: ASTM C1074; the integral is taken along the straight line in place of the mean temperature of each interval.
 * Example: 10 h at 40 °C, 33 500 J/mol, 20 °C → 24.06 h.
 */
export function sumArrheniusAge(log: readonly TemperatureReading[], E: number, T_r: number): number {
  return sumSegments(log, (hours, from, to) => {
    const span = Math.abs(Math.log(agingRate(E, to, T_r) / agingRate(E, from, T_r)));
    const parts = Math.max(1, Math.ceil(span / SPAN));
    const half = (to - from) / (2 * parts);
    let sum = 0;
    for (let part = 0; part < parts; part++) {
      const middle = from + (2 * part + 1) * half;
      for (const [place, weight] of GAUSS)
        sum += weight * (agingRate(E, middle - place * half, T_r) + agingRate(E, middle + place * half, T_r));
    }
    return (hours * sum) / (2 * parts);
  });
}
