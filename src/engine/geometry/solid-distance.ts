import { measureConvex, type Support } from './convex-distance.ts';
import type { Block, Cylinder, Solid, Vector } from './solid.ts';

/** How far a nearest pair of axis points may be off square to an axis [mm] for the closed form; it is off by no more than this. */
const SQUARE = 1e-8;

/**
 * Distance of two solids [mm], to 1e-6 mm (see LARGEST_GAP of `measureConvex` for the few exceptions); 0 where they touch or overlap.
 *
 * Where the shortest line between the axes of two cylinders stands square on both, it is that line less the radii; elsewhere, and for
 * blocks, it comes from `measureConvex`.
 */
export function measureSolids(a: Solid, b: Solid): number {
  return measureWithin(a, b, Number.POSITIVE_INFINITY);
}

/**
 * The same where it is below a limit, and Infinity where it is not: most pairs are far apart, and a lower bound is found at a
 * fraction of the cost.
 * @param limit [mm]
 */
export function measureWithin(a: Solid, b: Solid, limit: number): number {
  if (measureBounds(a, b) >= limit) return Number.POSITIVE_INFINITY;
  if (a.kind === 'cylinder' && b.kind === 'cylinder') {
    const [between, isSquare] = measureAxes(a, b);
    const least = between - a.radius - b.radius;
    if (least >= limit) return Number.POSITIVE_INFINITY;
    if (isSquare) return Math.max(0, least);
  }
  const distance = measureClose(a, b);
  return distance < limit ? distance : Number.POSITIVE_INFINITY;
}

/** Distance of the boxes around two solids [mm]; never above that of the solids. */
export function measureBounds(a: Solid, b: Solid): number {
  const x = Math.max(0, a.minX - b.maxX, b.minX - a.maxX);
  const y = Math.max(0, a.minY - b.maxY, b.minY - a.maxY);
  const z = Math.max(0, a.minZ - b.maxZ, b.minZ - a.maxZ);
  return Math.sqrt(x * x + y * y + z * z);
}

/**
 * Distance of the axes of two cylinders, end to end [mm], and whether the line between the nearest points stands square on both.
 */
function measureAxes(a: Cylinder, b: Cylinder): [distance: number, isSquare: boolean] {
  const [ux, uy, uz] = a.axis;
  const [vx, vy, vz] = b.axis;
  const wx = a.from[0] - b.from[0];
  const wy = a.from[1] - b.from[1];
  const wz = a.from[2] - b.from[2];
  const cos = ux * vx + uy * vy + uz * vz;
  const onA = ux * wx + uy * wy + uz * wz;
  const onB = vx * wx + vy * wy + vz * wz;
  const sine = 1 - cos * cos;
  // Parallel axes: any point will do as a start, the clamping below finds one of the nearest pairs.
  let s = sine > 1e-14 ? clamp((cos * onB - onA) / sine, a.length) : 0;
  const t = clamp(cos * s + onB, b.length);
  s = clamp(cos * t - onA, a.length);
  const dx = wx + s * ux - t * vx;
  const dy = wy + s * uy - t * vy;
  const dz = wz + s * uz - t * vz;
  const offA = Math.abs(dx * ux + dy * uy + dz * uz);
  const offB = Math.abs(dx * vx + dy * vy + dz * vz);
  return [Math.sqrt(dx * dx + dy * dy + dz * dz), offA <= SQUARE && offB <= SQUARE];
}

function clamp(value: number, most: number): number {
  return Math.min(most, Math.max(0, value));
}

/** Distance by the general method, with the origin near both and long cylinders cut to the piece that counts: rounding stays small. */
function measureClose(a: Solid, b: Solid): number {
  const origin: Vector = [
    middleOf(a.minX, a.maxX, b.minX, b.maxX),
    middleOf(a.minY, a.maxY, b.minY, b.maxY),
    middleOf(a.minZ, a.maxZ, b.minZ, b.maxZ),
  ];
  const first = cutToReach(openForm(a, origin), openForm(b, origin));
  const second = cutToReach(openForm(b, origin), first);
  const p = first.middle;
  const q = second.middle;
  return measureConvex(first.support, second.support, [p[0] - q[0], p[1] - q[1], p[2] - q[2]]);
}

