import type { EdgeRow } from './prepared.ts';
import type { Run } from './run.ts';

/** Load of one row: components toward the edge and along it, and how unequal they are. */
export interface RowLoad {
  readonly toward: number;
  readonly along: number;
  /** Of the resultant, and of each part by itself. */
  readonly eccentricity: number;
  readonly eccentricityToward: number;
  readonly eccentricityAlong: number;
  /** Both parts together. */
  readonly force: number;
}

/** A part of the row's shear below this share of all of it is rounding of a turned load. */
const NO_PART = 1e-12;

/**
 * Load of a row. Toward the edge: the larger of the sum over all inserts of the row and the sum of the front inserts'
 * positive parts; a part away from the edge is dropped. Along the edge: the front inserts' own, by size, since shears that
 * turn against each other break the edge all the same. The eccentricity of the resultant comes from each front insert's part
 * in its direction.
 */
export function findLoad(run: Run, row: EdgeRow): RowLoad {
  const { actions } = run;
  const { nx, ny, ux, uy } = row.view.side;
  let sum = 0;
  let positive = 0;
  let along = 0;
  let least = 0;
  for (const i of row.all) {
    const { Vx, Vy, V } = actions[i]!;
    sum += Vx * nx + Vy * ny;
    least += NO_PART * V;
  }
  for (const i of row.front) {
    positive += Math.max(0, actions[i]!.Vx * nx + actions[i]!.Vy * ny);
    along += Math.abs(actions[i]!.Vx * ux + actions[i]!.Vy * uy);
  }
  const larger = Math.max(0, sum, positive);
  const toward = larger > least ? larger : 0;
  if (along <= least) along = 0;
  let weightToward = 0;
  let weightAlong = 0;
  let momentToward = 0;
  let momentAlong = 0;
  for (const i of row.front) {
    const { Vx, Vy } = actions[i]!;
    const place = row.view.along[i]! - row.centre;
    const ownToward = Math.max(0, Vx * nx + Vy * ny);
    const ownAlong = Math.abs(Vx * ux + Vy * uy);
    weightToward += ownToward;
    weightAlong += ownAlong;
    momentToward += ownToward * place;
    momentAlong += ownAlong * place;
  }
  return {
    toward,
    along,
    eccentricity: offset(momentToward * toward + momentAlong * along, weightToward * toward + weightAlong * along),
    eccentricityToward: toward > 0 ? offset(momentToward, weightToward) : 0,
    eccentricityAlong: along > 0 ? offset(momentAlong, weightAlong) : 0,
    force: Math.sqrt(toward * toward + along * along),
  };
}

function offset(moment: number, weight: number): number {
  return weight > 0 ? Math.abs(moment / weight) : 0;
}
