import { describe, expect, it } from 'vitest';
import { assessConnection, explainConnection } from '../../src/assess/assess-connection.ts';
import { assessJob } from '../../src/assess/assess-job.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { resolveConnection } from '../../src/job/resolve/resolve-connection.ts';
import {
  type Json,
  type SampleParts,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  sampleItem,
  samplePanel,
} from '../job/sample-job.ts';
import { readSample, SPLITTING } from './read-sample.ts';

function resolve(parts: SampleParts) {
  const file = readSample(parts);
  return resolveConnection(indexJob(file), file.job.connections[0]!);
}

/** The sample's connection with some of it changed. */
function assess(changes: Json, parts: SampleParts = {}) {
  return assessConnection(resolve({ ...parts, connections: [sampleConnection(changes)] }));
}

const loads = (combination: Json) => ({
  kind: 'loads',
  combinations: [{ name: 'wind', N_kN: 0, Vx_kN: 0, Vy_kN: 0, ...combination }],
});

describe('the state of a connection', () => {
  it('passes or fails by the largest ratio of its combinations, and names the combination', () => {
    const answer = assess({
      actions: {
        kind: 'loads',
        combinations: [
          { name: 'light', N_kN: 5, Vx_kN: 0, Vy_kN: 0 },
          { name: 'heavy', N_kN: 20, Vx_kN: 0, Vy_kN: 0 },
        ],
      },
    });
    expect(answer).toMatchObject({ state: 'passes', governing: { combination: 'heavy', mode: 'concrete-cone' } });
    // 200 kN is ten times as much: the cone's ratio grows tenfold.
    const heavy = assess({ actions: loads({ N_kN: 200 }) });
    expect(heavy.state).toBe('fails');
    expect(heavy.ratio).toBeCloseTo(10 * answer.ratio!, 9);
  });

  it('is "strength not checked" without an action, never passed', () => {
    expect(assess({ actions: { kind: 'none' } })).toMatchObject({
      state: 'strength not checked',
      ratio: null,
      governing: null,
      reasons: ['no action given'],
    });
  });

  it('turns a required shear toward every side of the concrete, without a plate', () => {
    const explained = explainConnection(
      resolve({
        connections: [
          sampleConnection({
            fixture: null,
            inserts: [
              { insert: '1', hole: null },
              { insert: '2', hole: null },
            ],
            actions: { kind: 'required', N_kN: 4, V_kN: 3 },
          }),
        ],
      }),
      false,
    );
    expect(explained.combinations.map(({ combination }) => combination.name)).toEqual(
      // Outward normals of a rectangle, from the bottom side on, counter-clockwise.
      [270, 0, 90, 180].map((degrees) => `required, shear toward ${degrees}°`),
    );
    expect(explained.answer.state).toBe('passes');
    // Each of the two inserts carries 4 kN, so the cone of both 8 kN.
    const cone = explained.combinations[0]!.result!.rows.find(({ mode }) => mode === 'concrete-cone');
    expect(cone?.action).toBe(8000);
    // Toward the bottom edge, y = 0, both carry 3 kN square to it: 6 kN, nothing along it.
    const down = explained.combinations[0]!.result!.rows.find((row) => row.mode === 'concrete-edge' && row.applies);
    expect(down).toMatchObject({ action: 6000, direction: -Math.PI / 2, factors: { psi_alpha: 1 } });
  });

  it('is "not covered" whatever the numbers say, but "fails" where they say so', () => {
    expect(assess({ uses: ['fire'] })).toMatchObject({ state: 'not covered', ratio: expect.any(Number) });
    expect(assess({ uses: ['fire'], actions: loads({ N_kN: 500 }) }).state).toBe('fails');
    expect(assess({}, { items: [sampleItem({ qualification: null, splitting: SPLITTING })] })).toMatchObject({
      state: 'not covered',
      reasons: [expect.stringContaining('no qualification document')],
    });
  });

  it('is "not covered" on an edge with a batter, which no rule here knows', () => {
    const edges = [{ edge: 0, batter_deg: 5 }];
    const castIns = [
      sampleCastIn('1', 900, 90, { face: 'edge', edge: 0 }),
      sampleCastIn('2', 1100, 90, { face: 'edge', edge: 0 }),
    ];
    const answer = assess(
      { face: 'edge', edge: 0, origin_mm: [1000, 90], actions: loads({ N_kN: 2 }) },
      { panels: [samplePanel({ edges })], castIns },
    );
    expect(answer).toMatchObject({ state: 'not covered', reasons: [expect.stringContaining('batter')] });
  });

  it('"cannot be computed" where no bolt can take the shear, with the reason', () => {
    const fixture = sampleFixture({
      holes: [
        { id: '1', at_mm: [-100, 0], diameter_mm: 18, takesShear: false },
        { id: '2', at_mm: [100, 0], diameter_mm: 18, takesShear: false },
      ],
    });
    const answer = assess({ fixture });
    expect(answer).toMatchObject({ state: 'cannot be computed', ratio: null });
    expect(answer.reasons[0]).toMatch(/^wind: /);
  });

  it('"cannot be computed" where the insert starts in another layer', () => {
    const layers = [
      { kind: 'outer skin', thickness_mm: 20 },
      { kind: 'structural', thickness_mm: 160 },
    ];
    expect(assess({}, { panels: [samplePanel({ layers })] })).toMatchObject({
      state: 'cannot be computed',
      reasons: [expect.stringContaining('outer skin')],
    });
  });
});

