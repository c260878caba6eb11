import type { GroupActions } from '../../engine/checks/anchorage-group.ts';
import {
  findShearAreas,
  findTensionAreas,
  type ShearArea,
  type TensionArea,
} from '../../engine/checks/failure-areas.ts';
import type { WorkedConnection } from '../assess-connection.ts';
import type { ExplainedMode } from '../explain/explanation.ts';

/** The concrete that counts for a connection, in coordinates of its face seen from the front [mm, mm²]. */
export interface CountedAreas {
  /** Clusters in tension where the cone is used most; empty where nothing pulls. */
  readonly cone: readonly TensionArea[];
  /** The same for splitting; empty where it needs no number. */
  readonly splitting: readonly TensionArea[];
  /** The body toward the edge that is used most in shear; null where none is in reach. */
  readonly shear: ShearArea | null;
}

/** Actions of a combination; null for resistances alone. */
function actionsOf({ cases }: WorkedConnection, name: string | null): GroupActions | null {
  const found = cases.find(({ combination }) => combination.name === name)?.combination;
  return found?.kind === 'solved' ? found.actions : null;
}

function findTension(
  worked: WorkedConnection,
  modes: readonly ExplainedMode[],
  mode: 'concrete-cone' | 'splitting',
): readonly TensionArea[] {
  const worst = modes.find((one) => one.mode === mode);
  if (worst === undefined) return [];
  return findTensionAreas(worked.prepared, actionsOf(worked, worst.combination), mode, worst.direction ?? 0);
}

function findShear(worked: WorkedConnection, modes: readonly ExplainedMode[]): ShearArea | null {
  const worst = modes.find(({ mode }) => mode === 'concrete-edge');
  if (worst === undefined || worst.edge === null) return null;
  const { from, to } = worst.edge;
  const side = worked.prepared.region.sides.findIndex(
    ({ fromX, fromY, toX, toY }) => fromX === from[0] && fromY === from[1] && toX === to[0] && toY === to[1],
  );
  const bodies = findShearAreas(worked.prepared, actionsOf(worked, worst.combination), side);
  return bodies.find(({ inserts }) => inserts.join('\n') === worst.inserts.join('\n')) ?? null;
}

/**
 * The concrete that the check counts, for drawing it: areas are the check's own.
 * @param modes those of the connection's explanation
 */
export function findAreas(worked: WorkedConnection, modes: readonly ExplainedMode[]): CountedAreas {
  return {
    cone: findTension(worked, modes, 'concrete-cone'),
    splitting: findTension(worked, modes, 'splitting'),
    shear: findShear(worked, modes),
  };
}
