import { viewEdge } from '../engine/checks/edge-view.ts';
import type { PreparedAnchorage } from '../engine/checks/prepared.ts';
import type { ResolvedPlate } from '../job/resolve/resolved-connection.ts';
import { nameDirection } from './combinations.ts';

/** A direction of shear on a face seen from its front; a unit vector. */
export interface ShearDirection {
  /** Counter-clockwise from x: `270°` points down. */
  readonly name: string;
  readonly ux: number;
  readonly uy: number;
  /** Distance of the nearest insert to an edge in sight that way [mm]; null where there is none. */
  readonly edge: number | null;
}

/** Two lines whose angle is below this are parallel [rad]. */
const PARALLEL = 1e-9;

/** Directions of a face's own axes. */
const AXES = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/** Toward every edge that any insert sees, and along both axes of the face; each direction once, by its angle. */
export function findShearDirections(p: PreparedAnchorage): readonly ShearDirection[] {
  const found = new Map<string, ShearDirection>();
  for (const side of p.region.sides) {
    const view = viewEdge(p, side);
    if (view === null) continue;
    const name = nameDirection(side.nx, side.ny);
    const edge = Math.min(...view.distance, found.get(name)?.edge ?? Number.POSITIVE_INFINITY);
    found.set(name, { name, ux: side.nx, uy: side.ny, edge });
  }
  for (const [ux, uy] of AXES) {
    const name = nameDirection(ux, uy);
    if (!found.has(name)) found.set(name, { name, ux, uy, edge: null });
  }
  return [...found.values()].sort((a, b) => Number.parseFloat(a.name) - Number.parseFloat(b.name));
}

/** The direction a quarter turn from another, to one side of it. */
export function turnQuarter({ ux, uy }: ShearDirection, to: 'left' | 'right'): ShearDirection {
  const [x, y] = to === 'left' ? [-uy, ux] : [uy, -ux];
  return { name: nameDirection(x, y), ux: x, uy: y, edge: null };
}

/** Which inserts share a shear: all, or those whose holes let them. A bolt in a slot takes it only along its one line. */
export function findSharing(plate: ResolvedPlate | null, count: number, direction: ShearDirection): readonly boolean[] {
  if (plate === null) return Array.from({ length: count }, () => true);
  return plate.bolts.map(({ takesShear }) => {
    if (typeof takesShear === 'boolean') return takesShear;
    const [x, y] = takesShear.onlyAlong;
    return Math.abs(x * direction.uy - y * direction.ux) < PARALLEL;
  });
}
