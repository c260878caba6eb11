// Where each method holds, on what, and when: common practice of precast yards, written down here by hand.

import { describe, expect, it } from 'vitest';
import {
  findHoldingMethod,
  findHoldingStage,
  type HoldingMethodName,
  type HoldingPlace,
  holdingMethodNames,
  listHoldingPlaces,
} from '../../../src/engine/form/holding-methods.ts';
import { findUsualScatter } from '../../../src/engine/form/holding-scatter.ts';
import { findAsideAlongAxis, findAsideAtDistance } from '../../../src/engine/form/tilt.ts';

type Stages = Record<HoldingPlace, 1 | 2 | null>;

const ON_FORM: Stages = { 'mould face': 1, 'trowelled face': null, edge: 1 };
const OPEN: Stages = { 'mould face': null, 'trowelled face': 2, edge: null };

const practice: Record<HoldingMethodName, Stages> = {
  'nail-on plate': ON_FORM,
  'stick-on plate': ON_FORM,
  magnet: ON_FORM,
  'recess former': ON_FORM,
  'template board': { 'mould face': 1, 'trowelled face': 2, edge: null },
  'through the side form': { 'mould face': null, 'trowelled face': null, edge: 1 },
  chair: OPEN,
  'bridging bar': OPEN,
  'tied to the cage': OPEN,
};

describe('methods of holding', () => {
  it('are nine', () => {
    expect([...holdingMethodNames].sort()).toEqual(Object.keys(practice).sort());
  });

  it('on the form and in side forms before the cage, under the trowelled face with it, nowhere else', () => {
    for (const name of holdingMethodNames)
      for (const place of ['mould face', 'trowelled face', 'edge'] as const)
        expect([name, place, findHoldingStage(name, place)]).toEqual([name, place, practice[name][place]]);
  });

  it('lists the places of each', () => {
    expect(listHoldingPlaces('template board')).toEqual(['mould face', 'trowelled face']);
    expect(listHoldingPlaces('through the side form')).toEqual(['edge']);
  });

  it('nails ask for timber, magnets for steel, no other for either', () => {
    const forms = holdingMethodNames.map((name) => findHoldingMethod(name).form);
    expect(forms).toEqual(['timber', null, 'steel', null, null, null, null, null, null]);
  });

  it('each has an order, lines to tick before and after, and says who supplies what is not known', () => {
    for (const name of holdingMethodNames) {
      const { order, before, after, supplied } = findHoldingMethod(name);
      expect(order.length, name).toBeGreaterThan(1);
      expect(before.length, name).toBeGreaterThan(0);
      expect(after.length, name).toBeGreaterThan(0);
      expect(supplied.length, name).toBeGreaterThan(0);
      for (const line of [...before, ...after]) expect(line).toMatch(/^[A-Z].*\.$/);
      for (const { who } of supplied) expect(who).toMatch(/maker|yard/);
    }
  });

  it('plate first, then the insert; release agent after a stick-on plate, and all its lines', () => {
    expect(findHoldingMethod('nail-on plate').order[0]).toMatch(/plate is nailed/);
    expect(findHoldingMethod('nail-on plate').order[1]).toMatch(/insert is screwed on/);
    const { before, after, order } = findHoldingMethod('stick-on plate');
    expect(order.at(-1)).toMatch(/release agent goes on after/);
    expect(before.join(' ')).toMatch(
      /dry and free of oil.*no release agent yet.*no colder than the plate's maker allows/,
    );
    expect(after.join(' ')).toMatch(/minutes that the plate's maker asks.*pulled by hand.*sprayed after, around/);
  });

  it('what holds a chair, a bar, a magnet and a side form bolt', () => {
    const lines = (name: HoldingMethodName) =>
      [...findHoldingMethod(name).before, ...findHoldingMethod(name).after].join(' ');
    expect(lines('chair')).toMatch(/not in insulation.*Foot lies flat.*tied.*Cap is on and sealed/);
    expect(lines('bridging bar')).toMatch(/hangs plumb.*clamped/);
    expect(lines('magnet')).toMatch(/clean bare steel.*no mortar.*cannot be pushed aside/);
    expect(lines('through the side form')).toMatch(/Hole.*size.*tight/);
    expect(lines('template board')).toMatch(/datum edges/);
    expect(lines('tied to the cage')).toMatch(/tied.*Cap is on and sealed/);
    expect(lines('nail-on plate')).toMatch(/All nails are home and the plate lies flat/);
  });
});

describe('the usual scatter', () => {
  // Common practice: a board ±1 to 2, by tape ±3 to 5, trowelled face ±5 to 10, level ±3 to 5; half of the wider end.
  it('is half of the wider ± of practice', () => {
    expect(findUsualScatter('template board', 'mould face')).toEqual({ position: 1, level: 2.5 });
    expect(findUsualScatter('magnet', 'mould face')).toEqual({ position: 2.5, level: 2.5 });
    expect(findUsualScatter('through the side form', 'edge')).toEqual({ position: 2.5, level: 2.5 });
    expect(findUsualScatter('bridging bar', 'trowelled face')).toEqual({ position: 5, level: 2.5 });
    expect(findUsualScatter('template board', 'trowelled face')).toEqual({ position: 5, level: 2.5 });
  });
});

describe('a tilted axis', () => {
  // By hand: atan(3/95) = 1.81°; 30 · 3/95 = 0.947 mm in front of the face. 103 · sin 5° = 8.977 mm.
  it('is 3 mm aside over 95 mm, so 0.95 mm at a plate 30 mm in front', () => {
    expect(findAsideAtDistance(Math.atan(3 / 95), 30)).toBeCloseTo(0.947, 3);
    expect(findAsideAtDistance(Math.atan(3 / 95), 95)).toBeCloseTo(3, 9);
  });
  it('brings the foot aside by its length along the axis', () => {
    expect(findAsideAlongAxis((5 * Math.PI) / 180, 103)).toBeCloseTo(8.977, 3);
    // 3-4-5: 50 mm along an axis with a slope of 3 in 4 are 30 mm aside.
    expect(findAsideAlongAxis(Math.atan(3 / 4), 50)).toBeCloseTo(30, 9);
  });
});
