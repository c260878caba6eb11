import { prepare } from '../engine/checks/anchorage.ts';
import type { AnchorageGroup, InsertAction } from '../engine/checks/anchorage-group.ts';
import { findLargest, type LargestLoad } from '../engine/checks/carries-at-most.ts';
import type { PreparedAnchorage } from '../engine/checks/prepared.ts';
import type { Resolution, ResolvedConnection } from '../job/resolve/resolved-connection.ts';
import type { Decisive } from './connection-answer.ts';
import { prepareOrSay } from './judge.ts';
import { type LoadCase, solveLoadCases } from './load-cases.ts';
import { findSharing, findShearDirections, type ShearDirection, turnQuarter } from './shear-directions.ts';

/** The largest tension, or shear in one direction, with nothing else acting. Forces N. */
export interface Capacity {
  /** Null: tension. */
  readonly direction: ShearDirection | null;
  /** On all inserts asked about; null where none of them takes this load. */
  readonly total: number | null;
  /** On each insert that shares the load. */
  readonly perInsert: number | null;
  readonly mode: Decisive | null;
  /** Why the number can never be a pass; empty when all is covered. */
  readonly reasons: readonly string[];
}

/** The largest multiple of one stated combination. Forces N. */
export interface StatedCapacity {
  readonly combination: string;
  /** Null where there is no multiple; `why` says so. */
  readonly times: number | null;
  /** Largest tension and largest shear on one insert at that multiple. */
  readonly tension: number | null;
  readonly shear: number | null;
  readonly mode: Decisive | null;
  readonly reasons: readonly string[];
  readonly why: string | null;
}

/** What a connection carries at most. None of it is a pass: it answers a question, not a load. */
export interface Capacities {
  /** The group as built: tension, then shear by direction. */
  readonly group: readonly Capacity[];
  /** The group in the ratio of each stated combination; empty where no action is given. */
  readonly stated: readonly StatedCapacity[];
  /** Each insert by itself, the others unloaded, in the same order of loads; empty where the group is one insert. */
  readonly inserts: readonly { readonly id: string; readonly capacities: readonly Capacity[] }[];
  /** Reasons of all of them, each once. */
  readonly reasons: readonly string[];
}

/** A connection in one line: tension, shear toward its weakest edge, and shear along that edge in the weaker sense. */
export interface CapacityLine {
  readonly tension: Capacity;
  readonly toward: Capacity;
  readonly along: Capacity;
  readonly reasons: readonly string[];
}

/** An answer, or why there is none. */
export type Asked<T> =
  | { readonly kind: 'computed'; readonly value: T }
  | { readonly kind: 'refused'; readonly reasons: readonly string[] };

/** What the search for the largest load begins with, on each insert that shares it [N]. */
const START = 1000;

const NO_LOAD: InsertAction = { N: 0, Vx: 0, Vy: 0 };

function sizeOf({ total }: Capacity): number {
  return total ?? Number.POSITIVE_INFINITY;
}

function gatherReasons(all: readonly { readonly reasons: readonly string[] }[]): readonly string[] {
  return [...new Set(all.flatMap(({ reasons }) => reasons))];
}

/** The weaker of several ways to take the same inserts. */
function findWeakest(ways: readonly PreparedAnchorage[], actions: readonly InsertAction[]): LargestLoad {
  const size = ({ multiplier }: LargestLoad) => multiplier ?? Number.POSITIVE_INFINITY;
  return ways
    .map((p) => findLargest(p, { inserts: actions, compression: null }))
    .reduce((a, b) => (size(b) < size(a) ? b : a));
}

/** The largest load of one kind, shared equally by the inserts that take it. */
function findCapacity(
  { notCovered }: ResolvedConnection,
  ways: readonly PreparedAnchorage[],
  direction: ShearDirection | null,
  sharing: readonly boolean[],
): Capacity {
  const count = sharing.filter((takes) => takes).length;
  if (count === 0) return { direction, total: null, perInsert: null, mode: null, reasons: [] };
  const own =
    direction === null ? { N: START, Vx: 0, Vy: 0 } : { N: 0, Vx: START * direction.ux, Vy: START * direction.uy };
  const { multiplier, mode, uncovered } = findWeakest(
    ways,
    sharing.map((takes) => (takes ? own : NO_LOAD)),
  );
  const perInsert = multiplier === null ? null : multiplier * START;
  return {
    direction,
    total: perInsert === null ? null : perInsert * count,
    perInsert,
    mode,
    reasons: [...notCovered, ...uncovered],
  };
}

function findGroupCapacity(connection: ResolvedConnection, p: PreparedAnchorage, direction: ShearDirection | null) {
  const sharing =
    direction === null ? p.group.positions.map(() => true) : findSharing(connection.plate, p.count, direction);
  return findCapacity(connection, [p], direction, sharing);
}

