import { movePoint, type Pose } from '../../engine/survey/pose.ts';
import { dot, lengthOf, minus, multiply, transpose, type Vector } from '../../engine/survey/vector.ts';
import { isNamedAlike } from './match-names.ts';
import { FARTHEST, type Settled, settleMatching } from './match-refine.ts';
import { type Laid, layByBases } from './match-search.ts';

/** A point of the design that may have been surveyed. Places in mm, all of two or all of three numbers. */
export interface DesignPoint {
  /** Permanent key of an insert, or what a control is called by. */
  readonly key: string;
  /** What people call it: the insert's number, the control's name. */
  readonly number: string;
  readonly at: Vector;
  readonly kind: 'insert' | 'control';
  /** Unit vector out of the concrete, where it has an axis on which a second point may have been taken. */
  readonly out?: Vector;
}

/** A point as the instrument has it. */
export interface SurveyedPoint {
  readonly name: string | null;
  readonly at: Vector;
}

/** A suggestion: this surveyed point is that designed one. */
export interface MatchedPair {
  readonly key: string;
  /** Index of the surveyed point. */
  readonly surveyed: number;
  /** How far apart they lie once all pairs are laid on each other as well as they go [mm]. */
  readonly off: number;
  readonly isNamedAlike: boolean;
}

/** One way in which the points may belong together. */
export interface Matching {
  readonly pose: Pose;
  readonly pairs: readonly MatchedPair[];
  /** Root mean square of what the pairs are off [mm]. */
  readonly rms: number;
}

/** What the points say of which is which. Always confirmed by a person. */
export interface MatchAnswer {
  /**
   * `clear`: one way fits a hundred times better than any other. `cannot tell`: others fit as well, as with patterns that look the same the
   * other way round; names may have chosen. `none`: no way lays enough of them on each other.
   */
  readonly state: 'clear' | 'cannot tell' | 'none';
  /** What chose between the best way and the next. */
  readonly by: 'geometry' | 'names';
  /** How probable the best way is beside the next one alone, 0 to 1. */
  readonly confidence: number;
  readonly best: Matching | null;
  readonly runnerUp: Matching | null;
  /** A second point on the axis of a matched insert, on a rod screwed in; `along` out of the face positive [mm]. */
  readonly seconds: readonly { readonly key: string; readonly surveyed: number; readonly along: number }[];
  readonly unmatchedDesign: readonly string[];
  readonly unmatchedSurveyed: readonly number[];
  /** The mirror image of the surveyed points fits far better: measured from the other face, or east and north exchanged. Nothing is matched by it. */
  readonly isMirrored: boolean;
}

/** A way fits so much better that it is a hundred times as probable: 2 ln 100. */
const HUNDRED_TIMES = 2 * Math.log(100);
/** A name that agrees counts as ten times as probable; three of them say all that names can. */
const A_NAME = 2 * Math.log(10);
const MOST_NAMES = 3;
/** Nothing is measured better than this [mm], so that two ways that both fit to it fit alike. */
const FLOOR = 2;
/** Fewer pairs than this share of what could be paired are chance. */
const LEAST_SHARE = 0.4;
/** No better way is looked for when one pairs this share, or when the best was found again from so many bases. */
const ENOUGH = 0.7;
const AGAIN = 3;
/** From so many bases among its own points other ways of laying them are looked for, and from so many a mirror image. */
const OWN_BASES = 6;
const MIRROR_BASES = 16;
/** What a way scores roughly, beside the best and beside what could be paired, for it to be looked at closely. */
const WORTH_A_LOOK = 0.6;
const WORTH_ANYTHING = 0.2;
/** Two ways that differ in a smaller share of their pairs are one. */
const OTHER_WAY = 0.25;
/** A fit this good [mm] asks for no mirror. */
const GOOD = 25;
/** A rod is not shorter and not longer than this [mm], and leans less than 15°. */
const ROD: readonly [number, number] = [15, 500];
const ROD_LEAN = Math.cos((15 * Math.PI) / 180);

/** A way with what it costs: squares of what is off, what could not be paired counting as far off. */
interface Costed {
  readonly matching: Matching;
  readonly cost: number;
  readonly freedom: number;
  readonly names: number;
}

/**
 * Suggests which surveyed point is which designed one, by the distances between them: rigid, no scale, no mirror, with extra and missing points and
 * points up to 30 mm off. Names that resemble numbers choose only where geometry cannot.
 */
