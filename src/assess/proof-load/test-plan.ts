/** What proof-load tests of inserts are planned from. Given by the engineer; null: what is common practice is taken, and said. */
export interface ProofLoadGiven {
  /** Inserts of one type, concrete and way of placing: what a sample stands for. */
  readonly lot: number;
  /** Design tension of the insert [kN]. */
  readonly design: number;
  /** Limits of the steel [kN]: yield of bolt, of body and thread, the least. */
  readonly steelYield: number;
  /** Depth that the cone starts from [mm]. */
  readonly depth: number;
  /** Clear distance of the bridge's feet from the insert's axis [mm]. */
  readonly support: number;
  readonly count: number | null;
  /** Test load over design load. */
  readonly factor: number | null;
  /** How long the load is held [s]. */
  readonly hold: number | null;
  /** Displacement at the end of the hold, at most [mm]. */
  readonly displacement: number | null;
}

/** A number of the plan, and whose it is. */
export interface PlanValue {
  readonly value: number;
  readonly from: 'engineer' | 'common practice';
}

/** What is tested, and how. */
export interface ProofLoadPlan {
  readonly count: PlanValue;
  /** [kN] */
  readonly load: PlanValue;
  /** What the steel may see: no insert is pulled harder [kN]. */
  readonly most: number;
  /** The load is cut down to what the steel may see. */
  readonly isCutBySteel: boolean;
  readonly hold: PlanValue;
  readonly displacement: PlanValue;
  /** The bridge stands in the cone: it holds the concrete down, and the cone is not tested. */
  readonly isConfined: boolean;
  /** Least distance of the feet for a test of the cone [mm]. */
  readonly supportNeeded: number;
  /** What no failure among that many shows: at most this share of the lot fails, with 90 % confidence. */
  readonly shown: number;
}

/** Common practice where the engineer gives nothing: one in forty and five at least; 1.25 times the design load, held for a minute, 0.1 mm at most. */
const USUAL = { share: 0.025, least: 5, factor: 1.25, hold: 60, displacement: 0.1 } as const;
/** A proof load stays below that share of the steel's yield. Common practice. */
const STEEL_SHARE = 0.9;
/** Feet that far from the axis, in depths, leave the cone of 1 : 1.5 free. The cone's half width is 1.5 depths (EN 1992-4, 7.2.1.4). */
const CONE = 1.5;
const CONFIDENCE = 0.9;

/** Plans proof-load tests. Whoever tests stands clear of the line of pull. */
export function planProofLoad(given: ProofLoadGiven): ProofLoadPlan {
  const take = (own: number | null, usual: number): PlanValue =>
    own === null ? { value: usual, from: 'common practice' } : { value: own, from: 'engineer' };
  const count = take(given.count, Math.min(given.lot, Math.max(USUAL.least, Math.ceil(USUAL.share * given.lot))));
  const factor = take(given.factor, USUAL.factor);
  const most = STEEL_SHARE * given.steelYield;
  const wanted = factor.value * given.design;
  const supportNeeded = CONE * given.depth;
  return {
    count,
    load: { value: Math.min(wanted, most), from: factor.from },
    most,
    isCutBySteel: wanted > most,
    hold: take(given.hold, USUAL.hold),
    displacement: take(given.displacement, USUAL.displacement),
    isConfined: given.support < supportNeeded,
    supportNeeded,
    shown: findShareShown(Math.min(count.value, given.lot), given.lot, CONFIDENCE),
  };
}

/**
 * What passing tests show of a lot that they are drawn from at random: the largest share of failing ones that would still pass with more than 1 − confidence.
 * Source: sampling by attributes with acceptance number 0 (textbooks): hypergeometric, C(N − D, n)/C(N, n).
 * @example 20 of 1000, 90 % → 0.108
 */
export function findShareShown(count: number, lot: number, confidence: number): number {
  let failing = 0;
  while (failing < lot && chanceNoneMet(failing + 1, count, lot) > 1 - confidence) failing += 1;
  return lot === 0 ? 1 : failing / lot;
}

function chanceNoneMet(failing: number, count: number, lot: number): number {
  let chance = 1;
  for (let drawn = 0; drawn < count; drawn += 1) chance *= Math.max(0, lot - failing - drawn) / (lot - drawn);
  return chance;
}
