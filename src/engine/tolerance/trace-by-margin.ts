import type { Point } from '../geometry/point.ts';
import { MarginMap } from './margin-map.ts';
import { type TracedZone, traceZone } from './trace-zone.ts';

/** Something that holds at some places and not at others. Lengths mm. */
export interface MarginQuestion {
  /** Nothing farther from the origin, along x or y, is looked at. */
  readonly window: number;
  /** Whether a place can be at all: costs little, and is asked first. */
  readonly canBe: (x: number, y: number) => boolean;
  /** What is left there, above 0 where it passes; NaN: fails, not by a number. Costs much. */
  readonly margin: (x: number, y: number) => number;
}

/** The connected region around the origin, and how it was found. */
export interface TracedByMargin {
  readonly zone: TracedZone;
  /** Whether a place holds, by what is known now. */
  readonly passes: (x: number, y: number) => boolean;
  /** Holes and necks narrower than this may be missed [mm]. */
  readonly step: number;
  /** How often the margin was asked for until now. */
  readonly countAsked: () => number;
}

/** A boundary is known to this or better [mm]. */
export const TRACED_TO = 0.2;

/** Finest and coarsest steps [mm] of the grid, and steps from the design to the farthest that was reached. */
const STEPS = { least: 0.25, most: 5, across: 10 } as const;

/** Ways that are looked along, to see how large a region is. */
const PROBED: readonly Point[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
  [0.7, 0.7],
  [-0.7, 0.7],
  [0.7, -0.7],
  [-0.7, -0.7],
];

/** The step that suits how far one comes. */
function findStep(passes: (x: number, y: number) => boolean, window: number): number {
  const reach = Math.max(...PROBED.map((way) => probe(passes, way, window)));
  return Math.min(STEPS.most, Math.max(STEPS.least, reach / STEPS.across));
}

/** How well the boundary is known [mm]: better where the region is small, so that its line is as clean. */
function findWithin(step: number): number {
  return Math.min(TRACED_TO, Math.max(TRACED_TO / 4, step / 5));
}

/** How far one comes from the origin in a direction before something is in the way, known to a twentieth; at most the window. */
function probe(passes: (x: number, y: number) => boolean, [ux, uy]: Point, window: number): number {
  let [inside, outside]: [number, number] = [0, STEPS.least];
  while (outside < window && passes(outside * ux, outside * uy)) [inside, outside] = [outside, 2 * outside];
  outside = Math.min(window, outside);
  while (outside - inside > Math.max(outside / 20, TRACED_TO)) {
    const at = (inside + outside) / 2;
    if (passes(at * ux, at * uy)) inside = at;
    else outside = at;
  }
  return outside;
}

/** The places asked about, each once: by cheap means whether they can be at all. */
function remember(passes: (x: number, y: number) => boolean): (x: number, y: number) => boolean {
  const known = new Map<string, boolean>();
  return (x, y) => {
    const key = `${x},${y}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const value = passes(x, y);
    known.set(key, value);
    return value;
  };
}

function findExtent({ boundary }: TracedZone): number {
  return boundary.reduce((most, [x, y]) => Math.max(most, Math.abs(x), Math.abs(y)), TRACED_TO);
}

/**
 * Traces where something holds, connected with the origin: first where it can be at all, then within that by its margin, which is asked for only where it
 * is needed and filled in where it is far from its limit.
 * @returns null where the origin itself does not hold
 */
export function traceByMargin({ window, canBe: ask, margin }: MarginQuestion): TracedByMargin | null {
  const canBe = remember(ask);
  const step = findStep(canBe, window);
  const placed = traceZone(canBe, { window, step, within: findWithin(step) });
  if (placed === null) return null;
  const extent = Math.min(window, findExtent(placed) + step);
  const map = new MarginMap(margin, {
    extent,
    widest: 2 * step * STEPS.across,
    narrowest: step,
    within: findWithin(step) / 4,
  });
  const passes = (x: number, y: number) =>
    Math.max(Math.abs(x), Math.abs(y)) <= extent && canBe(x, y) && map.passes(x, y);
  if (map.isClear) return { zone: placed, passes, step, countAsked: () => map.asked };
  const fine = findStep(passes, window);
  const zone = traceZone(passes, { window, step: fine, within: findWithin(fine) });
  return zone === null ? null : { zone, passes, step: fine, countAsked: () => map.asked };
}