export function matchPoints(design: readonly DesignPoint[], surveyed: readonly SurveyedPoint[]): MatchAnswer {
  const ways = findWays(design, surveyed, Number.POSITIVE_INFINITY);
  const best = ways[0];
  const most = Math.min(design.length, surveyed.length);
  const isMirrored = askMirror(design, surveyed, best, most);
  if (best === undefined || best.matching.pairs.length < LEAST_SHARE * most)
    return describeNone(design, surveyed, isMirrored);
  return describe(design, surveyed, ways, isMirrored);
}

/** Ways found so far, by their pairs. */
class Ways {
  private readonly found = new Map<string, Costed>();
  private bestScore: number;

  constructor(
    private readonly design: readonly DesignPoint[],
    private readonly surveyed: readonly SurveyedPoint[],
  ) {
    this.bestScore = WORTH_ANYTHING * Math.min(design.length, surveyed.length);
  }

  /** Looks closely at the ways of one base that may be as good as the best; the best of them, if any is. */
  look(kept: readonly Laid[], isTurned: boolean): Costed | null {
    const [places, points] = [this.design.map(({ at }) => at), this.surveyed.map(({ at }) => at)];
    this.bestScore = Math.max(this.bestScore, kept[0]?.score ?? 0);
    let best: Costed | null = null;
    for (const { pose, score } of kept) {
      if (score < WORTH_A_LOOK * this.bestScore) break;
      const settled = settleMatching(places, points, isTurned ? turnRound(pose) : pose);
      if (settled === null) continue;
      const name = settled.pairs
        .map((pair) => `${pair.design}:${pair.surveyed}`)
        .sort()
        .join(' ');
      const way = this.found.get(name) ?? costOf(this.design, this.surveyed, settled);
      this.found.set(name, way);
      if (best === null || way.cost < best.cost) best = way;
    }
    return best;
  }

  /** The best first. */
  list(): readonly Costed[] {
    return [...this.found.values()].sort((a, b) => a.cost - b.cost);
  }
}

/** The ways that fit best, and whatever fits nearly as well; from so many bases at most. */
function findWays(
  design: readonly DesignPoint[],
  surveyed: readonly SurveyedPoint[],
  mostBases: number,
): readonly Costed[] {
  const [places, points] = [design.map(({ at }) => at), surveyed.map(({ at }) => at)];
  if (places.length === 0 || points.length === 0) return [];
  // The smaller set is the base: most of it has its like in the other.
  const isTurned = places.length > points.length;
  const most = Math.min(places.length, points.length);
  const ways = new Ways(design, surveyed);
  let [tried, again, leader]: [number, number, Costed | null] = [0, 0, null];
  for (const kept of isTurned ? layByBases(points, places) : layByBases(places, points)) {
    const way = ways.look(kept, isTurned);
    tried += 1;
    if (way !== null && (leader === null || way.cost < leader.cost)) [leader, again] = [way, 0];
    else if (way !== null && way === leader) again += 1;
    const pairs = leader?.matching.pairs.length ?? 0;
    if (pairs >= ENOUGH * most || (pairs >= LEAST_SHARE * most && again >= AGAIN) || tried >= mostBases) break;
  }
  if (leader === null) return [];
  // Another way of laying the same points need not lay any on the bases so far: their own bases find it.
  const own = leader.matching.pairs.map((pair) => points[pair.surveyed]!);
  let left = OWN_BASES;
  for (const kept of layByBases(own, places)) {
    ways.look(kept, true);
    left -= 1;
    if (left === 0) break;
  }
  return ways.list();
}

/** The movement back. */
function turnRound({ rotation, shift }: Pose): Pose {
  const back = transpose(rotation);
  return { rotation: back, shift: multiply(back, shift).map((value) => 0 - value) };
}

function costOf(design: readonly DesignPoint[], surveyed: readonly SurveyedPoint[], { pose, pairs }: Settled): Costed {
  const matched = pairs.map(
    ({ design: i, surveyed: j, off }): MatchedPair => ({
      key: design[i]!.key,
      surveyed: j,
      off,
      isNamedAlike: isNamedAlike(design[i]!.number, surveyed[j]!.name),
    }),
  );
  const squares = pairs.reduce((sum, { off }) => sum + off ** 2, 0);
  const size = design[0]!.at.length;
  const most = Math.min(design.length, surveyed.length);
  return {
    matching: { pose, pairs: matched, rms: Math.sqrt(squares / Math.max(1, pairs.length)) },
    cost: squares + (most - pairs.length) * FARTHEST ** 2 + most * FLOOR ** 2,
    freedom: Math.max(0, size * most - (size === 2 ? 3 : 6)),
    names: matched.filter((pair) => pair.isNamedAlike).length,
  };
}

/** How much better one way fits than another, as twice the logarithm of how much more probable it is. */
function gain(better: Costed, worse: Costed): number {
  return better.freedom * Math.log(worse.cost / better.cost);
}

