import type { Finish } from '../material/finish.ts';

/** Range of the nut factor K, T = K d F. */
export interface NutFactorRange {
  readonly least: number;
  readonly greatest: number;
}

/** What books say about K for a finish. */
export interface PublishedNutFactors extends NutFactorRange {
  readonly source: string;
}

/**
 * Two handbooks differ for the same finish, so K is a range. Galvanised: no value at hand. Stainless: lubricated, as it must be.
 */
const published: Readonly<Record<Finish, PublishedNutFactors | null>> = {
  plain: { least: 0.2, greatest: 0.3, source: 'Bickford & Nassar bare steel, Shigley non-plated; second hand' },
  zinc: { least: 0.2, greatest: 0.295, source: 'Shigley, Bickford & Nassar dry; second hand' },
  galvanised: null,
  stainless: { least: 0.12, greatest: 0.18, source: 'Shigley anti-seize and lubricated; recalled' },
};

/** Gives the published range of K for the bolt's finish; null where none is at hand. Example: zinc → 0.2 to 0.295. */
export function findPublishedNutFactors(finish: Finish): PublishedNutFactors | null {
  return published[finish];
}

/** A torque wrench's tension scatters about that of the nominal K by up to so much: Bickford, 25 to 35 % (recalled). */
const WRENCH_SCATTER = 0.35;

/**
 * Gives the range in which K must be expected around a nominal value: that of the wrench's scatter in tension, K/(1 ± 0.35), widened by
 * the published range for the finish. Example: zinc, 0.2 → 0.148 to 0.308.
 */
export function expectNutFactors(nominal: number, finish: Finish): NutFactorRange {
  const book = published[finish];
  return {
    least: Math.min(nominal / (1 + WRENCH_SCATTER), book?.least ?? nominal),
    greatest: Math.max(nominal / (1 - WRENCH_SCATTER), book?.greatest ?? nominal),
  };
}
