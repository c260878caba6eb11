import fc from 'fast-check';
import { assert, describe, expect, it } from 'vitest';
import * as z from 'zod';
import { castInAspects, connectionAspects, panelAspects } from '../../../src/job/difference/aspects.ts';
import { compareJobs } from '../../../src/job/difference/compare-jobs.ts';
import {
  describeGeneral,
  describeLibrary,
  describePanel,
  markOf,
} from '../../../src/job/difference/describe-difference.ts';
import { sayChange } from '../../../src/job/difference/say-change.ts';
import { summariseDifference } from '../../../src/job/difference/summarise-difference.ts';
import { castIn } from '../../../src/job/documents/cast-in.ts';
import { connection } from '../../../src/job/documents/connection.ts';
import { type JobFile, jobFile } from '../../../src/job/documents/job-file.ts';
import { panel } from '../../../src/job/documents/panel.ts';
import { jobArbitrary } from '../../files/job-arbitrary.ts';
import { mustRead } from '../read.ts';
import {
  type Json,
  type SampleParts,
  sampleBed,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  sampleItem,
  sampleJob,
  samplePanel,
  samplePour,
} from '../sample-job.ts';

/** Five panels with two inserts each and one connection in the first; the fifth lies on another concrete. */
const OPENING = [
  [2500, 2500],
  [3000, 2500],
  [3000, 2800],
  [2500, 2800],
];
const marks = ['P1', 'P2', 'P3', 'P4', 'P5'];
const before: SampleParts = {
  concretes: [
    { id: 'C40', strength28_MPa: 40 },
    { id: 'C50', strength28_MPa: 50 },
  ],
  items: [sampleItem(), sampleItem({ id: 'F16-75', length_mm: 75, embedment_mm: 68 }), sampleItem({ id: 'X' })],
  details: [{ id: 'T', name: 'T', fixture: sampleFixture() }],
  parts: [{ id: 'PL', name: 'Plate', kind: 'fixing plate', height_mm: 10, reusable: true }],
  ways: [{ id: 'W', name: 'Way', method: 'stick-on plate', parts: [{ part: 'PL', count: 1 }] }],
  beds: [sampleBed()],
  pours: [
    samplePour({
      pieces: [
        { panel: 'P1', serial: '1', along_mm: 500 },
        { panel: 'P2', serial: '1', along_mm: 6000 },
      ],
    }),
  ],
  revision: { letter: 'A', status: 'for approval', date: '2026-11-02' },
  panels: marks.map((mark, i) =>
    samplePanel({
      ...{ key: `p${i}`, mark, concrete: mark === 'P5' ? 'C50' : 'C40', faceDown: 'outside' },
      openings_mm: mark === 'P3' ? [OPENING] : [],
    }),
  ),
  castIns: marks.flatMap((mark) =>
    ['1', '2'].map((id, k) =>
      sampleCastIn(id, 900 + 200 * k, 500, {
        key: `${mark} ${id}`,
        panel: mark,
        item: mark === 'P5' ? 'F16-75' : 'F16',
      }),
    ),
  ),
  connections: [
    sampleConnection(),
    sampleConnection({ ...{ key: 'c2', mark: 'C2', panel: 'P2' }, detail: 'T', fixture: null }),
  ],
};

const list = (parts: SampleParts, key: keyof SampleParts) => parts[key] as readonly Json[]; // safe: lists are asked for
/** The same job with one entry of a list changed. */
const change = (key: keyof SampleParts, which: (entry: Json) => boolean, changes: Json) => (parts: SampleParts) => ({
  ...parts,
  [key]: list(parts, key).map((entry) => (which(entry) ? { ...entry, ...changes } : entry)),
});
const keyed = (key: string) => (entry: Json) => entry.key === key;
const named = (id: string) => (entry: Json) => entry.id === id;
const drop = (key: keyof SampleParts, which: (entry: Json) => boolean) => (parts: SampleParts) => ({
  ...parts,
  [key]: list(parts, key).filter((entry) => !which(entry)),
});
const add = (key: keyof SampleParts, entry: Json) => (parts: SampleParts) => ({
  ...parts,
  [key]: [...list(parts, key), entry],
});

const loads = { kind: 'loads', combinations: [{ name: 'wind', N_kN: 12, Vx_kN: 2, Vy_kN: -5 }] };

