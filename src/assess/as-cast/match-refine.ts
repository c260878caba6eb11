import { fitPoints } from '../../engine/survey/fit-points.ts';
import { movePoint, type Pose } from '../../engine/survey/pose.ts';
import { SurveyError } from '../../engine/survey/survey-error.ts';
import type { Vector } from '../../engine/survey/vector.ts';

/** Which surveyed point is which designed one: indices, and how far apart they are laid [mm]. */
export interface Assigned {
  readonly design: number;
  readonly surveyed: number;
  readonly off: number;
}

/** A matching at rest: the best movement for its pairs, and the pairs that are nearest by it. */
export interface Settled {
  readonly pose: Pose;
  readonly pairs: readonly Assigned[];
}

/** A point may be 30 mm off, and the others with it bring the panel half as much off again [mm]. */
export const FARTHEST = 45;
/** Farthest pairs that count while the panel is still being laid [mm]. */
const CLOSING_IN = [75, 55, FARTHEST, FARTHEST] as const;

/** Squares of the distances of all designed points from all surveyed ones as they are laid, a row a designed point. */
function squaresOf(design: readonly Vector[], laid: readonly Vector[]): Float64Array {
  const [size, count] = [design[0]!.length, laid.length];
  const flat = Float64Array.from(laid.flat());
  const squares = new Float64Array(design.length * count);
  design.forEach((at, i) => {
    for (let j = 0; j < count; j += 1) {
      let square = 0;
      for (let k = 0; k < size; k += 1) square += (at[k]! - flat[j * size + k]!) ** 2;
      squares[i * count + j] = square;
    }
  });
  return squares;
}

/** The nearest pairs first, each point once; then two pairs exchange partners where both together come nearer. */
function assign(design: readonly Vector[], laid: readonly Vector[], within: number): readonly Assigned[] {
  const squares = squaresOf(design, laid);
  const square = (i: number, j: number) => squares[i * laid.length + j]!;
  const near: number[] = [];
  squares.forEach((value, index) => {
    if (value <= within ** 2) near.push(index);
  });
  near.sort((a, b) => squares[a]! - squares[b]!);
  const [takenDesign, takenSurveyed] = [new Set<number>(), new Set<number>()];
  const pairs = near.flatMap((index): [number, number][] => {
    const [i, j] = [Math.floor(index / laid.length), index % laid.length];
    if (takenDesign.has(i) || takenSurveyed.has(j)) return [];
    takenDesign.add(i);
    takenSurveyed.add(j);
    return [[i, j]];
  });
  for (const [k, a] of pairs.entries())
    for (const b of pairs.slice(k + 1)) {
      const [ab, ba] = [square(a[0], b[1]), square(b[0], a[1])];
      if (Math.max(ab, ba) > within ** 2 || ab + ba >= square(...a) + square(...b)) continue;
      [a[1], b[1]] = [b[1], a[1]];
    }
  return pairs.map(([i, j]) => ({ design: i, surveyed: j, off: Math.sqrt(square(i, j)) }));
}

/** Lays the surveyed points by their pairs, pairs them anew, and so on; null where too few pairs are left to lay them by. */
export function settleMatching(design: readonly Vector[], surveyed: readonly Vector[], start: Pose): Settled | null {
  let pose = start;
  const lay = () => surveyed.map((at) => movePoint(pose, at));
  let before: readonly Assigned[] = [];
  for (const within of CLOSING_IN) {
    const pairs = assign(design, lay(), within);
    // The same pairs give the same movement: at rest once nothing nearer is asked for.
    if (within === FARTHEST && isSame(pairs, before)) return { pose, pairs };
    const next = fitPairs(design, surveyed, pairs);
    if (next === null) return null;
    pose = next;
    before = pairs;
  }
  return { pose, pairs: assign(design, lay(), FARTHEST) };
}

function isSame(a: readonly Assigned[], b: readonly Assigned[]): boolean {
  if (a.length !== b.length) return false;
  const partner = new Map(b.map((pair) => [pair.design, pair.surveyed]));
  return a.every((pair) => partner.get(pair.design) === pair.surveyed);
}

function fitPairs(design: readonly Vector[], surveyed: readonly Vector[], pairs: readonly Assigned[]): Pose | null {
  if (pairs.length === 0) return null;
  try {
    return fitPoints(pairs.map((p) => ({ design: design[p.design]!, measured: surveyed[p.surveyed]!, weight: 1 })));
  } catch (error) {
    if (error instanceof SurveyError) return null;
    throw error;
  }
}
