import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calc/calculation.ts';
import { refuseAll } from './wrong-inputs.ts';

const A = { id: 'A', x_mm: -100, y_mm: 0, diameter_mm: 18, slot_mm: 0, angle_deg: 0 };
const B = { id: 'B', x_mm: 100, y_mm: 0, diameter_mm: 18, slot_mm: 10, angle_deg: 90 };
const asCast = [
  { id: 'B', x_mm: 100, y_mm: 4 },
  { id: 'A', x_mm: -98.5, y_mm: 0 },
];
const right = { calc: 'hole-fit', bolt_mm: 16, holes: [A, B], asCast };
const without = (key: keyof typeof right) => Object.fromEntries(Object.entries(right).filter(([name]) => name !== key));
const withHole = (more: object) => ({ ...right, holes: [A, { ...B, ...more }] });
const withBolt = (more: object) => ({ ...right, asCast: [asCast[0], { ...asCast[1], ...more }] });

describe('hole-fit', () => {
  it('gives the best movement in the units of the contract, each hole by its name', () => {
    // The plate turns so that its holes lie along the bolts, these √(198.5² + 4²) apart: half of what that is short of 200 is off each slack of 1.
    expect(calculate(right)).toMatchObject({
      contract: 1,
      fits: true,
      margin_mm: expect.closeTo(1 - (200 - Math.hypot(198.5, 4)) / 2, 4) as number,
      holes: [{ id: 'A' }, { id: 'B' }],
    });
  });

  it('turns degrees at the border, both ways', () => {
    const turned = { ...right, holes: [A, { ...B, angle_deg: 0, slot_mm: 0 }] };
    const asStand = (degrees: number) =>
      [-100, 100].map((x, i) => ({
        id: 'AB'[i],
        x_mm: x * Math.cos((degrees * Math.PI) / 180),
        y_mm: x * Math.sin((degrees * Math.PI) / 180),
      }));
    expect(calculate({ ...turned, asCast: asStand(30) })).toMatchObject({
      fits: true,
      margin_mm: expect.closeTo(1, 4) as number,
      move: { dx_mm: expect.closeTo(0, 4) as number, turn_deg: expect.closeTo(30, 3) as number },
      roundHoleNeeded_mm: expect.closeTo(16, 4) as number,
    });
    const held = calculate({ ...turned, asCast: asStand(30), mostTurn_deg: 1 });
    expect(held).toMatchObject({ fits: false, move: { turn_deg: expect.closeTo(1, 6) as number } });
    // 29° are left over: 2 · 100 sin 14.5° = 50.08 mm off, of a slack of 1.
    expect(held).toMatchObject({
      margin_mm: expect.closeTo(1 - 200 * Math.sin((14.5 * Math.PI) / 180), 4) as number,
      roundHoleNeeded_mm: expect.closeTo(16 + 400 * Math.sin((14.5 * Math.PI) / 180), 3) as number,
    });
  });

  it('reads the direction of a slot: of one along x the bolts may be apart as far as it is long', () => {
    const apart = [
      { id: 'A', x_mm: -100, y_mm: 0 },
      { id: 'B', x_mm: 106, y_mm: 0 },
    ];
    expect(calculate({ ...withHole({ angle_deg: 0 }), asCast: apart })).toMatchObject({ fits: true });
    expect(calculate({ ...withHole({ angle_deg: 90 }), asCast: apart, mostTurn_deg: 0 })).toMatchObject({
      fits: false,
    });
  });

  it('takes a round hole without slot and angle', () => {
    const { slot_mm: _slot, angle_deg: _angle, ...round } = A;
    expect(calculate({ ...right, holes: [round], asCast: [asCast[1]] })).toMatchObject({
      fits: true,
      move: { turn_deg: 0 },
      roundHoleNeeded_mm: expect.closeTo(16, 5) as number,
    });
  });
});

describe('wrong inputs of hole-fit', () => {
  refuseAll(right, [
    ['no bolt', without('bolt_mm'), 'bolt_mm', /diameter of the bolts/],
    ['a bolt of nothing', { ...right, bolt_mm: 0 }, 'bolt_mm', /above 0/],
    ['a bolt as text', { ...right, bolt_mm: 'M16' }, 'bolt_mm', /number above 0/],
    ['no holes', without('holes'), 'holes', /list of holes/],
    ['an empty plate', { ...right, holes: [], asCast: [] }, 'holes', /at least one hole/],
    ['a hole that is a number', { ...right, holes: [18] }, 'holes[0]', /a hole \{/],
    ['a hole without a name', withHole({ id: undefined }), 'holes[1].id', /name of the hole/],
    ['a hole with an empty name', withHole({ id: '' }), 'holes[1].id', /not empty/],
    ['two holes of one name', withHole({ id: 'A' }), 'holes[1].id', /two holes/],
    ['a hole without x', withHole({ x_mm: undefined }), 'holes[1].x_mm', /middle of the hole/],
    ['a hole whose y is no number', withHole({ y_mm: Number.NaN }), 'holes[1].y_mm', /middle of the hole/],
    ['a hole of no diameter', withHole({ diameter_mm: 0 }), 'holes[1].diameter_mm', /above 0/],
    ['a hole without a diameter', withHole({ diameter_mm: undefined }), 'holes[1].diameter_mm', /width of the slot/],
    ['a slot of negative length', withHole({ slot_mm: -1 }), 'holes[1].slot_mm', /from 0/],
    ['an angle as text', withHole({ angle_deg: '90°' }), 'holes[1].angle_deg', /direction of the slot/],
    ['a key that is none', withHole({ width_mm: 18 }), 'holes[1].width_mm', /not a key/],
    ['no bolts as they stand', without('asCast'), 'asCast', /one for each hole/],
    ['a bolt too few', { ...right, asCast: [asCast[0]] }, 'asCast', /no bolt for "A"/],
    ['a bolt for no hole', withBolt({ id: 'C' }), 'asCast[1].id', /"C" is not a hole/],
    ['two bolts of one name', withBolt({ id: 'B' }), 'asCast[1].id', /two bolts/],
    ['a bolt without y', withBolt({ y_mm: undefined }), 'asCast[1].y_mm', /y of the bolt/],
    ['a bolt beyond all places', withBolt({ x_mm: 2e6 }), 'asCast[1].x_mm', /from -1000000/],
    ['a turn of more than half a circle', { ...right, mostTurn_deg: 200 }, 'mostTurn_deg', /from 0 to 180/],
  ]);
});
