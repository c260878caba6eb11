import { expect, it } from 'vitest';
import { measureRay } from '../../../src/engine/geometry/ray.ts';
import { prepareRegion } from '../../../src/engine/geometry/region.ts';

const region = prepareRegion(
  [
    [0, 0],
    [1000, 0],
    [1000, 600],
    [0, 600],
  ],
  [
    [
      [300, 200],
      [500, 200],
      [500, 400],
      [300, 400],
    ],
  ],
);

// Distances read off the coordinates.
it('ends at the first side that it meets', () => {
  expect(measureRay(region, 100, 300, 1, 0)).toBe(200);
  expect(measureRay(region, 100, 300, -1, 0)).toBe(100);
  expect(measureRay(region, 100, 500, 1, 0)).toBe(900);
  expect(measureRay(region, 100, 100, 0.6, 0.8)).toBeCloseTo(250 + 1000 / 12, 9);
});

it('starts on a corner and runs along a side without being stopped by them', () => {
  expect(measureRay(region, 500, 400, 1, 0)).toBe(500);
  expect(measureRay(region, 300, 200, -1, 0)).toBe(300);
});

it('is stopped by the end of a side', () => {
  expect(measureRay(region, 100, 400, 1, 0)).toBe(200);
});

it('does not end on an infinite face', () => {
  expect(measureRay(prepareRegion(null, []), 0, 0, 1, 0)).toBe(Number.POSITIVE_INFINITY);
});
