import { checkAnchorage, prepare } from '../../engine/checks/anchorage.ts';
import { AnchorageError } from '../../engine/checks/anchorage-error.ts';
import type { GroupActions, InsertAction } from '../../engine/checks/anchorage-group.ts';
import { findLargest } from '../../engine/checks/carries-at-most.ts';
import type { PreparedAnchorage } from '../../engine/checks/prepared.ts';
import type { GoverningMode } from '../../engine/checks/result.ts';
import { GeometryError } from '../../engine/geometry/geometry-error.ts';
import type { StandardName } from '../../engine/standards/standard-name.ts';
import type { FilledCase } from './fill-case.ts';
import { layOut } from './lay-out.ts';
import { listEmbedments, makeGroup } from './make-group.ts';

/** Which way a load goes: out of the face, toward one of the two edges that were said, or away from one of them. */
export const DIRECTIONS = ['tension', 'toward 1', 'toward 2', 'away from 1', 'away from 2'] as const;
export type Direction = (typeof DIRECTIONS)[number];

/** The largest load on the insert one way, nothing else acting [N]; null where nothing computed here limits it. */
export interface Limit {
  readonly direction: Direction;
  readonly force: number | null;
  readonly mode: GoverningMode | null;
}

/** How the stated loads compare: the worst of all that may be. */
export interface LoadRatio {
  readonly ratio: number;
  readonly mode: GoverningMode | null;
  /** The way in which the shear was taken; null without shear. */
  readonly shear: Exclude<Direction, 'tension'> | null;
}

/** What the search for the largest load begins with [N]. */
const START = 1000;

/** Unit forces of each way; the nearest edge lies below, the next to the left. */
const UNITS: Readonly<Record<Direction, InsertAction>> = {
  tension: { N: 1, Vx: 0, Vy: 0 },
  'toward 1': { N: 0, Vx: 0, Vy: -1 },
  'toward 2': { N: 0, Vx: -1, Vy: 0 },
  'away from 1': { N: 0, Vx: 0, Vy: 1 },
  'away from 2': { N: 0, Vx: 1, Vy: 0 },
};

/** Everything that the insert may be, ready to be asked; or why none of it can be computed. */
export type Possible =
  | { readonly ok: true; readonly all: readonly PreparedAnchorage[] }
  | { readonly ok: false; readonly reasons: readonly string[] };

/** Prepares every layout with every embedment. */
export function preparePossible(filled: FilledCase, standard: StandardName): Possible {
  try {
    const all = layOut(filled).flatMap((layout) =>
      listEmbedments(filled).map((embedment) => prepare(makeGroup(filled, layout, embedment, standard))),
    );
    return { ok: true, all };
  } catch (error) {
    if (error instanceof AnchorageError || error instanceof GeometryError)
      return { ok: false, reasons: [error.message] };
    throw error;
  }
}

function scale({ N, Vx, Vy }: InsertAction, by: number): InsertAction {
  return { N: N * by, Vx: Vx * by, Vy: Vy * by };
}

/** This insert's load, and the neighbours' share of it at the same time. */
function actOn(p: PreparedAnchorage, own: InsertAction, share: number): GroupActions {
  return { inserts: p.group.positions.map((_, i) => (i === 0 ? own : scale(own, share))), compression: null };
}

/** The least of the largest loads of all that may be, one way. */
export function findLimit(
  all: readonly PreparedAnchorage[],
  direction: Direction,
  shares: readonly number[],
): Limit & { readonly uncovered: readonly string[] } {
  const own = scale(UNITS[direction], START);
  const uncovered = new Set<string>();
  let force = Number.POSITIVE_INFINITY;
  let mode: GoverningMode | null = null;
  for (const p of all)
    for (const share of shares) {
      const largest = findLargest(p, actOn(p, own, share));
      for (const reason of largest.uncovered) uncovered.add(reason);
      if (largest.multiplier === null || largest.multiplier * START >= force) continue;
      force = largest.multiplier * START;
      mode = largest.mode;
    }
  return { direction, force: Number.isFinite(force) ? force : null, mode, uncovered: [...uncovered] };
}

/** The worst ratio of tension and shear together, the shear taken in whichever way it does most. */
export function findLoadRatio(
  all: readonly PreparedAnchorage[],
  { tension, shear }: { readonly tension: number; readonly shear: number },
  shares: readonly number[],
): LoadRatio & { readonly uncovered: readonly string[] } {
  const uncovered = new Set<string>();
  const ways = shear > 0 ? DIRECTIONS.filter((one) => one !== 'tension') : [null];
  let worst: LoadRatio = { ratio: -1, mode: null, shear: null };
  for (const p of all)
    for (const way of ways) {
      const own = { ...(way === null ? UNITS.tension : scale(UNITS[way], shear)), N: tension };
      for (const share of shares) {
        const numbers = checkAnchorage(p, actOn(p, own, share));
        for (const reason of numbers.uncovered) uncovered.add(reason);
        if (numbers.ratio > worst.ratio) worst = { ratio: numbers.ratio, mode: numbers.mode, shear: way };
      }
    }
  return { ...worst, uncovered: [...uncovered] };
}
