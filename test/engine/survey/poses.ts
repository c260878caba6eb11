import fc from 'fast-check';
import { movePointBack, type Pose, rotationOf } from '../../../src/engine/survey/pose.ts';
import type { Vector } from '../../../src/engine/survey/vector.ts';

const turn = fc.double({ min: -3.1, max: 3.1, noNaN: true });
const far = fc.integer({ min: -2_000_000, max: 2_000_000 });

/** Any rigid movement of the plane, of space: the instrument stands anywhere. */
export const flatPose: fc.Arbitrary<Pose> = fc
  .tuple(turn, far, far)
  .map(([angle, x, y]) => ({ rotation: rotationOf([angle]), shift: [x, y] }));

export const spacePose: fc.Arbitrary<Pose> = fc
  .tuple(fc.tuple(turn, turn, turn), far, far, far)
  .map(([[a, b, c], x, y, z]) => ({ rotation: rotationOf([a / 2, b / 2, c / 2]), shift: [x, y, z] }));

/** What an instrument has of a place of the panel, without any error. */
export const seenFrom = (pose: Pose, place: Vector): Vector => movePointBack(pose, place);

/** Numbers that look like chance and are the same every time. */
export function makeNormal(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Corners of a panel of 3 × 2 m and 180 mm in the frame of its drawn face. */
export const CORNERS: readonly Vector[] = [
  [0, 0, 0],
  [3000, 0, 0],
  [3000, 2000, 0],
  [0, 2000, 0],
  [0, 0, -180],
  [3000, 0, -180],
];

export const flat = (point: Vector): Vector => point.slice(0, 2);
