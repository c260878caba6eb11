import { describe, expect, it } from 'vitest';
import type { Capacities, Capacity, CapacityLine } from '../../src/assess/capacities.ts';
import { type ListedCapacity, printCapacities, printCapacityList } from '../../src/cli/print/capacities.ts';
import { showLimit, showRatio } from '../../src/say/numbers.ts';

const toward = (degrees: number, edge: number | null = 200) => {
  const angle = (degrees * Math.PI) / 180;
  return { name: `${degrees}°`, ux: Math.cos(angle), uy: Math.sin(angle), edge };
};
const capacity = (changes: Partial<Capacity> = {}): Capacity => ({
  direction: null,
  total: 24_690,
  perInsert: 12_345,
  mode: 'concrete-cone',
  reasons: [],
  ...changes,
});
const shear = (degrees: number, changes: Partial<Capacity> = {}) =>
  capacity({ direction: toward(degrees), mode: 'concrete-edge', ...changes });

describe('the block of one connection', () => {
  const block = (changes: Partial<Capacities> = {}) =>
    printCapacities({ group: [capacity(), shear(270)], stated: [], inserts: [], reasons: [], ...changes }, 100);

  it('one insert: one column of kN', () => {
    expect(block()).toMatch(/^ {2}load +kN +what limits it$/m);
    expect(block()).toMatch(/^ {2}tension +24\.6 +concrete cone$/m);
    expect(block()).toMatch(/^ {2}shear toward 270°, edge at 200 mm +24\.6 +concrete edge in shear$/m);
    expect(block()).not.toContain('Each insert by itself');
  });
  it('says where no edge is in sight, where no bolt takes a shear, and what is not covered', () => {
    const group = [
      capacity({ reasons: ['lifting: no rule'] }),
      shear(0, { direction: toward(0, null) }),
      shear(90, { total: null, perInsert: null, mode: null }),
    ];
    const text = block({ group, reasons: ['lifting: no rule'] });
    expect(text).toMatch(/tension +24\.6 +concrete cone; NOT COVERED/);
    expect(text).toContain('shear toward 0°, no edge square to it');
    expect(text).toMatch(/shear toward 90°, edge at 200 mm +- +no bolt takes it/);
    expect(text).toMatch(/NOT COVERED: numbers to be judged, never a pass\n {2}- lifting: no rule$/);
  });
  it('the stated ratio: so many times, or why not', () => {
    const one = {
      combination: 'wind',
      times: 1.4299,
      tension: 9_000,
      shear: 0,
      mode: 'plate-bending',
      reasons: [],
      why: null,
    } as const;
    const none = {
      ...one,
      combination: 'none',
      times: null,
      tension: null,
      shear: null,
      mode: null,
      why: 'no load on the inserts',
    };
    const text = block({ stated: [one, none] });
    expect(text).toMatch(/wind +1\.42 +9\.00 +0\.00 +bending of the plate/);
    expect(text).toMatch(/none +- +- +- +no load on the inserts/);
  });
  it('many directions go into a further table, none left out, all within the page', () => {
    const loads = [capacity(), ...Array.from({ length: 14 }, (_, k) => shear(25 * k))];
    const inserts = ['A', 'B'].map((id) => ({ id, capacities: loads }));
    const text = block({ group: loads, inserts });
    for (const { direction } of loads.slice(1)) expect(text).toContain(`V ${direction!.name}`);
    for (const row of text.split('\n')) expect(row.length).toBeLessThanOrEqual(100);
    expect(text.match(/^ {2}B /gm)).toHaveLength(3);
    expect(text).toMatch(/kN in all +kN an insert/);
  });
});

describe('the list of a job', () => {
  const line: CapacityLine = { tension: capacity(), toward: shear(270), along: shear(0), reasons: [] };
  const listed = (asked: ListedCapacity['asked'], mark = 'C1') => ({
    mark,
    panel: 'P1',
    face: 'inside',
    inserts: ['1', '2'],
    asked,
  });

  it('names a limit of shear once where it is the same both ways', () => {
    expect(printCapacityList([listed({ kind: 'computed', value: line })], [], 100)).toMatch(
      /C1 +P1 +inside +2 +24\.6 +24\.6 270° +24\.6 +concrete cone; concrete edge in shear$/m,
    );
    const value = { ...line, along: shear(0, { mode: 'steel-shear' }), reasons: ['no document'] };
    const text = printCapacityList([listed({ kind: 'computed', value })], [], 100).replaceAll(/\s+/g, ' ');
    expect(text).toContain('NOT COVERED: concrete cone; concrete edge in shear, steel in shear');
    expect(text).toContain('- C1: no document');
  });
  it('says why there is no number, and that a job has no connection', () => {
    expect(printCapacityList([listed({ kind: 'refused', reasons: ['foot in insulation'] })], [], 100)).toContain(
      'CANNOT BE COMPUTED: foot in insulation',
    );
    expect(printCapacityList([], [], 100)).toMatch(/^No connection in this job: nothing to ask\./);
  });
});

describe('a largest load in print', () => {
  it.each([
    [null, '-'],
    [0, '0.00'],
    // Never rounded up: 9.999 kN holds, 10.0 kN might not.
    [9999, '9.99'],
    [12_399, '12.3'],
    // A search ends up to 1e-9 below the true limit; 50.24 · 1000 N and 20 kN found that way stay what they are.
    [20_000 * (1 - 4e-10), '20.0'],
    [290 * (1 - 4e-10), '0.29'],
    [50_240 * (1 - 4e-10), '50.2'],
  ])('%s N → %s', (newton, text) => {
    expect(showLimit(newton)).toBe(text);
  });
});

describe('a ratio in print', () => {
  it.each([
    [0.9999, '99.9 %'],
    [1.0001, '100.1 %'],
    // A largest load is found up to 1e-9 below its limit; and a ratio that much above 1 still passes.
    [1 - 4e-10, '100 %'],
    [1 + 4e-10, '100 %'],
    [10, '1000 %'],
    [10.01, '> 1000 %'],
    [1000, '> 1000 %'],
    [1000.1, '> 1000 % (units?)'],
  ])('%s → %s', (ratio, text) => {
    expect(showRatio(ratio)).toBe(text);
  });
});
