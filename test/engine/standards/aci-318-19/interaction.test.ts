// One number stands for the three rules of ACI 318-19, 17.8. Expected: those rules, written out.

import { expect, it } from 'vitest';
import { interaction } from '../../../../src/engine/standards/aci-318-19/interaction.ts';

/** 17.8.1 to 17.8.3: the full strength of one where the other is at most 0.2, else a sum of at most 1.2. */
function isAllowed(n: number, v: number): boolean {
  if (v <= 0.2) return n <= 1;
  if (n <= 0.2) return v <= 1;
  return n + v <= 1.2;
}

it('is at most 1 exactly where the three rules allow the loads', () => {
  // Steps of 1/97 and 1/89 never add up to 1.2, so no pair lies on the line itself.
  let allowed = 0;
  let refused = 0;
  for (let i = 0; i <= 130; i++)
    for (let j = 0; j <= 120; j++) {
      const [n, v] = [i / 97, j / 89];
      expect(interaction(n, v) <= 1, `n ${n}, v ${v}`).toBe(isAllowed(n, v));
      if (isAllowed(n, v)) allowed += 1;
      else refused += 1;
    }
  expect(allowed).toBeGreaterThan(1000);
  expect(refused).toBeGreaterThan(1000);
});

it('grows in step with the load', () => {
  // max(0.9, 0.6, 1.5/1.2) = 1.25, twice that at twice the load.
  expect(interaction(0.9, 0.6)).toBeCloseTo(1.25, 12);
  expect(interaction(1.8, 1.2)).toBeCloseTo(2.5, 12);
});
