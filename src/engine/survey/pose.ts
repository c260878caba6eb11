import { compose, type Matrix, minus, multiply, plus, transpose, type Vector } from './vector.ts';

/** A rigid movement p → R p + t, no scale and no mirror: R is a rotation (determinant +1). Lengths mm. */
export interface Pose {
  readonly rotation: Matrix;
  readonly shift: Vector;
}

/** Where a movement brings a point. */
export function movePoint({ rotation, shift }: Pose, point: Vector): Vector {
  return plus(multiply(rotation, point), shift);
}

/** The point that a movement brings to a place. */
export function movePointBack({ rotation, shift }: Pose, place: Vector): Vector {
  return multiply(transpose(rotation), minus(place, shift));
}

/** How a point moves, by its arm from the centre, for a small turn about each axis [mm a rad]: one in 2D, three in 3D. */
export function turnsOf(arm: Vector): readonly Vector[] {
  if (arm.length === 2) return [[0 - arm[1]!, arm[0]!]];
  const [x, y, z] = arm as readonly [number, number, number]; // of three
  return [
    [0, 0 - z, y],
    [z, 0, 0 - x],
    [0 - y, x, 0],
  ];
}

/**
 * The rotation by a turn [rad] about the axis that is its direction (2D: by one angle).
 *
 * Source: Rodrigues' formula, R = 1 + sin θ K + (1 − cos θ) K².
 */
export function rotationOf(turn: Vector): Matrix {
  if (turn.length === 1) {
    const [cos, sin] = [Math.cos(turn[0]!), Math.sin(turn[0]!)];
    return [
      [cos, 0 - sin],
      [sin, cos],
    ];
  }
  const angle = Math.hypot(...turn);
  const identity: Matrix = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  if (angle === 0) return identity;
  const [x, y, z] = turn.map((part) => part / angle) as [number, number, number]; // of three
  const k: Matrix = [
    [0, 0 - z, y],
    [z, 0, 0 - x],
    [0 - y, x, 0],
  ];
  const square = compose(k, k);
  return identity.map((row, i) =>
    row.map((value, j) => value + Math.sin(angle) * k[i]![j]! + (1 - Math.cos(angle)) * square[i]![j]!),
  );
}

/** The movement followed by a small turn about a centre and a shift. */
export function moveOn({ rotation, shift }: Pose, turn: Vector, centre: Vector, by: Vector): Pose {
  const small = rotationOf(turn);
  return {
    rotation: compose(small, rotation),
    shift: plus(plus(multiply(small, minus(shift, centre)), centre), by),
  };
}
