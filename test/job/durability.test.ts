import { describe, expect, it } from 'vitest';
import { mustResolve } from './read.ts';
import {
  type Json,
  type SampleParts,
  sampleCastIn,
  sampleConnection,
  sampleItem,
  sampleJob,
  samplePanel,
} from './sample-job.ts';

/** What is to be looked at, and what is taken as given, in the sample's first connection. */
function look(parts: SampleParts) {
  const resolution = mustResolve(sampleJob(parts));
  return { warnings: resolution.warnings, assumptions: resolution.assumptions.filter((text) => text.includes('life')) };
}

/** The sample with another finish of inserts and bolts; the insert takes every bolt. */
function finishes(insert: string, bolt: string | null, rules: Json = {}) {
  const coating_um = insert === 'galvanised' ? 55 : insert === 'zinc' ? 8 : 0;
  const boltFinishes = ['plain', 'zinc', 'galvanised', 'stainless'];
  return look({
    items: [sampleItem({ finish: insert, coating_um, boltFinishes })],
    connections: [sampleConnection({ boltFinish: bolt, ...(bolt === 'stainless' ? { boltClass: 'A4-70' } : {}) })],
    rules,
  });
}

const HARSH = { environment: 'C5', exposure: 'XS1' };
const MILD = { environment: 'C1', exposure: 'XC1' };

describe('the life of zinc', () => {
  // By hand, 55 µm: C5 55/8.4 = 6.5, 55/4.2 = 13.1 years; C3 55/2.1 = 26.2, 55/0.7 = 78.6; C2 55/0.7 = 78.6 and more.
  it('is held against 50 years, said as an assumption', () => {
    const { warnings, assumptions } = finishes('galvanised', null, HARSH);
    expect(warnings).toEqual([
      'inserts: hot-dip galvanising of 55 µm lasts 6.5 to 13 years in C5 where air reaches it (ISO 9223); 50 years are wanted: take stainless steel, or keep air and water off',
    ]);
    expect(assumptions).toEqual(['a life of 50 years is wanted (EN 1990, Table 2.1, category 4)']);
    expect(finishes('galvanised', null, { environment: 'C3' }).warnings[0]).toContain('26 to 78 years in C3');
  });

  it('is not spoken of where it lasts, or where there is none', () => {
    expect(finishes('galvanised', 'galvanised', { environment: 'C2' }).warnings).toEqual([]);
    expect(finishes('stainless', null, MILD)).toEqual({ warnings: [], assumptions: [] });
    expect(finishes('plain', 'plain', MILD)).toEqual({ warnings: [], assumptions: [] });
  });

  it('reads the same for every insert of a connection: one line', () => {
    expect(finishes('zinc', null, HARSH).warnings).toHaveLength(1);
  });

  it('doubts a thin galvanising even where it lasts', () => {
    const { warnings } = look({ items: [sampleItem({ coating_um: 39 })], rules: { environment: 'C1' } });
    expect(warnings).toEqual([expect.stringContaining('less zinc than ISO 1461 asks')]);
  });
});

describe('bolts and inserts together', () => {
  it('of zinc and stainless steel are flagged outdoors, whichever is which', () => {
    expect(finishes('galvanised', 'stainless', { environment: 'C2' }).warnings).toEqual([
      expect.stringMatching(/^galvanised inserts against stainless bolts in C2: .*the zinc is eaten/),
    ]);
    expect(finishes('stainless', 'zinc', { environment: 'C3' }).warnings).toEqual([
      expect.stringMatching(/^zinc bolts against stainless inserts in C3/),
    ]);
    expect(finishes('galvanised', 'stainless', MILD).warnings).toEqual([]);
  });

  it('plain bolts outdoors rust, and one sentence speaks for inserts and bolts alike', () => {
    expect(finishes('galvanised', 'plain', { environment: 'C3' }).warnings).toContainEqual(
      expect.stringMatching(/^bolts: plain steel loses 25 to 50 µm a year in C3/),
    );
    expect(finishes('stainless', 'stainless', HARSH).warnings).toEqual([
      expect.stringMatching(/^inserts and bolts: stainless steel in C5 with salt \(XS1\): the grade decides/),
    ]);
  });
});

describe('cover behind the foot', () => {
  // By hand: panel 140 mm less an insert of 103 mm leaves 37 mm; XC4, S4: 30 + 10 = 40 mm. The rules ask for 20 mm.
  const mild = { environment: 'C1' };
  const thin = { panels: [samplePanel({ thickness_mm: 140 })] };

  it('is held against the exposure where the rules ask for less', () => {
    expect(look({ ...thin, rules: mild }).warnings).toEqual([
      '37 mm of cover behind the foot: steel that can rust wants 30 + 10 = 40 mm in XC4 (EN 1992-1-1, Table 4.4N, S4); the rules ask for 20 mm',
    ]);
    expect(look({ panels: [samplePanel({ thickness_mm: 143 })], rules: mild }).warnings).toEqual([]);
    expect(look({ ...thin, rules: { ...mild, exposure: 'XC3' } }).warnings).toEqual([]);
  });

  it('is left to the rules where they ask for as much', () => {
    expect(look({ ...thin, rules: { ...mild, cover: { behindFoot_mm: 40 } } }).warnings).toEqual(
      ['1', '2'].map((id) => `insert ${id}: 37 mm of cover behind the foot; the rules ask for 40 mm`),
    );
  });

  it('does not matter to stainless steel, nor to inserts in an edge', () => {
    expect(look({ ...thin, items: [sampleItem({ finish: 'stainless' })], rules: mild }).warnings).toEqual([]);
    const castIns = ['1', '2'].map((id, i) => sampleCastIn(id, 900 + 200 * i, 70, { face: 'edge', edge: 0 }));
    const connections = [sampleConnection({ face: 'edge', edge: 0, origin_mm: [1000, 70] })];
    expect(look({ ...thin, castIns, connections, rules: mild }).warnings).toEqual([]);
  });
});
