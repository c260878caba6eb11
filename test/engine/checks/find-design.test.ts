import { expect, it } from 'vitest';
import { findDesign } from '../../../src/engine/checks/verdict.ts';
import { findEdition } from '../../../src/engine/standards/editions.ts';
import { standardNames } from '../../../src/engine/standards/standard-name.ts';

// γ of EN 1992-4: 150/1.5 = 100; φ of AS 5216 and ACI 318: 0.7 · 150 = 105.
it.each(standardNames)('%s: the fast path, the edition and its clause give the same design resistance', (name) => {
  const { safetyFactor, design } = findEdition(name);
  const safety = name === 'EN 1992-4' ? 1.5 : 0.7;
  const fast = findDesign({ safetyDivides: safetyFactor === 'divides' }, 150_000, safety);
  expect(fast).toBeCloseTo(name === 'EN 1992-4' ? 100_000 : 105_000, 6);
  expect(fast).toBe(design.fn(150_000, safety));
});