/** The middle of what two ranges share, or of the gap between them. */
function middleOf(minA: number, maxA: number, minB: number, maxB: number): number {
  return (Math.max(minA, minB) + Math.min(maxA, maxB)) / 2;
}

interface Form {
  readonly cylinder: Cylinder | null;
  /** Ends of a cylinder along its axis, from the foot of the origin on that axis [mm]. */
  readonly from: number;
  readonly to: number;
  readonly foot: Vector;
  readonly middle: Vector;
  readonly support: Support;
}

function openForm(solid: Solid, origin: Vector): Form {
  return solid.kind === 'block' ? openBlock(solid, origin) : openCylinder(solid, origin);
}

function openBlock({ corners }: Block, [ox, oy, oz]: Vector): Form {
  const points = corners.map(([x, y, z]): Vector => [x - ox, y - oy, z - oz]);
  const support: Support = (x, y, z) => {
    let farthest = points[0]!;
    let most = Number.NEGATIVE_INFINITY;
    for (const point of points) {
      const reach = x * point[0] + y * point[1] + z * point[2];
      if (reach <= most) continue;
      most = reach;
      farthest = point;
    }
    return farthest;
  };
  return { cylinder: null, from: 0, to: 0, foot: points[0]!, middle: points[0]!, support };
}

function openCylinder(cylinder: Cylinder, [ox, oy, oz]: Vector): Form {
  const { from, axis, length } = cylinder;
  const [x, y, z] = [from[0] - ox, from[1] - oy, from[2] - oz];
  const along = -(x * axis[0] + y * axis[1] + z * axis[2]);
  const foot: Vector = [x + along * axis[0], y + along * axis[1], z + along * axis[2]];
  return makeForm(cylinder, -along, length - along, foot);
}

function makeForm(cylinder: Cylinder, from: number, to: number, foot: Vector): Form {
  const [ux, uy, uz] = cylinder.axis;
  const [fx, fy, fz] = foot;
  const { radius } = cylinder;
  const support: Support = (x, y, z) => {
    const along = x * ux + y * uy + z * uz;
    const end = along > 0 ? to : from;
    let rx = x - along * ux;
    let ry = y - along * uy;
    let rz = z - along * uz;
    // Nearly along the axis what is left is largely rounding and not square to it: once more.
    const rest = rx * ux + ry * uy + rz * uz;
    rx -= rest * ux;
    ry -= rest * uy;
    rz -= rest * uz;
    const across = Math.sqrt(rx * rx + ry * ry + rz * rz);
    // Straight along the axis every point of the end is as far; its middle is taken.
    const share = across > 1e-13 * Math.abs(along) ? radius / across : 0;
    return [fx + end * ux + share * rx, fy + end * uy + share * ry, fz + end * uz + share * rz];
  };
  const half = (from + to) / 2;
  const middle: Vector = [fx + half * ux, fy + half * uy, fz + half * uz];
  return { cylinder, from, to, foot, middle, support };
}

/**
 * A cylinder cut to the piece of its axis that the other solid reaches across. From any point the nearest one of a cylinder lies at the
 * same place along the axis, or at the nearer end: nothing that is cut off is nearest.
 */
function cutToReach(form: Form, other: Form): Form {
  const { cylinder, from, to, foot } = form;
  if (cylinder === null) return form;
  const [x, y, z] = cylinder.axis;
  const reach = (p: Vector) => p[0] * x + p[1] * y + p[2] * z;
  const least = reach(other.support(-x, -y, -z));
  const most = reach(other.support(x, y, z));
  return makeForm(cylinder, Math.min(to, Math.max(from, least)), Math.max(from, Math.min(to, most)), foot);
}
