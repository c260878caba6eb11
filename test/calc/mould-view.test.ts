import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calc/calculation.ts';

const sheet = [
  [0, 0],
  [3000, 0],
  [3000, 2000],
  [0, 2000],
];
const given = {
  calc: 'mould-view',
  outline_mm: sheet,
  drawnFace: 'outside',
  faceDown: 'outside',
  turn_deg: 0,
  datum: 'bottom-left',
  thickness_mm: 180,
  inserts: [
    { id: 'A', x_mm: 500, y_mm: 300, face: 'outside' },
    { id: 'B', x_mm: 500, y_mm: 300, face: 'inside' },
    { id: 'C', edge: 1, along_mm: 600, fromOutside_mm: 60 },
  ],
};

describe('mould-view', () => {
  // By hand: the outside lies down, so the panel is mirrored: x = 3000 − 500; the side at x = 3000 lies at x = 0.
  it('gives outline, inserts and levels under the keys of the contract', () => {
    expect(calculate(given)).toMatchObject({
      contract: 1,
      outline_mm: [
        [3000, 0],
        [0, 0],
        [0, 2000],
        [3000, 2000],
      ],
      inserts: [
        { id: 'A', x_mm: 2500, y_mm: 300, level: 'on the form' },
        { id: 'B', x_mm: 2500, y_mm: 300, level: 'at the top' },
        { id: 'C', x_mm: 0, y_mm: 600, level: 'edge', aboveForm_mm: 60 },
      ],
    });
  });

  // By hand: drawn and down differ, so nothing is mirrored; 60 from the outside of 180 is 120 above the inside.
  it('keeps the hand with the drawn face up', () => {
    expect(calculate({ ...given, faceDown: 'inside' })).toMatchObject({
      inserts: [
        { x_mm: 500, y_mm: 300, level: 'at the top' },
        { x_mm: 500, y_mm: 300, level: 'on the form' },
        { x_mm: 3000, y_mm: 600, aboveForm_mm: 120 },
      ],
    });
  });

  it('says whether the drawing is mirrored, and whether the datum corner reverses the hand', () => {
    expect(calculate(given)).toMatchObject({ notes: [expect.stringContaining('is mirrored')] });
    expect(calculate({ ...given, drawnFace: 'inside', datum: 'top-left' })).toMatchObject({
      notes: [expect.stringContaining('keeps its hand'), expect.stringContaining('left-handed')],
    });
  });

  it('takes an insert on the outline itself, and a panel without inserts', () => {
    expect(calculate({ ...given, inserts: [{ id: 'A', x_mm: 0, y_mm: 300, face: 'outside' }] })).toMatchObject({
      inserts: [{ x_mm: 3000 }],
    });
    expect(calculate({ ...given, inserts: [] })).toMatchObject({ inserts: [] });
  });

  it('gives an insert on a face no height, and a clean zero', () => {
    const { inserts } = calculate({
      ...given,
      turn_deg: 180,
      inserts: [{ id: 'A', x_mm: 3000, y_mm: 2000, face: 'outside' }],
    }) as { inserts: readonly object[] };
    expect(inserts).toEqual([{ id: 'A', x_mm: 3000, y_mm: 0, level: 'on the form' }]);
  });
});
