import fc from 'fast-check';
import { type Cylinder, makeBlock, makeCylinder, type Solid, type Vector } from '../../../src/engine/geometry/solid.ts';

export const add = (a: Vector, b: Vector, share = 1): Vector => [
  a[0] + share * b[0],
  a[1] + share * b[1],
  a[2] + share * b[2],
];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const lengthOf = (v: Vector): number => Math.sqrt(dot(v, v));

/** Numbers between 0 and 1 in steps of a millionth: fast-check shrinks whole numbers well. */
const share = fc.integer({ min: 0, max: 1_000_000 }).map((n) => n / 1_000_000);
const between = (least: number, most: number) => share.map((s) => least + s * (most - least));

export const point = (reach: number): fc.Arbitrary<Vector> =>
  fc.tuple(between(-reach, reach), between(-reach, reach), between(-reach, reach));

/** Any direction; straight down and along the face come often, as in panels. */
export const direction: fc.Arbitrary<Vector> = fc.oneof(
  fc.constant<Vector>([0, 0, 1]),
  between(0, 2 * Math.PI).map((a): Vector => [Math.cos(a), Math.sin(a), 0]),
  fc.tuple(between(-1, 1), between(0, 2 * Math.PI)).map(([z, a]): Vector => {
    const r = Math.sqrt(1 - z * z);
    return [r * Math.cos(a), r * Math.sin(a), z];
  }),
);

export const cylinder = (reach: number, longest: number): fc.Arbitrary<Cylinder> =>
  fc
    .tuple(point(reach), direction, between(1, longest), between(2, 30))
    .map(([at, along, length, radius]) => makeCylinder(at, add(at, along, length), radius));

/** A box that stands any way. */
export const box: fc.Arbitrary<Solid> = fc
  .tuple(point(80), direction, between(0, Math.PI), between(5, 150), between(5, 150), between(5, 60))
  .map(([at, along, turn, length, width, height]) => {
    const other: Vector = Math.abs(along[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1];
    const across = cross(along, other);
    const unit = add([0, 0, 0], across, 1 / lengthOf(across));
    const third = cross(along, unit);
    const v: Vector = add(add([0, 0, 0], unit, Math.cos(turn)), third, Math.sin(turn));
    const w = cross(along, v);
    return makeBlock(
      [0, 1].flatMap((i) =>
        [0, 1].flatMap((j) => [0, 1].map((k) => add(add(add(at, along, i * length), v, j * width), w, k * height))),
      ),
    );
  });

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** The point of a cylinder nearest to a point: along the axis to the nearer end, across it to the surface. */
export function projectOnCylinder({ from, axis, length, radius }: Cylinder, p: Vector): Vector {
  const off = add(p, from, -1);
  const along = dot(off, axis);
  const across = add(off, axis, -along);
  const r = lengthOf(across);
  const onAxis = add(from, axis, Math.min(length, Math.max(0, along)));
  return add(onAxis, across, r > radius ? radius / r : 1);
}

/** How far a cylinder reaches in a unit direction. */
export function reachOfCylinder({ from, to, axis, radius }: Cylinder, n: Vector): number {
  const along = dot(axis, n);
  return Math.max(dot(from, n), dot(to, n)) + radius * lengthOf(add(n, axis, -along));
}
