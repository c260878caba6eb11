import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calc/calculation.ts';

const given = {
  calc: 'chair-stack',
  panelThickness_mm: 180,
  insertLength_mm: 95,
  aimBelowFace_mm: 1,
  allowedBelowFace_mm: [0, 3],
  chairSink_mm: 0,
  chairHeights_mm: [75, 80, 84, 90],
};

// Common practice, as the section adds up: top below face = thickness − (chair − sink) − length; each number below by hand.
describe('chair-stack', () => {
  it('gives the numbers of the contract', () => {
    expect(calculate(given)).toMatchObject({
      contract: 1,
      chairNeeded_mm: 84,
      chair_mm: 84,
      topBelowFace_mm: 1,
      ok: true,
      alternatives: [
        { chair_mm: 80, topBelowFace_mm: 5 },
        { chair_mm: 90, topBelowFace_mm: -5 },
        { chair_mm: 75, topBelowFace_mm: 10 },
      ],
      thicknessRange_mm: [179, 182],
      notes: ['never 90 mm: the top would stand above the face'],
    });
  });

  // By hand: sink 1 asks for 85; 80 lies 180 − 79 − 95 = 6 below; 80 − 1 + 95 + 0 = 174 to 177.
  it('says what would fit where no chair does', () => {
    expect(calculate({ ...given, chairSink_mm: 1, chairHeights_mm: [75, 80, 90] })).toMatchObject({
      chairNeeded_mm: 85,
      chair_mm: 80,
      topBelowFace_mm: 6,
      ok: false,
      thicknessRange_mm: [174, 177],
      notes: [
        'no chair of the stock fits: the best, 80 mm, puts the top 6 mm below the face, allowed 0 to 3 mm below it',
        'chairs of 83 to 86 mm would fit',
        'on the chair of 75 mm an insert of 103 to 106 mm would fit',
        'on the chair of 80 mm an insert of 98 to 101 mm would fit',
        'on the chair of 90 mm an insert of 88 to 91 mm would fit',
        'never 90 mm: the top would stand above the face',
      ],
    });
  });

  it('never passes a top above the face, even where it was allowed', () => {
    expect(calculate({ ...given, allowedBelowFace_mm: [-5, 3], chairHeights_mm: [87] })).toMatchObject({
      topBelowFace_mm: -2,
      ok: false,
      thicknessRange_mm: [182, 185],
      notes: expect.arrayContaining([
        'allowed from -5 mm is counted from 0: a top above the face is never allowed',
        expect.stringContaining('puts the top 2 mm above the face, allowed 0 to 3 mm'),
      ]),
    });
  });

  it('says when there is no room for a chair at all', () => {
    expect(calculate({ ...given, insertLength_mm: 179 })).toMatchObject({
      chairNeeded_mm: 0,
      ok: false,
      notes: expect.arrayContaining(['no room for a chair under this insert: a shorter insert is needed']),
    });
  });

  // 180.3 − 84.2 − 95 = 1.1, not 1.0999999999999943.
  it('leaves out the last figures of floating point', () => {
    expect(calculate({ ...given, panelThickness_mm: 180.3, chairHeights_mm: [84.2] })).toMatchObject({
      topBelowFace_mm: 1.1,
      thicknessRange_mm: [179.2, 182.2],
    });
  });
});
