import type { Point } from '../../engine/geometry/point.ts';
import { TRACED_TO, traceByMargin } from '../../engine/tolerance/trace-by-margin.ts';
import type { TracedZone } from '../../engine/tolerance/trace-zone.ts';
import type { ConnectionAnswer } from '../connection-answer.ts';
import { assessAt, findLimit, findPlaceLimit, moveMembers, type ZoneLimit } from './zone-oracle.ts';
import type { ZoneSite } from './zone-site.ts';

/** One insert with the others as designed, by its place in the connection's order; or all together with their plate. */
export type ZoneSubject = number | 'group';

/** How far from the design a zone reaches along an axis of the drawing, and what ends it; null: the window. */
export interface ZoneReach {
  readonly toward: 'smaller x' | 'greater x' | 'smaller y' | 'greater y';
  readonly reach: number;
  readonly limit: ZoneLimit | null;
}

/** Where an insert may sit. Lengths mm, as shifts from its place in the axes that the job gives it in. */
export interface PositionZone extends TracedZone {
  readonly kind: 'zone';
  /** Nothing farther was looked at. */
  readonly window: number;
  /** Holes and necks narrower than this may be missed. */
  readonly step: number;
  readonly reaches: readonly ZoneReach[];
  /** Full checks of every combination. */
  readonly checks: number;
}

/** The place as designed does not hold, so that there is no zone around it. */
export interface NoZone {
  readonly kind: 'none';
  readonly limit: ZoneLimit;
}

/** Nothing farther from the design is looked at [mm]: what is off by more is another place, not this one off its place. */
export const ZONE_WINDOW = 50;

/** So far outside [mm] one is surely beyond the boundary. */
const BEYOND = 2 * TRACED_TO;

/** Where one asks what ended a zone: the boundary is drawn on the safe side, so that just beyond it all may still hold. */
const FARTHER = [BEYOND, 2 * BEYOND, 4 * BEYOND] as const;

function findFirst<T, U>(list: readonly T[], find: (one: T) => U | null): U | null {
  for (const one of list) {
    const found = find(one);
    if (found !== null) return found;
  }
  return null;
}

/** Every shift of the inserts when the subject is shifted. */
export function shiftsOf(site: ZoneSite, subject: ZoneSubject, shift: Point): readonly Point[] {
  return site.members.map((_, at) => (subject === 'group' || subject === at ? shift : [0, 0]));
}

/** 1 less the ratio; NaN where another reason than a ratio speaks against it, whatever the ratio is. */
function marginOf({ state, ratio, reasons }: ConnectionAnswer): number {
  if ((state !== 'passes' && state !== 'fails') || reasons.length > 0) return Number.NaN;
  return ratio === null || !Number.isFinite(ratio) ? Number.NaN : Math.max(-1, 1 - ratio);
}

const AXES = [
  ['smaller x', [-1, 0]],
  ['greater x', [1, 0]],
  ['smaller y', [0, -1]],
  ['greater y', [0, 1]],
] as const;

/** Where a ray from the origin crosses a zone's boundary and its holes, nearest first. */
function findCrossings({ boundary, holes }: TracedZone, [ux, uy]: Point): readonly number[] {
  const found: number[] = [];
  for (const ring of [boundary, ...holes])
    for (const [k, [ax, ay]] of ring.entries()) {
      const [bx, by] = ring[(k + 1) % ring.length]!;
      const [offA, offB] = [ux * ay - uy * ax, ux * by - uy * bx];
      if (offA > 0 === offB > 0) continue;
      found.push(ux * ax + uy * ay + (offA / (offA - offB)) * (ux * (bx - ax) + uy * (by - ay)));
    }
  return found.filter((at) => at > 0).sort((a, b) => a - b);
}

/**
 * Traces where an insert may sit with the others as designed, or the group with its plate: strength in every combination by the engine that checks
 * the design, cover, clash and the fit of the plate all hold. What is cheap is traced first; strength is asked for there only, and filled in where it
 * is far from its limit.
 * @param window how far is looked [mm]; the site must have been opened for at least as much
 */
export function tracePositionZone(site: ZoneSite, subject: ZoneSubject, window = ZONE_WINDOW): PositionZone | NoZone {
  const atDesign = findLimit(site, shiftsOf(site, subject, [0, 0]));
  if (atDesign !== null) return { kind: 'none', limit: atDesign };
  const move = (x: number, y: number) => moveMembers(site, shiftsOf(site, subject, [x, y]));
  const found = traceByMargin({
    window,
    canBe: (x, y) => findPlaceLimit(site, move(x, y)) === null,
    margin: (x, y) => marginOf(assessAt(site, move(x, y))),
  });
  if (found === null) throw new Error(`connection ${site.connection.mark}: its design passes, its own place does not`);
  const { zone, passes, step, countAsked } = found;
  const reaches = AXES.map(([toward, [ux, uy]]): ZoneReach => {
    // A ray may run along the boundary or touch it: it ends where it leads out.
    const ends = [0, ...findCrossings(zone, [ux, uy])];
    const reach = ends.find((at) => !passes((at + BEYOND) * ux, (at + BEYOND) * uy)) ?? window;
    const limit = findFirst(FARTHER, (off) => {
      const beyond = reach + off;
      return beyond >= window ? null : findLimit(site, shiftsOf(site, subject, [beyond * ux, beyond * uy]));
    });
    return { toward, reach: Math.min(reach, window), limit };
  });
  return { kind: 'zone', ...zone, window, step, reaches, checks: countAsked() + 1 + AXES.length };
}
