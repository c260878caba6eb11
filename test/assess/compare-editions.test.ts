import { describe, expect, it } from 'vitest';
import { assessJob } from '../../src/assess/assess-job.ts';
import { compareEditions, compareModes } from '../../src/assess/compare-editions.ts';
import { standardNames } from '../../src/engine/standards/standard-name.ts';
import { readJobDocument } from '../../src/job/read-job-document.ts';
import {
  type Json,
  type SampleParts,
  sampleCastIn,
  sampleConnection,
  sampleItem,
  sampleJob,
} from '../job/sample-job.ts';

/** Values that let splitting be released, as edges are far and the panel is thick enough. */
const SPLITTING = { criticalEdge_mm: 200, minimumThickness_mm: 150 };

const itemFor = (standard: string) =>
  sampleItem({ splitting: SPLITTING, qualification: { document: 'an invented document', standard } });

function read(parts: SampleParts = {}) {
  const reading = readJobDocument(sampleJob({ items: [itemFor('EN 1992-4')], castIns, connections, ...parts }));
  if (!reading.ok) throw new Error(reading.faults.map(({ text }) => text).join('; '));
  return reading.file;
}

/** Connections far apart, each with two inserts of its own. */
const castIns = [1000, 2000, 3000].flatMap((x, k) => [
  sampleCastIn(`${2 * k + 1}`, x - 100, 1500),
  sampleCastIn(`${2 * k + 2}`, x + 100, 1500),
]);
const place = (k: number, actions: Json) =>
  sampleConnection({
    key: `c${k + 1}`,
    mark: `C${k + 1}`,
    origin_mm: [1000 * (k + 1), 1500],
    inserts: ['1', '2'].map((hole, i) => ({ insert: `${2 * k + i + 1}`, hole })),
    actions,
  });
const loads = (load: Json) => ({
  kind: 'loads',
  combinations: [{ name: 'wind', N_kN: 0, Vx_kN: 0, Vy_kN: 0, ...load }],
});
const connections = [
  place(0, loads({ N_kN: 10, Vx_kN: 2, Vy_kN: -5 })),
  place(1, { kind: 'none' }),
  place(2, loads({ N_kN: 500 })),
];

describe('a job by several editions', () => {
  it('gives each edition the answers that a job ruled by it would have', () => {
    const file = read();
    const before = structuredClone(file);
    const { standards, connections: compared, counts } = compareEditions(file, standardNames);
    expect(standards).toEqual(standardNames);
    for (const [i, standard] of standardNames.entries()) {
      const alone = assessJob(read({ rules: { standard } }));
      expect(compared.map(({ answers }) => answers[i])).toEqual(alone.connections);
      expect(counts[i]).toEqual(alone.counts);
    }
    expect(file).toEqual(before);
  });
  it('where the document of the insert is for the first only: not covered by the second, its numbers still given', () => {
    const { connections: compared } = compareEditions(read(), ['EN 1992-4', 'ACI 318M-19']);
    const [loaded, unloaded, heavy] = compared;
    expect(loaded!.answers.map(({ state }) => state)).toEqual(['passes', 'not covered']);
    expect(loaded!.differs).toBe(true);
    expect(loaded!.answers[1]!.ratio).toBeGreaterThan(0);
    expect(loaded!.answers[1]!.reasons.join()).toContain('no qualification document for ACI 318');
    expect(unloaded!.answers.map(({ ratio }) => ratio)).toEqual([null, null]);
    expect(heavy!.answers.map(({ state }) => state)).toEqual(['fails', 'fails']);
    expect(heavy!.differs).toBe(false);
  });
  it('with a document for both, both may pass, with ratios of their own', () => {
    const file = read({ items: [itemFor('EN 1992-4, ACI 318')] });
    const [loaded] = compareEditions(file, ['EN 1992-4', 'ACI 318M-19']).connections;
    expect(loaded!.answers.map(({ state }) => state)).toEqual(['passes', 'passes']);
    expect(loaded!.differs).toBe(false);
    expect(loaded!.answers[0]!.ratio).not.toBeCloseTo(loaded!.answers[1]!.ratio!, 3);
  });
  it('tells its progress over all editions', () => {
    const told: (readonly [number, number])[] = [];
    compareEditions(read(), ['EN 1992-4', 'AS 5216'], (done, total) => told.push([done, total]));
    expect(told).toEqual([1, 2, 3, 4, 5, 6].map((done) => [done, 6]));
  });
});

describe('one connection mode by mode', () => {
  it('sets the largest ratio of each mode side by side, the most used first', () => {
    const file = read();
    const modes = compareModes(file, 'C1', ['EN 1992-4', 'ACI 318M-19']);
    const of = (mode: string) => modes.find((row) => row.mode === mode)?.ratios;
    const { answers } = compareEditions(file, ['EN 1992-4', 'ACI 318M-19']).connections[0]!;
    // Tension with shear goes by other rules: each edition has its own row, the other none.
    expect(of('interaction-concrete')).toEqual([answers[0]!.ratio, null]);
    expect(of('interaction-all')).toEqual([null, expect.any(Number)]);
    expect(of('concrete-cone')).toEqual([expect.any(Number), expect.any(Number)]);
    const largest = modes.map(({ ratios }) => Math.max(...ratios.map((ratio) => ratio ?? 0)));
    expect(largest).toEqual([...largest].sort((a, b) => b - a));
    for (const i of [0, 1]) expect(Math.max(...modes.map(({ ratios }) => ratios[i] ?? 0))).toBe(answers[i]!.ratio);
  });
  it('counts the two rows of an edge together where an edition does', () => {
    // 150 mm from the lower edge, shear toward it and along it: by ACI 318 √(r⊥² + r∥²) governs, more than either row.
    const near = [sampleCastIn('1', 900, 150), sampleCastIn('2', 1100, 150)];
    const both = sampleConnection({ origin_mm: [1000, 150], actions: loads({ Vx_kN: 6, Vy_kN: -6 }) });
    const file = read({ castIns: near, connections: [both] });
    const [answer] = compareEditions(file, ['ACI 318M-19']).connections[0]!.answers;
    expect(answer!.governing!.mode).toBe('concrete-edge');
    expect(compareModes(file, 'C1', ['ACI 318M-19'])[0]).toEqual({ mode: 'concrete-edge', ratios: [answer!.ratio] });
  });
  it('is empty without an action, and refuses a connection that is not there', () => {
    expect(compareModes(read(), 'C2', ['EN 1992-4', 'AS 5216'])).toEqual([]);
    expect(() => compareModes(read(), 'X9', ['EN 1992-4'])).toThrow('connection X9 is not in the job');
  });
});
