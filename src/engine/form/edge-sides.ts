import type { Point } from '../geometry/point.ts';
import { BLUNDER_LIMIT, findBlunder, normaliseResiduals } from './data-snooping.ts';
import type { Settled, Side, Unsettled } from './settle-place.ts';
import { distanceGradient, signedDistance, type TapedDistance } from './taped-distance.ts';

/** Ends of two edges that miss each other's line by no more [mm] lie on one line. */
const ONE_LINE = 1e-6;
/** Places that fit alike to this share of the weighted sum of squares fit equally. */
const EQUAL = 1e-6;
/** So many lines are tried on both sides, those first whose distances agree least: every set of them, 31 at most. */
const LINES = 5;

/** Finds the place at rest for sides of the edges, from a start. */
export type SettleFor = (sides: readonly Side[], start: Point) => Settled | Unsettled;

/**
 * Doubts the sides that a guess gave to the edges. A place that came to rest across an edge from its assumed side is settled again on the
 * side where it lies. Where a distance stands out (`findBlunder`), lines are tried from their other side: the place of the least weighted sum of
 * squares is taken, if the distances agree there and the sum falls by more than 3.29², what tells a blunder from chance. A place that the
 * distances contradict too is no better than the guess, however far away it fits a little less badly.
 */
export function chooseSides(measured: readonly TapedDistance[], settled: Settled, settleFor: SettleFor): Settled {
  const kept = uncross(measured, settled, settleFor);
  if (doAgree(measured, kept)) return kept;
  let best = kept;
  for (const flipped of listSets(findLines(measured, kept))) {
    const start = flipped.reduce<Point>((at, [first]) => mirrorAcross(measured[first!]!.to, at), kept.at);
    const other = settleFor(turn(kept.sides, flipped.flat()), start);
    // Those sides give no place.
    if (typeof other === 'string') continue;
    const candidate = uncross(measured, other, settleFor);
    const isBetter = candidate.sum < kept.sum - BLUNDER_LIMIT ** 2 && candidate.sum < best.sum * (1 - EQUAL);
    if (isBetter && doAgree(measured, candidate)) best = candidate;
  }
  return best;
}

function doAgree(measured: readonly TapedDistance[], { local }: Settled): boolean {
  return findBlunder(local, deviationsOf(measured)).kind === 'none';
}

/** Gives the edges that a place has crossed the side on which it lies, until it crosses none, or gains nothing by it. */
function uncross(measured: readonly TapedDistance[], settled: Settled, settleFor: SettleFor): Settled {
  let now = settled;
  for (;;) {
    const { at, sides } = now;
    const crossed = measured.flatMap(({ to }, i) =>
      to.kind === 'edge' && sides[i]! * signedDistance(to, at) < 0 ? [i] : [],
    );
    if (crossed.length === 0) return now;
    const next = settleFor(turn(sides, crossed), at);
    if (typeof next === 'string' || next.sum >= now.sum * (1 - EQUAL)) return now;
    now = next;
  }
}

/** The lines that edges lie on, as lists of indices; first the one of the largest normalised residual. */
function findLines(measured: readonly TapedDistance[], { local }: Settled): readonly (readonly number[])[] {
  const lines: number[][] = [];
  measured.forEach(({ to }, i) => {
    if (to.kind === 'point') return;
    const line = lines.find(([first]) =>
      [to.from, to.end].every((end) => Math.abs(signedDistance(measured[first!]!.to, end)) <= ONE_LINE),
    );
    if (line === undefined) lines.push([i]);
    else line.push(i);
  });
  const sizes = normaliseResiduals(local, deviationsOf(measured)).map((w) => Math.abs(w ?? 0));
  const largest = (line: readonly number[]) => Math.max(...line.map((i) => sizes[i]!));
  return lines.sort((a, b) => largest(b) - largest(a)).slice(0, LINES);
}

/** Every set of some, the small ones first. */
function listSets<T>(all: readonly T[]): readonly (readonly T[])[] {
  let sets: readonly (readonly T[])[] = [[]];
  for (const one of all) sets = sets.concat(sets.map((set) => [...set, one]));
  return sets.slice(1).sort((a, b) => a.length - b.length);
}

function turn(sides: readonly Side[], indices: readonly number[]): readonly Side[] {
  return sides.map((side, i) => (indices.includes(i) ? (side === 1 ? -1 : 1) : side));
}

/** The mirror image of a place in the line through an edge. */
function mirrorAcross(to: TapedDistance['to'], at: Point): Point {
  const twice = 2 * signedDistance(to, at);
  const [gx, gy] = distanceGradient(to, at);
  return [at[0] - twice * gx, at[1] - twice * gy];
}

function deviationsOf(measured: readonly TapedDistance[]): readonly number[] {
  return measured.map(({ deviation }) => deviation);
}
