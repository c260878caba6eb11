/** Units that people read. Documents and engine stay in mm, N and MPa. */
export type SpokenUnits = 'metric' | 'US';

/** How lengths [mm], forces [N] and strengths [MPa] are written for people, each with its unit. */
export interface QuantityWriter {
  readonly length: (mm: number) => string;
  readonly force: (newton: number) => string;
  /** A largest load, rounded down: what is written must hold. */
  readonly limit: (newton: number) => string;
  readonly strength: (mpa: number) => string;
}

const MM_PER_INCH = 25.4;
const N_PER_KIP = 4448.2216152605;
const MPA_PER_PSI = 0.006894757293168;

/** Rounding of the engine's search for a largest load. */
const ROUNDING = 1e-9;

function trim(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

function roundDown(value: number, decimals: number): string {
  const scale = 10 ** decimals;
  return (Math.floor(value * (1 + ROUNDING) * scale) / scale).toFixed(decimals);
}

/** Three figures at most, since no concrete is known better. */
function decimalsOf(value: number): number {
  if (Math.abs(value) < 10) return 2;
  return Math.abs(value) < 100 ? 1 : 0;
}

const METRIC: QuantityWriter = {
  length: (mm) => `${trim(mm.toFixed(1))} mm`,
  force: (newton) => `${(newton / 1000).toFixed(decimalsOf(newton / 1000))} kN`,
  limit: (newton) => `${roundDown(newton / 1000, decimalsOf(newton / 1000))} kN`,
  strength: (mpa) => `${trim(mpa.toFixed(1))} MPa`,
};

const US: QuantityWriter = {
  length: (mm) => `${trim((mm / MM_PER_INCH).toFixed(2))} in`,
  force: (newton) => `${(newton / N_PER_KIP).toFixed(decimalsOf(newton / N_PER_KIP))} kip`,
  limit: (newton) => `${roundDown(newton / N_PER_KIP, decimalsOf(newton / N_PER_KIP))} kip`,
  strength: (mpa) => `${Math.round(mpa / MPA_PER_PSI)} psi`,
};

/** The writer of a person's units. Example: metric, 6300 N → `6.30 kN`; US, 25.4 mm → `1 in`. */
export function writerOf(units: SpokenUnits): QuantityWriter {
  return units === 'US' ? US : METRIC;
}