/** What is changed, and the lines that must come of it, all and no others: "mark: sentence". */
const planted: readonly (readonly [string, (parts: SampleParts) => SampleParts, readonly string[]])[] = [
  // By hand: 30 and 40 mm aside are 50 mm.
  [
    'an insert moved',
    change('castIns', keyed('P3 1'), { x_mm: 930, y_mm: 540 }),
    ['P3: insert 1: moved 50 mm, from (900, 500) to (930, 540)'],
  ],
  ['a type', change('castIns', keyed('P4 2'), { item: 'F16-75' }), ['P4: insert 2: type F16-75 (was F16)']],
  ['a recess', change('castIns', keyed('P4 2'), { recess_mm: 2.5 }), ['P4: insert 2: recess 2.5 mm (was 0)']],
  ['a holding', change('castIns', keyed('P4 2'), { holding: 'W' }), ['P4: insert 2: holding W (was none)']],
  ['a number', change('castIns', keyed('P4 2'), { id: '7' }), ['P4: insert 7: number 7 (was 2)']],
  [
    'a cross bar',
    change('castIns', keyed('P4 2'), { crossBar: { direction_deg: 90 } }),
    ['P4: insert 2: cross bar given (was none)'],
  ],
  [
    'another face',
    change('castIns', keyed('P4 2'), { face: 'inside', x_mm: 2900 }),
    ['P4: insert 2: on the inside face (was on the outside face); at (2900, 500) of it'],
  ],
  [
    'an insert more',
    add('castIns', sampleCastIn('3', 2000, 500, { key: 'new', panel: 'P3' })),
    ['P3: insert 3 added: F16, outside face, (2000, 500)'],
  ],
  ['an insert less', drop('castIns', keyed('P3 2')), ['P3: insert 2 removed: F16, outside face, (1100, 500)']],
  [
    'loads',
    change('connections', keyed('c1'), { actions: loads }),
    ['P1: connection C1: loads: combination 1, N 12 kN (was 10)'],
  ],
  [
    'a load combination more',
    change('connections', keyed('c1'), {
      actions: {
        kind: 'loads',
        combinations: [
          { name: 'wind', N_kN: 10, Vx_kN: 2, Vy_kN: -5 },
          { name: 'snow', N_kN: 1, Vx_kN: 0, Vy_kN: 0 },
        ],
      },
    }),
    ['P1: connection C1: loads: combination 2 new: snow'],
  ],
  [
    'the place of a plate',
    change('connections', keyed('c1'), { origin_mm: [1000.5, 500] }),
    ['P1: connection C1: moved from (1000, 500) to (1000.5, 500)'],
  ],
  ['a bed more', add('beds', sampleBed({ id: 'B2' })), ['yard: bed B2 new: Bed 1']],
  [
    'the plate of a connection',
    change('connections', keyed('c1'), { fixture: sampleFixture({ thickness_mm: 20 }) }),
    ['P1: connection C1: plate: thickness 20 mm (was 15)'],
  ],
  [
    'a standard detail: every connection with it',
    change('details', named('T'), { fixture: sampleFixture({ thickness_mm: 20 }) }),
    ['P2: connection C2: plate: thickness 20 mm (was 15)'],
  ],
  ['a connection less', drop('connections', keyed('c1')), ['P1: connection C1 removed: outside face, 2 inserts']],
  ['a panel more', add('panels', samplePanel({ key: 'p9', mark: 'P9' })), ['P9: new, 0 inserts']],
  [
    'a panel less',
    (parts) => drop('castIns', (entry) => entry.panel === 'P5')(drop('panels', keyed('p4'))(parts)),
    ['P5: removed, 2 inserts'],
  ],
  ['thickness', change('panels', keyed('p2'), { thickness_mm: 200 }), ['P3: thickness 200 mm (was 180)']],
  ['the face down', change('panels', keyed('p2'), { faceDown: 'inside' }), ['P3: face down inside (was outside)']],
  [
    'turn and datum',
    change('panels', keyed('p2'), { inForm: { turn_deg: 180, datum: 'top-right' } }),
    ['P3: turn 180° (was 0)', 'P3: datum top-right (was bottom-left)'],
  ],
  [
    'an outline',
    change('panels', keyed('p2'), {
      outline_mm: [
        [0, 0],
        [4000, 0],
        [4000, 3000],
        [0, 3100],
      ],
    }),
    ['P3: outline: corner 4, y 3100 mm (was 3000)'],
  ],
  ['concrete', change('panels', keyed('p2'), { concrete: 'C50' }), ['P3: concrete C50 (was C40)']],
  [
    'reinforcement',
    change('panels', keyed('p2'), { reinforcement: { bars: [], edge: 'bar', limitsCrackWidth: true } }),
    ['P3: reinforcement given (was none)'],
  ],
  [
    'a mark',
    (parts) =>
      change('castIns', (entry) => entry.panel === 'P3', { panel: 'P3a' })(
        change('panels', keyed('p2'), { mark: 'P3a' })(parts),
      ),
    ['P3a: mark P3a (was P3)'],
  ],
  [
    'a catalogue item that is used',
    change('items', named('F16-75'), { coating_um: 45 }),
    ['catalogue item F16-75: coating 45 µm (was 55); used in P5'],
  ],
  ['a catalogue item that nothing uses', change('items', named('X'), { coating_um: 45 }), []],
  [
    'a concrete',
    change('concretes', named('C50'), { strength28_MPa: 45 }),
    ['concrete C50: strength at 28 days 45 MPa (was 50); used in P5'],
  ],
  [
    'rules',
    (parts) => ({ ...parts, rules: { cover: { behindFoot_mm: 25 } } }),
    ['rules: cover, behind the foot 25 mm (was 20)'],
  ],
  [
    'limits of acceptance',
    (parts) => ({ ...parts, rules: { acceptance: { position_mm: 8, level_mm: 5, setBy: 'A. Designer' } } }),
    ['rules: limits of acceptance by QA given (was none)'],
  ],
  ['a day', change('pours', named('T1'), { date: '2026-12-15' }), ['pours: T1, date 2026-12-15 (was 2026-12-14)']],
  [
    'a piece moved along its bed, one taken out, one put in',
    change('pours', named('T1'), {
      pieces: [
        { panel: 'P3', serial: '2', along_mm: 9000 },
        { panel: 'P1', serial: '1', along_mm: null },
      ],
    }),
    ['pours: T1, P1 no. 1, along the bed none (was 500 mm); T1, P2 no. 1 removed; T1, P3 no. 2 new'],
  ],
  [
    'pieces in another order alone',
    change('pours', named('T1'), {
      pieces: [
        { panel: 'P2', serial: '1', along_mm: 6000 },
        { panel: 'P1', serial: '1', along_mm: 500 },
      ],
    }),
    [
      'pours: T1, piece 1, panel P2 (was P1); T1, piece 1, along the bed 6000 mm (was 500); T1, piece 2, panel P1 (was P2); 1 more',
    ],
  ],
  [
    'mortar',
    change('connections', keyed('c1'), { isFilled: true }),
    ['P1: connection C1: packers: filled with mortar yes (was no)'],
  ],
  [
    'an opening',
    change('panels', keyed('p2'), {
      openings_mm: [
        [
          [2500, 2500],
          [3000, 2500],
          [3000, 2800],
          [2500, 2801],
        ],
      ],
    }),
    ['P3: openings: opening 1, corner 4, y 2801 mm (was 2800)'],
  ],
  ['beds', change('beds', named('B1'), { sag_mm: 2 }), ['yard: bed B1, sag 2 mm (was 0)']],
];

