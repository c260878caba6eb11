import { AnchorageError } from './anchorage-error.ts';
import type { GroupActions, InsertAction } from './anchorage-group.ts';
import type { PreparedAnchorage } from './prepared.ts';
import type { Report } from './report.ts';
import type { GoverningMode } from './result.ts';

/** What a check adds up while its modes run; the only thing that changes during a run. */
export class Tally {
  /** Largest ratio so far and what gave it. */
  ratio = 0;
  mode: GoverningMode | null = null;
  /** Largest ratios of the steel, and of the concrete and bar modes, for the interaction. */
  steelTension = 0;
  steelShear = 0;
  concreteTension = 0;
  concreteShear = 0;
  /** Supplementary bars carry the tension or the shear in place of the concrete. */
  barsCarryTension = false;
  barsCarryShear = false;
  /** Reasons found under way why the answer cannot be a pass. */
  readonly uncovered: string[] = [];

  /** Takes a ratio into the governing one. The first of equal ratios stays. */
  add(ratio: number, mode: GoverningMode): void {
    if (ratio > this.ratio || this.mode === null) {
      this.ratio = ratio;
      this.mode = mode;
    }
  }

  addSteelTension(ratio: number): void {
    this.add(ratio, 'steel-tension');
    if (ratio > this.steelTension) this.steelTension = ratio;
  }

  addSteelShear(ratio: number): void {
    this.add(ratio, 'steel-shear');
    if (ratio > this.steelShear) this.steelShear = ratio;
  }

  addConcreteTension(ratio: number, mode: GoverningMode): void {
    this.add(ratio, mode);
    if (ratio > this.concreteTension) this.concreteTension = ratio;
  }

  addConcreteShear(ratio: number, mode: GoverningMode): void {
    this.add(ratio, mode);
    if (ratio > this.concreteShear) this.concreteShear = ratio;
  }

  refuse(reason: string): void {
    if (!this.uncovered.includes(reason)) this.uncovered.push(reason);
  }
}

/** Force on one insert with the size of its shear, V = √(Vx² + Vy²) [N]. */
export interface LoadedInsert extends InsertAction {
  readonly V: number;
}

/** One run of the checks: a prepared group, the actions of one combination, and where results go. */
export interface Run {
  readonly p: PreparedAnchorage;
  readonly actions: readonly LoadedInsert[];
  /** Indices of the inserts in tension, and of those that carry shear. */
  readonly tensioned: readonly number[];
  readonly sheared: readonly number[];
  readonly compression: { readonly force: number; readonly at: readonly [number, number] } | null;
  /** False where only resistances are asked: actions are then equal unit loads and no ratio is formed. */
  readonly hasAction: boolean;
  readonly tally: Tally;
  /** Null in the numbers-only path. */
  readonly report: Report | null;
}

/** Below this a force is rounding, relative to the largest of the group. */
const NO_FORCE = 1e-12;

/**
 * Starts a run: checks that actions match positions and drops what is only rounding, so that turned loads find the same
 * groups.
 * @throws AnchorageError where the actions do not match the positions, or a force is not finite
 */
export function startRun(
  p: PreparedAnchorage,
  { inserts, compression }: GroupActions,
  hasAction: boolean,
  tally: Tally,
  report: Report | null,
): Run {
  if (inserts.length !== p.count)
    throw new AnchorageError('actions', `${inserts.length} actions for ${p.count} inserts; one for each was expected`);
  let largest = 0;
  for (const { N, Vx, Vy } of inserts) largest = Math.max(largest, Math.abs(N), Math.abs(Vx), Math.abs(Vy));
  if (!(largest < Number.POSITIVE_INFINITY)) throw new AnchorageError('actions', 'forces must be finite numbers');
  const least = NO_FORCE * largest;
  const actions: LoadedInsert[] = [];
  const tensioned: number[] = [];
  const sheared: number[] = [];
  for (let i = 0; i < inserts.length; i++) {
    const N = dropRounding(inserts[i]!.N, least);
    const Vx = dropRounding(inserts[i]!.Vx, least);
    const Vy = dropRounding(inserts[i]!.Vy, least);
    actions.push({ N, Vx, Vy, V: Math.sqrt(Vx * Vx + Vy * Vy) });
    if (N > 0) tensioned.push(i);
    if (Vx !== 0 || Vy !== 0) sheared.push(i);
  }
  return { p, actions, tensioned, sheared, compression, hasAction, tally, report };
}

function dropRounding(force: number, least: number): number {
  return Math.abs(force) <= least ? 0 : force;
}

/** Names of inserts by their indices, in the group's order, for a report. */
export function nameMembers(run: Run, members: readonly number[]): readonly string[] {
  const names: string[] = [];
  for (const [i, { id }] of run.p.group.positions.entries()) if (members.includes(i)) names.push(id);
  return names;
}

/** Whether two shears act against each other. A right angle is not: the rounding of a turned load must not make it so. */
export function areOpposite(a: LoadedInsert, b: LoadedInsert): boolean {
  return a.Vx * b.Vx + a.Vy * b.Vy < -1e-9 * a.V * b.V;
}

/** Resultant of the tension of some inserts: its size [N] and where it acts [mm]. */
export function sumTension(
  { p, actions }: Run,
  members: readonly number[],
): { readonly force: number; readonly x: number; readonly y: number } {
  let force = 0;
  let momentX = 0;
  let momentY = 0;
  for (const i of members) {
    const { N } = actions[i]!;
    force += N;
    momentX += N * p.xs[i]!;
    momentY += N * p.ys[i]!;
  }
  return { force, x: momentX / force, y: momentY / force };
}
