// Source of the values: data/hardware.json, H9-03 and H9-05 (pages seen), H9-04 (from memory, as the entry says): how far points lie from their middle that scatter
// alike along x and y. A circle that holds half of them has the radius CEP.

import { chiTail } from '../../src/engine/statistics/chi.ts';
import { rayleighRadius } from '../../src/engine/statistics/scatter.ts';
import type { PublishedCase } from './published.ts';

const CEP = rayleighRadius(0.5);

const radius =
  (share: number): PublishedCase['values'][string] =>
  (by) =>
    by.part('radius that holds a share', rayleighRadius(share));

/** Percent of the points between two radii. */
const ring =
  (from: number, to: number): PublishedCase['values'][string] =>
  (by) =>
    by.part('chi distribution', 100 * (chiTail(2, from) - chiTail(2, to)));

export const CASES: readonly PublishedCase[] = [
  {
    entry: 'H9-03',
    how: 'two degrees of freedom, σ = 1',
    values: {
      within_1sigma_percent: ring(0, 1),
      r50: radius(0.5),
      drms_percent: ring(0, Math.SQRT2),
      R95_over_CEP: (by) => by.part('radius that holds a share', rayleighRadius(0.95) / CEP),
    },
  },
  {
    entry: 'H9-04',
    how: 'σ = 1',
    values: { r50: radius(0.5), r90: radius(0.9), r95: radius(0.95), r99: radius(0.99) },
  },
  {
    entry: 'H9-05',
    how: 'rings in multiples of the radius that holds half',
    values: { '1-2': ring(CEP, 2 * CEP), '2-3': ring(2 * CEP, 3 * CEP), '>3': ring(3 * CEP, Number.POSITIVE_INFINITY) },
  },
];
