import type { GroupActions, InsertAction } from '../engine/checks/anchorage-group.ts';
import type { PreparedAnchorage } from '../engine/checks/prepared.ts';
import { FixtureError } from '../engine/fixture/fixture-error.ts';
import { type FixtureForces, solveFixture } from '../engine/fixture/fixture-forces.ts';
import type { ResolvedActions, ResolvedPlate } from '../job/resolve/resolved-connection.ts';

/** One load combination brought down to the inserts, or why it cannot be. */
export type InsertCombination =
  | {
      readonly kind: 'solved';
      readonly name: string;
      readonly actions: GroupActions;
      /** Null where no plate stands between the action and the insert. */
      readonly forces: FixtureForces | null;
    }
  | { readonly kind: 'unsolved'; readonly name: string; readonly reason: string };

function equalActions(prepared: PreparedAnchorage, action: InsertAction): GroupActions {
  return { inserts: prepared.group.positions.map(() => action), compression: null };
}

/** A required resistance has no direction: the shear is turned toward every side of the concrete that any insert faces. */
function spreadRequired(prepared: PreparedAnchorage, N: number, V: number): InsertCombination[] {
  const { sides } = prepared.region;
  if (V === 0 || sides.length === 0)
    return [{ kind: 'solved', name: 'required', actions: equalActions(prepared, { N, Vx: V, Vy: 0 }), forces: null }];
  // Sides that face the same way ask for the same shear: once.
  const directions = new Map(sides.map(({ nx, ny }) => [nameDirection(nx, ny), { nx, ny }]));
  return [...directions].map(([direction, { nx, ny }]) => ({
    kind: 'solved',
    name: `required, shear toward ${direction}`,
    actions: equalActions(prepared, { N, Vx: V * nx, Vy: V * ny }),
    forces: null,
  }));
}

/** A direction on the face seen from its front, counter-clockwise from x: 270° points down. */
export function nameDirection(x: number, y: number): string {
  const degrees = (Math.atan2(y, x) * 180) / Math.PI;
  return `${((Math.round(100 * degrees) / 100 + 360) % 360) + 0}°`;
}

/**
 * Every load combination of a connection as forces on its inserts. Through a plate: rigid, tension-only bolts,
 * compression-only contact. A single insert without a plate takes forces straight, but no moment.
 */
export function spreadActions(
  { actions, plate }: { readonly actions: ResolvedActions; readonly plate: ResolvedPlate | null },
  prepared: PreparedAnchorage,
): InsertCombination[] {
  if (actions.kind === 'none') return [];
  if (actions.kind === 'required') return spreadRequired(prepared, actions.N, actions.V);
  return actions.combinations.map(({ name, action }): InsertCombination => {
    if (plate !== null) {
      try {
        const forces = solveFixture(plate.outline, plate.modularRatio, plate.bolts, action);
        return { kind: 'solved', name, forces, actions: { inserts: forces.bolts, compression: forces.compression } };
      } catch (error) {
        if (error instanceof FixtureError) return { kind: 'unsolved', name, reason: error.message };
        throw error;
      }
    }
    const { N, Vx, Vy, Mx, My, T } = action;
    if (prepared.count > 1 || Mx !== 0 || My !== 0 || T !== 0)
      return {
        kind: 'unsolved',
        name,
        reason: 'no plate is given, so loads on a group and moments cannot be shared out; give the fixture',
      };
    return { kind: 'solved', name, forces: null, actions: { inserts: [{ N, Vx, Vy }], compression: null } };
  });
}
