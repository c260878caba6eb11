import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { findBoltSteel } from '../../src/engine/hardware/property-classes.ts';
import { catalogueItem } from '../../src/job/documents/catalogue.ts';
import { explainSteelParts } from '../../src/job/resolve/explain-steel-parts.ts';
import { steelPathOf, testedResistances } from '../../src/job/resolve/steel-parts.ts';
import { type Json, sampleItem } from './sample-job.ts';

const item = (changes: Json = {}) => catalogueItem.parse(sampleItem(changes));
const bolt = findBoltSteel('8.8');
const test = (mode: string, characteristic_kN: number) => ({
  mode,
  characteristic_kN,
  report: 'R7',
  standard: 'S',
  conditions: 'none',
  fromStrength_MPa: mode === 'pull-out' ? 25 : null,
});

/** Resistances [kN] by name. */
function resistances(changes: Json, engagement = 16): Record<string, number> {
  const { parts } = steelPathOf(item(changes), bolt, engagement);
  return Object.fromEntries(parts.map((part) => [part.name, (part.area * part.ultimate) / 1000]));
}

describe('how the areas of steel parts come about', () => {
  it.each([
    ['solid at the cross hole', {}],
    ['a bore narrower than the cross hole', { crossHole: { diameter_mm: 10, fromFoot_mm: 14, boreThere_mm: 8 } }],
    ['a bore wider than the cross hole', { crossHole: { diameter_mm: 8, fromFoot_mm: 14, boreThere_mm: 14 } }],
    ['6H in a thick body', { threadClass: '6H', bodyDiameter_mm: 32 }],
    ['a tested thread', { tested: [test('thread', 90)] }],
  ])('%s: the numbers that are shown give the area', (_, changes) => {
    const { parts } = steelPathOf(item(changes), bolt, 16);
    const explained = explainSteelParts(item(changes), bolt, 16);
    expect(explained.map(({ name }) => name)).toEqual(parts.map(({ name }) => name));
    for (const [i, { steps }] of explained.entries()) {
      const last = steps.at(-1)!;
      expect(last.result).toBe(parts[i]!.area);
      // Numbers are shown with seven digits.
      expect(Number(evaluate(last.numbers)) / parts[i]!.area).toBeCloseTo(1, 5);
    }
  });
});

describe('steel in the load path of an insert', () => {
  // Hand calculation, M16 in a body of 24 mm, 6AZ (0.340 mm oversize), f_uk 510, bolt 8.8, 16 mm engaged:
  // bolt 156.67 · 800 = 125.3 kN; wall π/4 (24² − 16.34²) = 242.69 mm² · 510 = 123.8 kN;
  // cross hole 10 in a solid body of 24: 219.54 mm² (see the test of the cross hole) · 510 = 112.0 kN;
  // threads: share (3.8·1.5 − 1.5² − 2.61)·0.897 = 0.75348, over √3 = 0.43502; bolt 355.8 mm² · 0.43502 · 800 = 123.8 kN;
  // insert 491.75 mm² · 0.43502 · 510 = 109.1 kN.
  it('agrees with a hand calculation', () => {
    const found = resistances({});
    expect(Object.entries(found).map(([name, R]) => [name, Math.round(R * 10) / 10])).toEqual([
      ['bolt M16 8.8', 125.3],
      ['body around the thread', 123.8],
      ['body at the cross hole', 112],
      ["stripping of the bolt's thread", 123.8],
      ["stripping of the insert's thread", 109.1],
    ]);
  });
  it('strips in tension only and shears bolt and wall', () => {
    const { parts } = steelPathOf(item(), bolt, 16);
    expect(parts.map((part) => part.resists)).toEqual(['both', 'both', 'tension', 'tension', 'tension']);
  });
  it('strips sooner with an oversize thread than with 6H', () => {
    const [az, h] = ['6AZ', '6H'].map((threadClass) => resistances({ threadClass }));
    for (const name of ["stripping of the bolt's thread", "stripping of the insert's thread"]) {
      expect(az![name]!).toBeLessThan(h![name]!);
    }
  });
  it('leaves out the cross hole where there is none', () => {
    expect(Object.keys(resistances({ crossHole: null }))).not.toContain('body at the cross hole');
  });
  it('puts a tested thread in place of the strip areas', () => {
    const found = resistances({ tested: [test('thread', 90)] });
    expect(found['thread as tested (R7)']).toBeCloseTo(90, 9);
    expect(Object.keys(found).some((name) => name.startsWith('stripping'))).toBe(false);
  });
  it('leaves the body in tension to the test, but not in shear', () => {
    const path = steelPathOf(item({ tested: [test('steel-tension', 100)] }), bolt, 16);
    expect(path.parts.map((part) => [part.name, part.resists])).toEqual([
      ['bolt M16 8.8', 'both'],
      ['body around the thread', 'shear'],
      ["stripping of the bolt's thread", 'tension'],
      ["stripping of the insert's thread", 'tension'],
    ]);
    expect(path.assumptions).toHaveLength(1);
  });
  it('is not covered in a body thinner than the rule of stripping reaches, unless tested', () => {
    const thin = {
      bodyDiameter_mm: 22,
      foot: { kind: 'diameter', diameter_mm: 46, thickness_mm: 7, isFullHead: true },
    };
    expect(steelPathOf(item(thin), bolt, 16).notCovered).toHaveLength(1);
    expect(steelPathOf(item({ ...thin, tested: [test('thread', 90)] }), bolt, 16).notCovered).toEqual([]);
  });
  it('hands tests to the engine in N with their report', () => {
    expect(testedResistances(item({ tested: [test('thread', 90), test('pull-out', 61.5)] }))).toEqual([
      { mode: 'pull-out', characteristic: 61500, safety: null, fromStrength: 25, report: 'R7' },
    ]);
  });
});
