/** A point or a direction in space, [x, y, z] in mm. Of a panel: x and y of the drawn face, z the depth below the outside face. */
export type Vector = readonly [x: number, y: number, z: number];

/** The box along the axes that a solid just fills [mm]. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly minZ: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly maxZ: number;
}

/** A round solid with flat ends, square to its axis. */
export interface Cylinder extends Bounds {
  readonly kind: 'cylinder';
  /** Middle of one end, and of the other. */
  readonly from: Vector;
  readonly to: Vector;
  /** Unit vector from the one to the other. */
  readonly axis: Vector;
  /** [mm] */
  readonly length: number;
  /** [mm] */
  readonly radius: number;
}

/** The smallest convex solid that holds all of its corners: a box, a prism, a flat piece of a side. */
export interface Block extends Bounds {
  readonly kind: 'block';
  readonly corners: readonly Vector[];
}

export type Solid = Cylinder | Block;

/** Lengths below this [mm] are none: a cylinder has to be longer. */
const SHORTEST = 1e-6;

/**
 * A cylinder with flat ends.
 * @param from, to middles of its ends [mm]
 * @param radius [mm]
 * @throws RangeError when a number is not finite, the radius is not above zero or the ends fall together
 */
export function makeCylinder(from: Vector, to: Vector, radius: number): Cylinder {
  refuseUnmeasured([from, to], 'a cylinder');
  if (!(radius > 0 && radius < Number.POSITIVE_INFINITY))
    throw new RangeError(`the radius of a cylinder is ${radius} mm; expected more than 0`);
  const [dx, dy, dz] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  if (length < SHORTEST) throw new RangeError(`a cylinder is ${length} mm long; expected at least ${SHORTEST} mm`);
  const axis: Vector = [dx / length, dy / length, dz / length];
  // How far the round end reaches along each axis of space: the radius times the sine of the angle between the two.
  const rx = radius * Math.sqrt(axis[1] * axis[1] + axis[2] * axis[2]);
  const ry = radius * Math.sqrt(axis[0] * axis[0] + axis[2] * axis[2]);
  const rz = radius * Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1]);
  return {
    kind: 'cylinder',
    from,
    to,
    axis,
    length,
    radius,
    minX: Math.min(from[0], to[0]) - rx,
    minY: Math.min(from[1], to[1]) - ry,
    minZ: Math.min(from[2], to[2]) - rz,
    maxX: Math.max(from[0], to[0]) + rx,
    maxY: Math.max(from[1], to[1]) + ry,
    maxZ: Math.max(from[2], to[2]) + rz,
  };
}

/**
 * The smallest convex solid around some corners.
 * @param corners [mm], in any order; three or four of them may lie in one plane
 * @throws RangeError when a number is not finite or there is no corner
 */
export function makeBlock(corners: readonly Vector[]): Block {
  if (corners.length === 0) throw new RangeError('a block has no corners; expected at least one');
  refuseUnmeasured(corners, 'a block');
  const least = (axis: 0 | 1 | 2) => corners.reduce((min, corner) => Math.min(min, corner[axis]), corners[0]![axis]);
  const most = (axis: 0 | 1 | 2) => corners.reduce((max, corner) => Math.max(max, corner[axis]), corners[0]![axis]);
  return {
    kind: 'block',
    corners,
    minX: least(0),
    minY: least(1),
    minZ: least(2),
    maxX: most(0),
    maxY: most(1),
    maxZ: most(2),
  };
}

/** A solid moved without turning, by a vector [mm]. */
export function shiftSolid(solid: Solid, [x, y, z]: Vector): Solid {
  const shift = (p: Vector): Vector => [p[0] + x, p[1] + y, p[2] + z];
  return solid.kind === 'cylinder'
    ? makeCylinder(shift(solid.from), shift(solid.to), solid.radius)
    : makeBlock(solid.corners.map(shift));
}

/**
 * A solid turned about an axis through a point.
 * @param about unit vector of the axis
 * @param angle [rad], from x towards y where the axis is [0, 0, 1]
 */
export function turnSolid(solid: Solid, centre: Vector, about: Vector, angle: number): Solid {
  const turn = (p: Vector): Vector => turnPoint(p, centre, about, angle);
  return solid.kind === 'cylinder'
    ? makeCylinder(turn(solid.from), turn(solid.to), solid.radius)
    : makeBlock(solid.corners.map(turn));
}

/** By the formula of Rodrigues: v cos θ + (k × v) sin θ + k (k·v)(1 − cos θ). */
function turnPoint(p: Vector, centre: Vector, [kx, ky, kz]: Vector, angle: number): Vector {
  const [x, y, z] = [p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]];
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const along = (kx * x + ky * y + kz * z) * (1 - cos);
  return [
    centre[0] + x * cos + (ky * z - kz * y) * sin + kx * along,
    centre[1] + y * cos + (kz * x - kx * z) * sin + ky * along,
    centre[2] + z * cos + (kx * y - ky * x) * sin + kz * along,
  ];
}

/** The middle of a solid: of its axis, or of its corners. */
export function findMiddle(solid: Solid): Vector {
  const points = solid.kind === 'cylinder' ? [solid.from, solid.to] : solid.corners;
  const mean = (axis: 0 | 1 | 2) => points.reduce((sum, p) => sum + p[axis], 0) / points.length;
  return [mean(0), mean(1), mean(2)];
}

function refuseUnmeasured(points: readonly Vector[], what: string): void {
  for (const point of points)
    if (!point.every(Number.isFinite))
      throw new RangeError(`${what} has a corner or end at (${point.join(', ')}); expected finite numbers of mm`);
}