function isOtherWay(a: Costed, b: Costed): boolean {
  const partner = new Map(a.matching.pairs.map(({ key, surveyed }) => [key, surveyed]));
  const others = b.matching.pairs.filter(({ key, surveyed }) => partner.get(key) !== surveyed).length;
  return others >= Math.max(1, OTHER_WAY * b.matching.pairs.length);
}

function describe(
  design: readonly DesignPoint[],
  surveyed: readonly SurveyedPoint[],
  ways: readonly Costed[],
  isMirrored: boolean,
): MatchAnswer {
  const first = ways[0]!; // the caller has looked
  // Names choose among ways that geometry cannot tell from the best.
  const alike = ways.filter((way) => gain(first, way) < HUNDRED_TIMES);
  const chosen = alike.reduce((best, way) => (weigh(way, first) > weigh(best, first) ? way : best), first);
  const second = ways
    .filter((way) => isOtherWay(chosen, way))
    .reduce<Costed | null>((best, way) => (best === null || weigh(way, first) > weigh(best, first) ? way : best), null);
  const lead = second === null ? Number.POSITIVE_INFINITY : weigh(chosen, first) - weigh(second, first);
  const byNames = second !== null && gain(chosen, second) < HUNDRED_TIMES && chosen.names > second.names;
  const { matching } = chosen;
  const seconds = findSeconds(design, surveyed, matching);
  const used = new Set([...matching.pairs, ...seconds].map((pair) => pair.surveyed));
  const paired = new Set(matching.pairs.map(({ key }) => key));
  return {
    state: lead >= HUNDRED_TIMES && chosen.freedom > 0 ? 'clear' : 'cannot tell',
    by: byNames ? 'names' : 'geometry',
    confidence: 1 / (1 + Math.exp(-lead / 2)),
    best: matching,
    runnerUp: second?.matching ?? null,
    seconds,
    unmatchedDesign: design.flatMap(({ key }) => (paired.has(key) ? [] : [key])),
    unmatchedSurveyed: surveyed.flatMap((_, i) => (used.has(i) ? [] : [i])),
    isMirrored,
  };
}

/** How probable a way is beside the one that fits best, by geometry and by names, as twice a logarithm. */
function weigh(way: Costed, first: Costed): number {
  return A_NAME * Math.max(-MOST_NAMES, Math.min(MOST_NAMES, way.names - first.names)) - gain(first, way);
}

/** Whether the mirror image of what was surveyed fits so much better that it must be one. */
function askMirror(
  design: readonly DesignPoint[],
  surveyed: readonly SurveyedPoint[],
  best: Costed | undefined,
  most: number,
): boolean {
  if (best !== undefined && best.matching.pairs.length >= 0.9 * most && best.matching.rms <= GOOD) return false;
  const image = findWays(
    design,
    surveyed.map(({ name, at }) => ({ name, at: at.map((value, k) => (k === 0 ? 0 - value : value)) })),
    MIRROR_BASES,
  )[0];
  if (image === undefined || image.matching.pairs.length < LEAST_SHARE * most) return false;
  return best === undefined || gain(image, best) >= HUNDRED_TIMES;
}

/** Points that are nobody's and lie on the axis of a matched insert. */
function findSeconds(
  design: readonly DesignPoint[],
  surveyed: readonly SurveyedPoint[],
  { pose, pairs }: Matching,
): MatchAnswer['seconds'] {
  const taken = new Set(pairs.map((pair) => pair.surveyed));
  return pairs.flatMap((pair) => {
    const out = design.find(({ key }) => key === pair.key)?.out;
    if (out === undefined) return [];
    const top = movePoint(pose, surveyed[pair.surveyed]!.at);
    const rods = surveyed.flatMap(({ at }, i) => {
      const way = minus(movePoint(pose, at), top);
      const [length, along] = [lengthOf(way), dot(way, out)];
      const isRod = length >= ROD[0] && length <= ROD[1] && Math.abs(along) >= ROD_LEAN * length;
      return isRod && !taken.has(i) ? [{ key: pair.key, surveyed: i, along }] : [];
    });
    rods.sort((a, b) => Math.abs(a.along) - Math.abs(b.along));
    return rods.slice(0, 1);
  });
}

function describeNone(
  design: readonly DesignPoint[],
  surveyed: readonly SurveyedPoint[],
  isMirrored: boolean,
): MatchAnswer {
  return {
    state: 'none',
    by: 'geometry',
    confidence: 0,
    best: null,
    runnerUp: null,
    seconds: [],
    unmatchedDesign: design.map(({ key }) => key),
    unmatchedSurveyed: surveyed.map((_, i) => i),
    isMirrored,
  };
}
