// Source of the values: data/hardware.json, H11-05 (S. Umeyama 1991; the points seen, the printed result recalled).

import { fitPoints } from '../../src/engine/survey/fit-points.ts';
import type { Vector } from '../../src/engine/survey/vector.ts';
import type { PublishedCase } from './published.ts';

const X: readonly Vector[] = [
  [0, 0],
  [1, 0],
  [0, 2],
];
const Y: readonly Vector[] = [
  [0, 0],
  [-1, 0],
  [0, 2],
];

/** The paper's scale and shift follow from the rotation: c = Σ (y − ȳ)·R(x − x̄) / Σ |x − x̄|², t = ȳ − c R x̄. The product has no scale. */
function solve(): { readonly c: number; readonly rotation: readonly Vector[]; readonly t: Vector } {
  const { rotation } = fitPoints(X.map((measured, i) => ({ measured, design: Y[i]!, weight: 1 })));
  const mean = (points: readonly Vector[], k: number) => points.reduce((sum, at) => sum + at[k]!, 0) / points.length;
  const turned = (x: number, y: number) => rotation.map((row) => row[0]! * x + row[1]! * y);
  const arms = X.map(([x, y], i) => ({
    turned: turned(x! - mean(X, 0), y! - mean(X, 1)),
    to: Y[i]!.map((value, k) => value - mean(Y, k)),
  }));
  const product = arms.reduce((sum, arm) => sum + arm.turned[0]! * arm.to[0]! + arm.turned[1]! * arm.to[1]!, 0);
  const c = product / arms.reduce((sum, arm) => sum + arm.turned[0]! ** 2 + arm.turned[1]! ** 2, 0);
  const middle = turned(mean(X, 0), mean(X, 1));
  return { c, rotation, t: middle.map((value, k) => mean(Y, k) - c * value) };
}

const part =
  (find: (solved: ReturnType<typeof solve>) => number): PublishedCase['values'][string] =>
  (by) =>
    by.part('rigid fit of points', find(solve()));

export const CASES: readonly PublishedCase[] = [
  {
    entry: 'H11-05',
    how: "the rotation is ours; the paper's scale, which the product has not, and its shift follow from it",
    values: {
      c: part(({ c }) => c),
      R11: part(({ rotation }) => rotation[0]![0]!),
      R12: part(({ rotation }) => rotation[0]![1]!),
      't 0': part(({ t }) => t[0]!),
      't 1': part(({ t }) => t[1]!),
    },
  },
];
