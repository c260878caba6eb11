import { describe, expect, it } from 'vitest';
import { standardNames } from '../../src/engine/standards/standard-name.ts';
import { catalogueItem } from '../../src/job/documents/catalogue.ts';
import { countTests } from '../../src/job/resolve/tests-that-count.ts';
import { mustResolve } from './read.ts';
import { type Json, sampleItem, sampleJob } from './sample-job.ts';

const test = (standard: string, changes: Json = {}) => ({
  mode: 'steel-tension',
  characteristic_kN: 100,
  report: 'R7',
  standard,
  conditions: 'none',
  ...changes,
});
const countingUnder = (standard: string) =>
  standardNames.filter((name) => {
    const item = catalogueItem.parse(sampleItem({ tested: [test(standard)] }));
    return countTests(item, name).item.tested.length === 1;
  });

describe('under which standard a test counts', () => {
  // Names as in a qualification document: a national prefix goes, another year is another document.
  it.each([
    ['EN 1992-4', ['EN 1992-4']],
    ['DIN EN 1992-4:2018', ['EN 1992-4']],
    ['EN 1992-4:2009', []],
    ['AS 5216:2021, ACI 318-19', ['AS 5216', 'ACI 318-19', 'ACI 318M-19']],
    ['ACI 318-14', []],
    ['in-house', [...standardNames]],
    ['ISO 6892-1', [...standardNames]],
    ['in-house; EN 1992-4', ['EN 1992-4']],
  ])('"%s": %j', (standard, counting) => {
    expect(countingUnder(standard)).toEqual(counting);
  });
});

describe('tests of another standard in a job', () => {
  const resolve = (items: readonly Json[], standard: string) => mustResolve(sampleJob({ items, rules: { standard } }));
  const names = (items: readonly Json[], standard: string) =>
    resolve(items, standard).group.insert.steelParts.map(({ name }) => name);
  it('drop no part of the steel and reach no check, and it is said', () => {
    const tested = [test('EN 1992-4'), test('EN 1992-4', { mode: 'thread', characteristic_kN: 90, report: 'R8' })];
    const items = [sampleItem({ tested })];
    expect(names(items, 'ACI 318-19')).toEqual(names([sampleItem()], 'ACI 318-19'));
    const { group, assumptions } = resolve(items, 'ACI 318-19');
    expect(group.insert.tested).toEqual([]);
    expect(assumptions).toContain(
      'test report R7 (steel-tension) is for EN 1992-4, not for ACI 318-19: not counted, the formula is used',
    );
    expect(names(items, 'EN 1992-4')).toContain('thread as tested (R8)');
    expect(resolve(items, 'EN 1992-4').group.insert.tested).toHaveLength(1);
  });
  it('of several tests of the thread the least counts', () => {
    const tested = [90, 70].map((kN) => test('in-house', { mode: 'thread', characteristic_kN: kN, report: `R${kN}` }));
    expect(names([sampleItem({ tested })], 'EN 1992-4')).toContain('thread as tested (R70)');
  });
});

describe("the document's factor of pry-out", () => {
  const resolve = (standard: string) =>
    mustResolve(sampleJob({ items: [sampleItem({ pryOutFactor: 2.4 })], rules: { standard } }));
  // ACI 318-19, 17.7.3.1: k_cp is 1 or 2.
  it('counts by ACI as 2 at most, with a note', () => {
    const { group, assumptions } = resolve('ACI 318-19');
    expect(group.pryOutFactor).toBe(2);
    expect(assumptions).toContain('pry-out factor 2.4 of F16 taken as 2: ACI 318-19 has no greater k_cp (17.7.3.1)');
  });
  it('counts as it is by EN 1992-4', () => {
    expect(resolve('EN 1992-4').group.pryOutFactor).toBe(2.4);
  });
});
