// Lengths that fit, by hand: a sandwich of 70 + 80 + 150 seen from inside has 150 mm of concrete, in a recess of 10 mm inserts up to below 140.

import { describe, expect, it } from 'vitest';
import { faultsOf } from './read.ts';
import { sampleCastIn, sampleItem, sampleJob, samplePanel } from './sample-job.ts';

const layers = [
  { kind: 'outer skin', thickness_mm: 70 },
  { kind: 'insulation', thickness_mm: 80 },
  { kind: 'structural', thickness_mm: 150 },
];
const item = (length_mm: number, changes = {}) =>
  sampleItem({ id: `F16-${length_mm}`, length_mm, embedment_mm: length_mm - 7, ...changes });
const rated = { ratedLoads: [{ role: 'lifting', load_kN: 20, document: 'Invented', conditions: 'any' }] };
const items = [
  item(170),
  item(150),
  item(130),
  item(85),
  item(60, { id: 'F12-60', thread: 'M12' }),
  item(70, { id: 'L16-70', ...rated }),
];

describe('an insert that is too long', () => {
  const read = (name: string, changes = {}) =>
    faultsOf(
      sampleJob({
        panels: [samplePanel({ thickness_mm: 300, layers })],
        items,
        castIns: [sampleCastIn('1', 900, 500, { item: name, face: 'inside', recess_mm: 10, ...changes })],
        connections: [],
      }),
    );

  it('with its foot in the insulation: 130 and 85 mm would fit, no other thread and no lifter', () => {
    expect(read('F16-170')).toEqual([
      'job.castIns[0].item: the foot of F16-170, 170 mm long in a recess of 10 mm, stands in the layer insulation; expected it within one structural layer; M16 of the catalogue that fit: 85 mm (F16-85), 130 mm (F16-130)',
    ]);
  });

  it('with its end in the insulation and its bearing side in the concrete', () => {
    expect(read('F16-150')).toEqual([
      expect.stringMatching(/insulation.*that fit: 85 mm \(F16-85\), 130 mm \(F16-130\)$/),
    ]);
  });

  it('as a lifter: only those that are rated for lifting', () => {
    const faults = read('F16-170', { role: 'lifting' });
    expect(faults.at(-1)).toMatch(/that fit: 70 mm \(L16-70\)$/);
  });

  // A foot of 46 needs 23 mm to the side, one of 28 needs 14: another foot would do, yet it is not the length that is wrong.
  it('names no lengths where the place is wrong and not the length', () => {
    const foot = { kind: 'diameter', diameter_mm: 28, thickness_mm: 7, isFullHead: true };
    const faults = faultsOf(
      sampleJob({
        items: [item(85), item(84, { foot })],
        castIns: [sampleCastIn('1', 20, 500, { item: 'F16-85' })],
        connections: [],
      }),
    );
    expect(faults).toEqual([expect.stringMatching(/would stick out.*expected at least 23 mm$/)]);
  });
});
