import type { PreparedAnchorage } from '../engine/checks/prepared.ts';
import { checkPlateBending, type PlateBending } from '../engine/fixture/plate-bending.ts';
import type { ResolvedActions, ResolvedPlate } from '../job/resolve/resolved-connection.ts';
import { type InsertCombination, spreadActions } from './combinations.ts';

/** γ_M0 of the plate's steel, recommended value of EN 1993-1-1, 6.1. */
const PLATE_FACTOR = 1;

/** What is asked of a connection, and the plate that hands it to the inserts. */
export interface Loaded {
  readonly actions: ResolvedActions;
  readonly plate: ResolvedPlate | null;
}

/**
 * One combination as forces on the inserts, with the plate as bent by its forces; null where no plate stands between the action
 * and the inserts.
 */
export interface LoadCase {
  readonly combination: InsertCombination;
  readonly bending: PlateBending | null;
}

/** The plate under one combination; null where no plate stands between the action and the inserts. */
function solveBending({ plate }: Loaded, combination: InsertCombination): PlateBending | null {
  if (plate === null || combination.kind === 'unsolved' || combination.forces === null) return null;
  const { forces } = combination;
  return checkPlateBending({
    plate: plate.outline,
    thickness: plate.thickness,
    yieldDesign: plate.yield === null ? null : plate.yield / PLATE_FACTOR,
    bolts: plate.bolts.map(({ id, x, y }, i) => ({ id, x, y, tension: Math.max(0, forces.bolts[i]!.N) })),
    plane: forces.plane,
    attachment: plate.attachment === null ? null : { kind: 'outline', outline: plate.attachment },
  });
}

/**
 * Every combination brought down to the inserts. What comes out rests on the plate, the places of the inserts and the stress
 * area of their bolts, not on the rest of the insert: it is found once for all inserts of a thread.
 */
export function solveLoadCases(loaded: Loaded, prepared: PreparedAnchorage): readonly LoadCase[] {
  return spreadActions(loaded, prepared).map((combination) => ({
    combination,
    bending: solveBending(loaded, combination),
  }));
}