/**
 * An insert of a group by itself. Which of the group's bars are its own is not known, so it is taken with all and with none; the
 * weaker counts, since bars also lower the pry-out.
 */
function prepareAlone(group: AnchorageGroup, index: number): readonly PreparedAnchorage[] {
  const alone = { ...group, positions: [group.positions[index]!] };
  if (group.hangers.length + group.hairpins.length === 0) return [prepare(alone)];
  return [prepare(alone), prepare({ ...alone, hangers: [], hairpins: [] })];
}

/** The largest multiple of a stated combination: of the inserts and, where its bending is checked, of the plate. */
function findStated(
  { notCovered }: ResolvedConnection,
  p: PreparedAnchorage,
  { combination, bending }: LoadCase,
): StatedCapacity {
  const none = { combination: combination.name, times: null, tension: null, shear: null, mode: null, reasons: [] };
  if (combination.kind === 'unsolved') return { ...none, why: combination.reason };
  const { inserts } = combination.actions;
  if (inserts.every(({ N, Vx, Vy }) => N === 0 && Vx === 0 && Vy === 0))
    return { ...none, why: 'no load on the inserts' };
  const found = findLargest(p, combination.actions);
  const reasons = [...notCovered, ...found.uncovered];
  const ofInserts = found.multiplier ?? Number.POSITIVE_INFINITY;
  const ofPlate = bending?.kind === 'checked' && bending.ratio > 0 ? 1 / bending.ratio : Number.POSITIVE_INFINITY;
  const times = Math.min(ofInserts, ofPlate);
  if (times === Number.POSITIVE_INFINITY) return { ...none, reasons, why: 'nothing computed here limits it' };
  return {
    combination: combination.name,
    times,
    tension: Math.max(0, ...inserts.map(({ N }) => N)) * times,
    shear: Math.max(...inserts.map(({ Vx, Vy }) => Math.hypot(Vx, Vy))) * times,
    mode: ofPlate < ofInserts ? 'plate-bending' : found.mode,
    reasons,
    why: null,
  };
}

/** Asks a group that can be computed. */
function ask<T>(resolution: Resolution, answer: (connection: ResolvedConnection, p: PreparedAnchorage) => T): Asked<T> {
  if (resolution.kind === 'unresolved') return { kind: 'refused', reasons: resolution.reasons };
  const p = prepareOrSay(resolution.group);
  if (typeof p === 'string') return { kind: 'refused', reasons: [p] };
  return { kind: 'computed', value: answer(resolution, p) };
}

/**
 * The largest loads of a connection: tension, shear toward every edge in sight and along the axes of the face, the stated
 * combinations in their own ratio, and each insert alone.
 */
export function findCapacities(resolution: Resolution): Asked<Capacities> {
  return ask(resolution, (connection, p) => {
    const loads = [null, ...findShearDirections(p)];
    const group = loads.map((direction) => findGroupCapacity(connection, p, direction));
    const stated = solveLoadCases(connection, p).map((one) => findStated(connection, p, one));
    const { positions } = connection.group;
    const inserts = (positions.length > 1 ? positions : []).map(({ id }, i) => {
      const ways = prepareAlone(connection.group, i);
      return { id, capacities: loads.map((direction) => findCapacity(connection, ways, direction, [true])) };
    });
    const all = [...group, ...stated, ...inserts.flatMap(({ capacities }) => capacities)];
    return { group, stated, inserts, reasons: gatherReasons(all) };
  });
}

/** What all inserts of a connection carry together in tension, nothing else acting. */
export function findTensionCapacity(resolution: Resolution): Asked<Capacity> {
  return ask(resolution, (connection, p) => findGroupCapacity(connection, p, null));
}

/** The same in one line, for whole jobs. Where no edge is in sight, the weakest direction of all stands for the edge. */
export function findCapacityLine(resolution: Resolution): Asked<CapacityLine> {
  return ask(resolution, (connection, p) => {
    const find = (direction: ShearDirection | null) => findGroupCapacity(connection, p, direction);
    const weakest = (all: readonly Capacity[]) => all.reduce((a, b) => (sizeOf(b) < sizeOf(a) ? b : a));
    const directions = findShearDirections(p);
    const edges = directions.filter(({ edge }) => edge !== null);
    const tension = find(null);
    const toward = weakest((edges.length > 0 ? edges : directions).map(find));
    const sideways = (['left', 'right'] as const).map((to) => turnQuarter(toward.direction!, to));
    const along = weakest(
      sideways.map((turned) => find(directions.find(({ name }) => name === turned.name) ?? turned)),
    );
    return { tension, toward, along, reasons: gatherReasons([tension, toward, along]) };
  });
}