const read = (parts: SampleParts) => mustRead(sampleJob(parts));
const linesOf = (earlier: JobFile, later: JobFile) => {
  const { panels, library, general } = compareJobs(earlier, later);
  return [
    ...panels.flatMap((panelDifference) =>
      describePanel(panelDifference).map((line) => `${markOf(panelDifference)}: ${line}`),
    ),
    ...library.map(describeLibrary),
    ...general.map(describeGeneral),
  ];
};

describe('what changed from one state of a job to the next', () => {
  it.each(planted)('tells %s, and nothing else', (_what, plant, lines) => {
    expect(linesOf(read(before), read(plant(before)))).toEqual(lines);
  });
  it('tells all of many changes at once, and none twice', () => {
    const many = ['an insert moved', 'a type', 'loads', 'rules', 'a concrete', 'beds'];
    const chosen = [
      ...planted.filter(([what]) => many.includes(what)),
      planted.find(([what]) => what === 'a panel more')!,
    ];
    const after = chosen.reduce((parts, [, plant]) => plant(parts), before);
    const lines = chosen.flatMap(([, , all]) => all);
    const found = linesOf(read(before), read(after));
    expect(found.toSorted()).toEqual(lines.toSorted());
    expect(summariseDifference(compareJobs(read(before), read(after)))).toBe(
      '1 panel new, 1 insert moved, 1 type changed, 1 connection changed, concrete C50 changed, rules changed, yard changed, 1 panel unchanged',
    );
  });
  it('counts in one line', () => {
    const moved = change('castIns', (entry) => entry.panel === 'P3', { y_mm: 700 })(before);
    const after = read(planted.find(([what]) => what === 'a type')![1](moved));
    expect(summariseDifference(compareJobs(read(before), after))).toBe(
      '2 inserts moved, 1 type changed, 3 panels unchanged',
    );
    expect(summariseDifference(compareJobs(read(before), read(before)))).toBe('nothing changed, 5 panels unchanged');
    const fewer = drop('castIns', keyed('P3 2'))(change('castIns', keyed('P3 1'), { recess_mm: 3 })(before));
    expect(summariseDifference(compareJobs(read(before), read(fewer)))).toBe(
      '1 insert removed, 1 insert otherwise changed, 4 panels unchanged',
    );
  });
  it('names both revisions', () => {
    const later = read({ ...before, revision: { letter: 'B', status: 'for construction', date: '2026-11-20' } });
    const { revisions, panels } = compareJobs(read(before), later);
    expect([revisions.before?.letter, revisions.after?.letter, panels]).toEqual(['A', 'B', []]);
  });
  it('calls a panel unchanged only where what it uses is, too', () => {
    const after = read(planted.find(([what]) => what === 'a concrete')![1](before));
    expect(compareJobs(read(before), after).unchanged).toEqual(['P1', 'P2', 'P3', 'P4']);
  });
  it('finds nothing between a job and itself, however the numbers are rounded', () => {
    fc.assert(
      fc.property(jobArbitrary, (document) => {
        const file = mustRead(document);
        const shifted = {
          ...file,
          job: { ...file.job, castIns: file.job.castIns.map((c) => ({ ...c, x_mm: c.x_mm + 1e-8 })) },
        };
        expect(linesOf(file, shifted)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
  it('measures a move as the way back does', () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 800 }), fc.integer({ min: 200, max: 400 }), (x_mm, y_mm) => {
        const later = read(change('castIns', keyed('P3 1'), { x_mm, y_mm })(before));
        const moveOf = (a: JobFile, b: JobFile) => {
          const [first] = compareJobs(a, b).panels;
          assert(first?.kind === 'changed' && first.castIns[0]?.kind === 'changed');
          return first.castIns[0].move!;
        };
        const [there, back] = [moveOf(read(before), later), moveOf(later, read(before))];
        expect(there.distance).toBe(back.distance);
        expect([there.from, there.to]).toEqual([back.to, back.from]);
        // Pythagoras.
        expect(there.distance ** 2).toBeCloseTo((x_mm - 900) ** 2 + (y_mm - 500) ** 2, 6);
      }),
      { numRuns: 20 },
    );
  });
});

/** Every key of a JSON Schema's records, at any depth. */
function listKeys(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const { properties = {} } = schema as { readonly properties?: object }; // safe: what it lacks is nothing
  return [...Object.keys(properties), ...Object.values(schema).flatMap(listKeys)];
}

describe('words of a change', () => {
  it('are those of people for every key of a job', () => {
    const keys = [...new Set(listKeys(z.toJSONSchema(jobFile, { io: 'input' })))].filter((key) => key !== 'properties');
    expect(keys.length).toBeGreaterThan(150);
    const lines = keys.map((key) => sayChange({ path: [key, 0, key], before: 1, after: 2 }));
    expect(lines.filter((line) => /[_[\]]|[a-z][A-Z]/.test(line.replace(/MPa|kN/g, '')))).toEqual([]);
  });
  it('show no digits that come of computing', () => {
    expect(sayChange({ path: ['recess_mm'], before: 0.1 + 0.2, after: 1e-7 + 12.5 })).toBe(
      'recess 12.5000001 mm (was 0.3)',
    );
  });
});

describe('sides of things', () => {
  // What no side holds would change without a word.
  it.each([
    ['cast-in item', castInAspects, Object.keys(castIn.shape), ['key', 'panel']],
    ['connection', connectionAspects, Object.keys(connection.shape), ['key', 'panel']],
    ['panel', panelAspects, [...Object.keys(panel.shape), 'turn_deg', 'datum'], ['key', 'inForm']],
  ] as const)('hold every key of a %s once', (_what, aspects, keys, names) => {
    expect([...Object.values(aspects).flat(), ...names].sort()).toEqual([...keys].sort());
  });
});