describe('the plate', () => {
  const attachment_mm = [
    [-20, -40],
    [20, -40],
    [20, 40],
    [-20, 40],
  ];

  it('is assumed rigid, and said so, where its bending cannot be checked', () => {
    const answer = assess({});
    expect(answer.plate).toMatchObject({ kind: 'not checked' });
    expect(answer.assumptions.join()).toContain('plate taken as rigid, its bending not checked');
  });

  // 10 kN on two bolts 100 mm from the middle, attachment to ±20 mm: 5 kN · 80 mm over the 100 mm of plate that the line cuts:
  // m = 4 000 N; σ = 6 · 4 000/15² = 106.667 MPa of 235.
  it('bends by hand', () => {
    const answer = assess({ fixture: sampleFixture({ attachment_mm }), actions: loads({ N_kN: 10 }) });
    expect(answer.plate).toMatchObject({ kind: 'checked', ratio: expect.closeTo(24000 / 225 / 235, 9) });
  });

  it('fails the connection where it is too thin to be rigid', () => {
    const answer = assess({
      fixture: sampleFixture({ attachment_mm, thickness_mm: 8 }),
      actions: loads({ N_kN: 10 }),
    });
    expect(answer).toMatchObject({ state: 'fails', governing: { mode: 'plate-bending', combination: 'wind' } });
    expect(answer.ratio).toBeCloseTo(24000 / 64 / 235, 9);
  });
});

describe('the long answer', () => {
  it('gives the short one, each combination, and the resistances', () => {
    const resolution = resolve({});
    const explained = explainConnection(resolution, true);
    expect(explained.answer).toEqual(assessConnection(resolution));
    expect(explained.combinations).toHaveLength(1);
    const { result } = explained.combinations[0]!;
    expect(
      Math.max(...result!.rows.map(({ ratio }) => ratio ?? 0), ...result!.interaction.map(({ ratio }) => ratio)),
    ).toBe(explained.answer.ratio);
    expect(explained.resistances?.rows.some(({ characteristic }) => characteristic !== null)).toBe(true);
  });

  it('has no numbers for what cannot be computed', () => {
    const layers = [
      { kind: 'outer skin', thickness_mm: 20 },
      { kind: 'structural', thickness_mm: 160 },
    ];
    expect(explainConnection(resolve({ panels: [samplePanel({ layers })] }), true)).toMatchObject({
      combinations: [],
      resistances: null,
    });
  });
});

describe('a whole job', () => {
  const moved = (x: number, first: string, second: string): Json => ({
    origin_mm: [x, 500],
    inserts: [
      { insert: first, hole: '1' },
      { insert: second, hole: '2' },
    ],
  });

  it('counts every connection once, lists inserts that no connection holds, and other roles', () => {
    const file = readSample({
      castIns: [
        sampleCastIn('1', 900, 500),
        sampleCastIn('2', 1100, 500),
        sampleCastIn('3', 1900, 500),
        sampleCastIn('4', 2100, 500),
        sampleCastIn('5', 2900, 500),
        sampleCastIn('6', 3100, 500),
        sampleCastIn('7', 3000, 2000),
        sampleCastIn('L1', 1000, 2500, { role: 'lifting', item: null, description: 'lifting loop' }),
      ],
      connections: [
        sampleConnection(),
        sampleConnection({ key: 'c2', mark: 'C2', ...moved(2000, '3', '4'), actions: { kind: 'none' } }),
        sampleConnection({ key: 'c3', mark: 'C3', ...moved(3000, '5', '6'), actions: loads({ N_kN: 500 }) }),
      ],
    });
    const told: string[] = [];
    const answer = assessJob(file, (done, total) => told.push(`${done}/${total}`));
    expect(answer.counts).toEqual({
      passes: 1,
      fails: 1,
      'not covered': 0,
      'cannot be computed': 0,
      'strength not checked': 1,
    });
    expect(answer.connections.map(({ mark }) => mark)).toEqual(['C1', 'C2', 'C3']);
    expect(answer.loose).toEqual([{ panel: 'P1', insert: '7' }]);
    expect(answer.otherRoles).toEqual({ lifting: 1 });
    expect(told).toEqual(['1/3', '2/3', '3/3']);
  });

  it('without connections: nothing passed, nothing failed', () => {
    const { counts, connections } = assessJob(readSample({ connections: [] }));
    expect(connections).toEqual([]);
    expect(Object.values(counts).every((count) => count === 0)).toBe(true);
  });
});
