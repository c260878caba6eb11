import type { HoldingMethodName, HoldingPlace } from '../../engine/form/holding-methods.ts';
import { findUsualScatter } from '../../engine/form/holding-scatter.ts';
import { findChance, findSlackForChance } from '../../engine/tolerance/hole-for-chance.ts';
import type { ScatteredHole } from '../../engine/tolerance/scatter-space.ts';
import { type BoltInHole, readHole } from '../yard/fit-plate.ts';
import type { Deviation } from './deviations.ts';
import type { Learned } from './learn-scatter.ts';

/** A bolt of a plate, and how its insert is held. */
export interface ChanceBolt extends BoltInHole {
  readonly context: Pick<Deviation['context'], 'method' | 'place'>;
}

/** How an insert is taken to scatter [mm], and where that is from. */
export interface TakenScatter {
  readonly sigma: number;
  readonly from: 'the yard' | 'common practice';
  /** Inserts that it was learned from; of common practice the number that there were: too few. */
  readonly count: number;
}

/** Whether the plate goes on first time. */
export interface PlateChance {
  readonly fits: number;
  readonly standardError: number;
  readonly target: number;
  /** What must be for the target: nothing; all holes with one diameter over the bolt [mm], slots as long as they are; or no hole would do. */
  readonly needs:
    | { readonly kind: 'nothing' }
    | { readonly kind: 'holes'; readonly overBolt: number }
    | { readonly kind: 'no hole' };
  /** Of each bolt. */
  readonly scatter: readonly TakenScatter[];
}

const EFFORT = { seed: 1, enough: 1e-3, most: 256 } as const;
const TARGET = 0.99;

/**
 * Scatter of an insert held by a method at a place: the yard's own where enough were surveyed, else where enough were taped, else what is common practice.
 * The yard's own is that of the inserts of a connection about their own middle where enough lie together: what moves them together moves the plate, too.
 * Null: no method is known, so that there is nothing to take.
 */
export function takeScatter({ groups }: Pick<Learned, 'groups'>, context: ChanceBolt['context']): TakenScatter | null {
  const { method, place } = context;
  if (method === null) return null;
  const own = groups.filter(({ by, value }) => by === 'method' && value === method);
  const most = Math.max(0, ...own.map(({ count }) => count));
  const learned =
    own.find(({ source, found }) => source === 'surveyed' && found !== null) ?? own.find(({ found }) => found !== null);
  if (learned?.found === undefined || learned.found === null)
    return {
      sigma: findUsualScatter(method, spreadPlace(method, place)).position,
      from: 'common practice',
      count: most,
    };
  const { x, y, apart } = learned.found;
  if (apart !== null) return { sigma: apart.sigma, from: 'the yard', count: apart.count };
  return { sigma: Math.hypot(x.deviation, y.deviation) / Math.SQRT2, from: 'the yard', count: learned.count };
}

/** A board that moves as a whole takes its plate along: what is left are its holes to each other, which are drilled alike wherever it lies. */
function spreadPlace(method: HoldingMethodName, place: HoldingPlace): HoldingPlace {
  return method === 'template board' ? 'mould face' : place;
}

/**
 * Chance that a plate goes on first time, free to shift and turn, and how much larger its holes must be for 99 of 100. Inserts of one connection are taken to
 * scatter each by itself: what moves them together moves the plate, too.
 * @returns null: fewer than two bolts, or of one no way of holding is known
 */
export function findPlateChance(bolts: readonly ChanceBolt[], learned: Pick<Learned, 'groups'>): PlateChance | null {
  const scatter = bolts.flatMap(({ context }) => takeScatter(learned, context) ?? []);
  if (bolts.length < 2 || scatter.length < bolts.length) return null;
  const holes: readonly ScatteredHole[] = bolts.map((bolt, i) => ({
    ...readHole(bolt),
    sigma: Math.max(scatter[i]!.sigma, LEAST_SIGMA),
  }));
  const { fits, standardError } = findChance(holes, EFFORT);
  return { ...{ fits, standardError, target: TARGET, scatter }, needs: findNeeds(holes, fits) };
}

function findNeeds(holes: readonly ScatteredHole[], fits: number): PlateChance['needs'] {
  if (fits >= TARGET) return { kind: 'nothing' };
  const slack = findSlackForChance(holes, TARGET, { ...EFFORT, enough: 0, most: 64 });
  return slack === null ? { kind: 'no hole' } : { kind: 'holes', overBolt: 2 * slack };
}

/** A scatter of nothing has no distribution [mm]. */
const LEAST_SIGMA = 0.01;
