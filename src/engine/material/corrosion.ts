import { listArguments } from '../standards/clause.ts';
import { materialClause } from './material-clause.ts';

/** Corrosivity category of the atmosphere (ISO 9223), mildest first. */
export type CorrosionCategory = 'C1' | 'C2' | 'C3' | 'C4' | 'C5' | 'CX';

/** Names of the categories, mildest first. */
export const CORROSION_CATEGORIES = [
  'C1',
  'C2',
  'C3',
  'C4',
  'C5',
  'CX',
] as const satisfies readonly CorrosionCategory[];

/** Loss in the first year [µm]: between these in that category. */
export interface LossRange {
  readonly low: number;
  readonly high: number;
}

/** Loss of zinc in the first year. Source: ISO 9223:2012, Table 2; CX recalled: confirm in print. */
const ZINC_LOSS: Readonly<Record<CorrosionCategory, LossRange>> = {
  C1: { low: 0, high: 0.1 },
  C2: { low: 0.1, high: 0.7 },
  C3: { low: 0.7, high: 2.1 },
  C4: { low: 2.1, high: 4.2 },
  C5: { low: 4.2, high: 8.4 },
  CX: { low: 8.4, high: 25 },
};

/** Loss of carbon steel in the first year. Source: ISO 9223:2012, Table 2. */
const STEEL_LOSS: Readonly<Record<CorrosionCategory, LossRange>> = {
  C1: { low: 0, high: 1.3 },
  C2: { low: 1.3, high: 25 },
  C3: { low: 25, high: 50 },
  C4: { low: 50, high: 80 },
  C5: { low: 80, high: 200 },
  CX: { low: 200, high: 700 },
};

/** Gives the loss of zinc in the first year [µm]. Example: C3 → 0.7 to 2.1. */
export function findZincLoss(category: CorrosionCategory): LossRange {
  return ZINC_LOSS[category];
}

/** Gives the loss of bare carbon steel in the first year [µm]. Example: C3 → 25 to 50. */
export function findSteelLoss(category: CorrosionCategory): LossRange {
  return STEEL_LOSS[category];
}

/**
 * Life of a zinc coating at a steady loss, thickness/rate.
 * Source: ISO 14713-1, with the first-year losses of ISO 9223 taken for every year.
 * @param d thickness of the zinc [µm]
 * @param r loss a year [µm], above 0
 * @returns life [years]. Example: 85, 2.1 → 40.48.
 */
function yearsOfZinc(d: number, r: number): number {
  return d / r;
}

export const YEARS_OF_ZINC = materialClause({
  document: 'ISO 14713-1',
  edition: '2017',
  clause: 'life to first maintenance',
  gives: 'life of a zinc coating at a steady loss',
  symbol: 'years',
  unit: 'years',
  formula: 'd / r',
  args: listArguments(['d', 'µm', 'thickness of the zinc', 0, 200], ['r', 'µm', 'loss a year', 0.1, 25]),
  recalled: true,
  fn: yearsOfZinc,
});

/** How long a zinc coating lasts [years]; the longest is null where the category's lowest loss is nothing. */
export interface CoatingLife {
  readonly shortest: number;
  readonly longest: number | null;
}

/**
 * Gives the shortest and longest life of a zinc coating where air and rain reach it, at the highest and lowest loss of the category.
 *
 * - thickness: of the zinc [µm], 0 or more
 * Range: 0 without coating. C1: longest null, since its lowest loss is 0. Example: 85 µm in C4 → 20.2 to 40.5 years.
 */
export function coatingLife(thickness: number, category: CorrosionCategory): CoatingLife {
  if (thickness === 0) return { shortest: 0, longest: 0 };
  const { low, high } = findZincLoss(category);
  return { shortest: yearsOfZinc(thickness, high), longest: low === 0 ? null : yearsOfZinc(thickness, low) };
}

/** How a life compares with the one that is wanted: surely, perhaps, or surely not. */
export type LifeVerdict = 'lasts' | 'may fall short' | 'falls short';

/** Compares a life with the one that is wanted [years]. Example: 20 to 40 years, wanted 50 → falls short. */
export function judgeLife({ shortest, longest }: CoatingLife, wanted: number): LifeVerdict {
  if (shortest >= wanted) return 'lasts';
  return longest !== null && longest < wanted ? 'falls short' : 'may fall short';
}

/** Years in words: cut off, never rounded up; tenths below 10. Example: 6.547 to 13.09 → "6.5 to 13 years". */
export function describeLife({ shortest, longest }: CoatingLife): string {
  if (longest === null) return `${cutYears(shortest)} years or more`;
  const [from, to] = [cutYears(shortest), cutYears(longest)];
  return from === to ? `${from} years` : `${from} to ${to} years`;
}

function cutYears(years: number): string {
  return years < 10 ? String(Math.floor(10 * years) / 10) : String(Math.floor(years));
}
