import { meanStrength } from './concrete-class.ts';
import { characteristicAtAge, hardeningRatio, hyperbolicRatio, meanStrengthAtAge } from './hardening.ts';

/** Cement by how fast it hardens: rapid, normal, slow (EN 1992-1-1, 3.1.2(6)). */
export type CementClass = 'R' | 'N' | 'S';

/** Names of the cement classes of EN 1992-1-1. */
export const CEMENT_CLASSES = ['R', 'N', 'S'] as const satisfies readonly CementClass[];

/** Cement and curing of ACI 209R-92. */
export type AciCuring = 'ACI type I moist' | 'ACI type III moist' | 'ACI type I steam' | 'ACI type III steam';

/** Names of the cement and curing pairs of ACI 209R-92. */
export const ACI_CURINGS = [
  'ACI type I moist',
  'ACI type III moist',
  'ACI type I steam',
  'ACI type III steam',
] as const satisfies readonly AciCuring[];

/** s of β_cc. Source: EN 1992-1-1:2004, 3.1.2(6). */
const CEMENT_COEFFICIENTS: Readonly<Record<CementClass, number>> = { R: 0.2, N: 0.25, S: 0.38 };

/** a [days] and b. Source: ACI 209R-92, Table 2.2.1, recalled: confirm in print. */
const ACI_CONSTANTS: Readonly<Record<AciCuring, readonly [a: number, b: number]>> = {
  'ACI type I moist': [4, 0.85],
  'ACI type III moist': [2.3, 0.92],
  'ACI type I steam': [1, 0.95],
  'ACI type III steam': [0.7, 0.98],
};

/** Gives s of β_cc [-] for a class of cement. Example: N → 0.25. */
export function findCementCoefficient(cement: CementClass): number {
  return CEMENT_COEFFICIENTS[cement];
}

/** Gives a [days] and b [-] of t/(a + b t). Example: type I, moist → 4 and 0.85. */
export function findAciConstants(curing: AciCuring): readonly [a: number, b: number] {
  return ACI_CONSTANTS[curing];
}

/** Concrete of one age: its strength over that at 28 days, and strengths [MPa]; null where the model gives none. */
export interface AgedStrength {
  readonly ratio: number;
  readonly mean: number | null;
  readonly characteristic: number | null;
  readonly notes: readonly string[];
}

/** Up to this age [days] EN 1992-1-1 wants tests in place of f_cm(t) − 8. */
const YOUNGEST = 3;
const FULL_AGE = 28;

/**
 * Gives the strength at an age by EN 1992-1-1:2004, 3.1.2, for concrete kept at 20 °C.
 *
 * - f_ck: characteristic cylinder strength at 28 days [MPa]; t: age [days]
 * Range: f_ck 12 to 90 MPa, t above 0. Characteristic strength null up to 3 days; never above f_ck from 28 days on.
 * Example: C40/50, N, 7 days → 0.7788, 37.38 MPa, 29.38 MPa.
 */
export function strengthByEurocode(f_ck: number, cement: CementClass, t: number): AgedStrength {
  const ratio = hardeningRatio(findCementCoefficient(cement), t);
  const mean = meanStrengthAtAge(ratio, meanStrength(f_ck));
  const kept = 'for concrete kept at 20 °C: cold or heated concrete has the age that its temperature log gives';
  if (t <= YOUNGEST)
    return {
      ratio,
      mean,
      characteristic: null,
      notes: [`${nameDays(t)}: up to 3 days f_ck(t) needs a test (3.1.2(5))`, kept],
    };
  if (t < FULL_AGE) return { ratio, mean, characteristic: characteristicAtAge(mean), notes: [kept] };
  return {
    ratio,
    mean,
    characteristic: f_ck,
    notes: t > FULL_AGE ? ['f_ck is not raised beyond 28 days (3.1.2(5)); the mean strength goes on growing'] : [],
  };
}

/**
 * Gives the strength at an age by ACI 209R-92, 2.2.1: the ratio applies to f'c; the report gives no mean strength.
 *
 * - strength28: f'c at 28 days [MPa]; t: age [days]
 * Range: t above 0. Example: 40 MPa, type I moist, 7 days → 0.7035, 28.14 MPa.
 */
export function strengthByAci(strength28: number, curing: AciCuring, t: number): AgedStrength {
  const ratio = hyperbolicRatio(...findAciConstants(curing), t);
  return {
    ratio,
    mean: null,
    characteristic: ratio * strength28,
    notes: [
      `f'c(t) of ACI 209R-92 is a prediction (constants recalled, confirm in print): before lifting or loading a test decides`,
      ...(t > FULL_AGE ? ['beyond 28 days the prediction lies above the specified strength'] : []),
    ],
  };
}

/** An age in words. Example: 1 → "1 day", 7 → "7 days". */
export function nameDays(t: number): string {
  return `${t} ${t === 1 ? 'day' : 'days'}`;
}

/** What a tested mean strength is, seen from the strength at 28 days. */
export interface TestedStrength {
  readonly kind: 'plausible' | 'low' | 'high';
  /** The mean strengths that slow and rapid cements give at that age [MPa]. */
  readonly low: number;
  readonly high: number;
  /** The characteristic strength that follows [MPa], at most f_ck; null up to 3 days, where EN 1992-1-1 gives none, and where nothing is left. */
  readonly characteristic: number | null;
}

/**
 * Tells whether a strength tested at an age fits that at 28 days. The result of tests is a mean, so it is held against f_cm(t) of the slowest
 * and the fastest class of cement. No proof of anything: heated, cold or accelerated concrete may well lie outside.
 *
 * - f_ck: at 28 days [MPa]; t: age [days]; tested: mean strength of cylinders [MPa]
 * Source: common practice on EN 1992-1-1:2004, 3.1.2. Example: C40/50, 7 days, 36 MPa → plausible, 32.8 to 39.3 MPa, f_ck(t) = 28 MPa.
 */
export function judgeTestedStrength(f_ck: number, t: number, tested: number): TestedStrength {
  const means = CEMENT_CLASSES.map((cement) =>
    meanStrengthAtAge(hardeningRatio(findCementCoefficient(cement), t), meanStrength(f_ck)),
  );
  const [low, high] = [Math.min(...means), Math.max(...means)];
  const below = characteristicAtAge(tested);
  const characteristic = t <= YOUNGEST || below <= 0 ? null : Math.min(f_ck, below);
  if (tested < low) return { kind: 'low', low, high, characteristic };
  return { kind: tested > high ? 'high' : 'plausible', low, high, characteristic };
}
