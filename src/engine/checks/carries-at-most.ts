import { type AnchorageNumbers, checkAnchorage } from './anchorage.ts';
import { AnchorageError } from './anchorage-error.ts';
import type { AnchorageGroup, GroupActions, InsertAction } from './anchorage-group.ts';
import { findCrossing } from './find-crossing.ts';
import type { PreparedAnchorage } from './prepared.ts';
import type { GoverningMode, Verdict } from './result.ts';

/** The largest load in a given ratio that a group carries. */
export interface LargestLoad {
  /** The actions times this are the largest that hold: 0 where nothing resists them, null where nothing limits them. */
  readonly multiplier: number | null;
  /** What governs at that load; null where nothing limits it. */
  readonly mode: GoverningMode | null;
  /** Verdict at that load: "pass", or "not covered" whatever the number; "fail" where nothing resists, null where nothing limits. */
  readonly verdict: Verdict | null;
  /** Why it can never be a pass; empty when all is covered. */
  readonly uncovered: readonly string[];
  /** How many checks it took. */
  readonly checks: number;
}

/** Every force of a combination times the same number, the compression under the fixture too. */
export function scaleActions({ inserts, compression }: GroupActions, by: number): GroupActions {
  return {
    inserts: inserts.map(({ N, Vx, Vy }) => ({ N: N * by, Vx: Vx * by, Vy: Vy * by })),
    compression: compression === null ? null : { force: compression.force * by, at: compression.at },
  };
}

/** A load on a whole group shared equally by its inserts, as where nothing is known of the fixture. */
export function shareEqually({ positions }: AnchorageGroup, total: InsertAction): GroupActions {
  const count = positions.length;
  const own = { N: total.N / count, Vx: total.Vx / count, Vy: total.Vy / count };
  return { inserts: positions.map(() => own), compression: null };
}

/**
 * The largest multiple of the actions that the full check lets pass: times 1 + 1e-9 it does not. A load ratio never falls as
 * the load grows, so all that is smaller passes too. What is outside the scope stays so: the number is given, never a pass.
 * @throws AnchorageError where all forces are zero or the actions do not match the positions
 */
export function findLargest(p: PreparedAnchorage, actions: GroupActions): LargestLoad {
  if (actions.inserts.every(({ N, Vx, Vy }) => N === 0 && Vx === 0 && Vy === 0))
    throw new AnchorageError('actions', 'all forces are zero; a load to be multiplied was expected');
  const known = new Map<number, AnchorageNumbers>();
  const { kind, at } = findCrossing((multiplier) => {
    const numbers = checkAnchorage(p, scaleActions(actions, multiplier));
    known.set(multiplier, numbers);
    return numbers.ratio;
  }, 1);
  const { mode, verdict, uncovered } = known.get(at)!;
  const checks = known.size;
  switch (kind) {
    case 'found':
      return { multiplier: at, mode, verdict, uncovered, checks };
    case 'nothing resists':
      return { multiplier: 0, mode, verdict, uncovered, checks };
    case 'nothing limits':
      return { multiplier: null, mode: null, verdict: uncovered.length > 0 ? 'not covered' : null, uncovered, checks };
  }
}
