import type { InsertAction } from './anchorage-group.ts';
import type { PreparedAnchorage } from './prepared.ts';
import type { Report } from './report.ts';
import type { GoverningMode } from './result.ts';

/** What a check adds up while its modes run; the only thing that changes during a run. */
export class Tally {
  /** Largest ratio so far and what gave it. */
  ratio = 0;
  mode: GoverningMode | null = null;
  /** Largest ratios of the concrete and bar modes, for the interaction. */
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

/** One run of the checks: a prepared group, the actions of one combination, and where results go. */
export interface Run {
  readonly p: PreparedAnchorage;
  readonly actions: readonly InsertAction[];
  readonly compression: { readonly force: number; readonly at: readonly [number, number] } | null;
  /** False where only resistances are asked: actions are then equal unit loads and no ratio is formed. */
  readonly hasAction: boolean;
  readonly tally: Tally;
  /** Null in the numbers-only path. */
  readonly report: Report | null;
}

/** Names of inserts by their indices, in the group's order, for a report. */
export function nameMembers(run: Run, members: readonly number[]): readonly string[] {
  const names: string[] = [];
  for (const [i, { id }] of run.p.group.positions.entries()) if (members.includes(i)) names.push(id);
  return names;
}

/** Whether two shears act against each other. A right angle is not: the rounding of a turned load must not make it so. */
export function areOpposite(a: InsertAction, b: InsertAction): boolean {
  const dot = a.Vx * b.Vx + a.Vy * b.Vy;
  return dot < -1e-9 * Math.hypot(a.Vx, a.Vy) * Math.hypot(b.Vx, b.Vy);
}

/** Indices of the inserts in tension. */
export function findTensioned(actions: readonly InsertAction[]): number[] {
  const members: number[] = [];
  for (let i = 0; i < actions.length; i++) if (actions[i]!.N > 0) members.push(i);
  return members;
}

/** Indices of the inserts that carry shear. */
export function findSheared(actions: readonly InsertAction[]): number[] {
  const members: number[] = [];
  for (let i = 0; i < actions.length; i++) if (actions[i]!.Vx !== 0 || actions[i]!.Vy !== 0) members.push(i);
  return members;
}
