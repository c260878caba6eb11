// Published values through the ten-minute answer with everything said. Source: AISC Design Guide 1, 3rd ed. (2024), as in
// test/published/: example 4.7-3 (four anchors), example 4.7-9 (two anchors), table 4-2 (pull-out of heavy hexagon nuts).
// Tolerance: half a unit of the last printed digit; from there to the unrounded value where the guide multiplies rounded ones.

import { describe, expect, it } from 'vitest';
import type { OutOfPlaceCase } from '../../../src/assess/out-of-place/case.ts';
import { INCH, KIP, PSI, SQUARE_INCH } from '../../published/inch-pound.ts';
import { compute, DOCUMENT } from './any-case.ts';

const BODY = 40;

/** Tension on one insert [kip] by ACI 318-19, far from edges, of an embedment [in], a bearing area [in²] and a strength [psi]. */
function findTension(
  embedment: number,
  bearing: number,
  strength: number,
  beside: Pick<OutOfPlaceCase, 'neighbours' | 'spacing_mm'>,
) {
  const given: Partial<OutOfPlaceCase> = {
    ...beside,
    thread: 'M24',
    length_mm: embedment * INCH + 20,
    edge1_mm: 1500,
    edge2_mm: 1500,
    thickness_mm: embedment * INCH + 300,
    strength_MPa: strength * PSI,
  };
  const known = {
    document: DOCUMENT,
    embedment_mm: embedment * INCH,
    bodyDiameter_mm: BODY,
    footDiameter_mm: Math.sqrt(BODY ** 2 + (4 * bearing * SQUARE_INCH) / Math.PI),
    steelUltimate_MPa: 1000,
    steelYield_MPa: 900,
    boltClass: '10.9',
    engagement_mm: 48,
  } as const;
  const { force, mode } = compute(given, known, 'ACI 318-19').limits[0]!;
  return { kip: force! / KIP, mode };
}

const ALONE = { neighbours: 0, spacing_mm: null } as const;

describe('published values by the ten-minute answer', () => {
  it.each([
    [0.911, 3000, 15.3],
    [0.911, 4000, 20.4],
    [0.911, 5000, 25.5],
    [1.19, 3000, 20.0],
    [1.19, 4000, 26.7],
    [1.5, 3000, 25.2],
  ])('pull-out of %d in² in %d psi', (bearing, strength, printed) => {
    const { kip, mode } = findTension(20, bearing, strength, ALONE);
    expect(mode).toBe('pull-out');
    expect(Math.abs(kip - printed)).toBeLessThanOrEqual(0.05);
  });
  it('breakout of four, 15 in deep, 4 in apart: 76.3 kip in all, unrounded 76.6', () => {
    const { kip, mode } = findTension(15, 9, 4000, { neighbours: 3, spacing_mm: 4 * INCH });
    expect(mode).toBe('concrete-cone');
    expect(4 * kip).toBeGreaterThan(76.25);
    expect(4 * kip).toBeLessThan(76.65);
  });
  it('breakout of two, 12 in deep, 6 in apart: 51.7 kip in all, unrounded 52.0', () => {
    const { kip, mode } = findTension(12, 9, 4000, { neighbours: 1, spacing_mm: 6 * INCH });
    expect(mode).toBe('concrete-cone');
    expect(2 * kip).toBeGreaterThan(51.65);
    expect(2 * kip).toBeLessThan(52.05);
  });
});
