import { describe, expect, it } from 'vitest';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { makeHandedPartner } from '../../../src/job/handed/make-handed-partner.ts';
import { mirrorEdge } from '../../../src/job/handed/mirror-values.ts';
import { faultsOf, mustRead } from '../read.ts';
import {
  type Json,
  type SampleParts,
  sampleCastIn,
  sampleConnection,
  sampleFixture,
  sampleJob,
  samplePanel,
} from '../sample-job.ts';
import { castInsOf, makePartner, panelOf, skew } from './partners.ts';

describe('mirroring one panel, by hand', () => {
  const made = makePartner(mustRead(sampleJob(skew)), 'P1', 'P1-H');
  const panel = panelOf(made.file, 'P1-H');
  const castIns = castInsOf(made.file, 'P1-H');

  it('turns outline and openings round, in their sense of turning, the bottom side staying side 0', () => {
    // By hand: x becomes 4000 − x. The skew top falls to the right now.
    expect(panel.outline_mm).toEqual([
      [0, 0],
      [4000, 0],
      [4000, 2000],
      [0, 3000],
    ]);
    expect(panel.openings_mm).toEqual([
      [
        [500, 1000],
        [1000, 1000],
        [500, 1600],
      ],
    ]);
    expect(panel.zones[0]!.outline_mm).toEqual([
      [3700, 0],
      [4000, 0],
      [3700, 400],
    ]);
  });
  it('finds the battered side at the other end, and the bars turned round', () => {
    expect(panel.edges).toEqual([{ edge: 3, batter_deg: 5 }]);
    expect(panel.reinforcement!.bars.map(({ direction_deg, through_mm }) => [direction_deg, through_mm])).toEqual([
      [0, [3900, 150]],
      [150, null],
    ]);
    expect(panel.inForm).toEqual({ turn_deg: 0, datum: 'bottom-right' });
  });
  it('puts the insert of an edge as far from the same end of the mirrored edge', () => {
    // By hand: 700 above the bottom of the right side, 3000 long, is 3000 − 700 below the top of the left side, whose first corner is the top.
    expect(castIns.map(({ id, x_mm, y_mm, edge }) => [id, x_mm, y_mm, edge])).toEqual([
      ['1', 3100, 500, null],
      ['2', 2900, 500, null],
      ['3', 2300, 90, 3],
      ['4', 2000, 1500, null],
    ]);
    expect(castIns.map(({ crossBar }) => crossBar?.direction_deg)).toEqual([150, undefined, 0, undefined]);
  });
  it('turns round what points along x: forces, and the moments about y and about the axis of the bolts', () => {
    // By hand: T = x Vy − y Vx and My = −N x turn round with x; Mx = N y does not.
    const [first, second] = made.file.job.connections.filter((connection) => connection.panel === 'P1-H');
    expect(first).toMatchObject({ mark: 'C1-H', key: 'c1~handed', origin_mm: [3000, 500], turn_deg: 0 });
    expect(first!.actions).toEqual({
      kind: 'loads',
      combinations: [{ name: 'w', N_kN: 9, Vx_kN: -2, Vy_kN: -5, Mx_kNm: 1, My_kNm: -2, T_kNm: -3, at_mm: [-10, 20] }],
    });
    expect(second).toMatchObject({ mark: 'C2-H', edge: 3, origin_mm: [2300, 90] });
  });
  it('turns loops round that take up shear toward a side', () => {
    // By hand: toward the upper right, 30° above the x axis, becomes toward the upper left, 150° from it.
    const loop = {
      ...{ diameter_mm: 10, legs: 2, distance_mm: 20, anchorageInside_mm: 90, anchorageOutside_mm: 300 },
      ...{ yield_MPa: 500, hooked: true, goodBond: true, toward_deg: 30, depth_mm: 40 },
    };
    const file = mustRead(sampleJob({ connections: [sampleConnection({ hairpins: [loop] })] }));
    const partner = makePartner(file, 'P1', 'P1-H').file.job.connections.find(({ panel: of }) => of === 'P1-H');
    expect(partner?.hairpins).toEqual([{ ...loop, toward_deg: 150 }]);
  });
  it('lets bottom and top of a rectangle be what they are, and its two ends change places', () => {
    expect([0, 1, 2, 3].map((edge) => mirrorEdge(4, edge))).toEqual([0, 3, 2, 1]);
  });
  it('asks to look at what is described in words only', () => {
    expect(made.notes).toEqual(['item 4 (Weld plate): see whether it is the same mirrored']);
  });
});

describe('standard details and brackets', () => {
  const detail = (changes: Json) => ({ id: 'T', name: 'T', fixture: sampleFixture(changes), item: null });
  const withDetail = (changes: Json, more: SampleParts = {}) =>
    mustRead(
      sampleJob({
        details: [detail(changes)],
        connections: [sampleConnection({ detail: 'T', fixture: null })],
        ...more,
      }),
    );
  const partnerOf = (file: JobFile) => {
    const made = makePartner(file, 'P1', 'P1-H');
    return { ...made, connection: made.file.job.connections.find(({ panel }) => panel === 'P1-H')! };
  };

  it('keep a detail that is its own mirror image, its inserts in each other’s holes', () => {
    const { connection, notes } = partnerOf(withDetail({}));
    expect(connection).toMatchObject({ detail: 'T', fixture: null });
    expect(connection.inserts).toEqual([
      { insert: '1', hole: '2' },
      { insert: '2', hole: '1' },
    ]);
    expect(notes).toEqual([]);
  });
  const skewOutline = [
    [-150, -50],
    [150, -50],
    [150, 50],
    [-150, 60],
  ];
  const holes = (first: Json, second: Json) => [
    { id: '1', at_mm: [-100, 0], diameter_mm: 18, ...first },
    { id: '2', at_mm: [100, 0], diameter_mm: 18, ...second },
  ];
  const off = [
    [-40, -40],
    [41, -40],
    [41, 40],
    [-40, 40],
  ];
  it.each<readonly [string, Json]>([
    ['its outline is skew', { outline_mm: skewOutline }],
    ['one hole is wider', { holes: holes({ diameter_mm: 19 }, {}) }],
    ['a slot is inclined', { holes: holes({ slot_mm: 10, slotAngle_deg: 30 }, { slot_mm: 10, slotAngle_deg: 30 }) }],
    ['one hole is a slot', { holes: holes({ slot_mm: 10 }, {}) }],
    ['one hole takes no shear', { holes: holes({ takesShear: false }, {}) }],
    ['what is welded on is off the middle', { attachment_mm: off }],
  ])('give a mirrored plate of its own where %s, and say so', (_why, changes) => {
    const { connection, notes } = partnerOf(withDetail(changes));
    expect(connection.detail).toBeNull();
    expect(connection.inserts.map(({ hole }) => hole)).toEqual(['1', '2']);
    expect(connection.fixture!.holes.map(({ at_mm }) => at_mm)).toEqual([
      [100, 0],
      [-100, 0],
    ]);
    expect(notes).toEqual(['bracket of C1-H is handed: order a mirrored one (detail T does not fit it)']);
  });
  it.each<readonly [string, Json]>([
    ['slots lie level', { holes: holes({ slot_mm: 10, slotAngle_deg: 180 }, { slot_mm: 10 }) }],
    [
      'slots incline toward each other',
      { holes: holes({ slot_mm: 10, slotAngle_deg: 30 }, { slot_mm: 10, slotAngle_deg: -30 }) },
    ],
    ['round holes have an angle written', { holes: holes({ slotAngle_deg: 30 }, {}) }],
  ])('are the same mirrored where %s', (_why, changes) => {
    expect(partnerOf(withDetail(changes)).connection.detail).toBe('T');
  });
  it('ask for mirrored template boards too', () => {
    const file = withDetail(
      { outline_mm: skewOutline },
      {
        ways: [{ id: 'TB', name: 'Board', method: 'template board' }],
        castIns: [sampleCastIn('1', 900, 500, { holding: 'TB' }), sampleCastIn('2', 1100, 500, { holding: 'TB' })],
      },
    );
    expect(partnerOf(file).notes).toContain('template board of C1-H is handed: make a mirrored one');
  });
});

describe('a partner that cannot be made, or is made anew', () => {
  const file = mustRead(sampleJob(skew));
  const textOf = (of: JobFile, mark: string, newMark: string) => {
    const made = makeHandedPartner(of, mark, newMark);
    return made.ok ? 'made' : made.text;
  };
  const made = makePartner(file, 'P1', 'P1-H').file;

  it('says why not', () => {
    expect(textOf(file, 'P11', 'P2')).toBe('there is no panel P11; did you mean P1?');
    expect(textOf(made, 'P1-H', 'P2')).toBe(
      'panel P1-H is itself the handed partner of P1; expected a panel of its own',
    );
    expect(textOf(file, 'P1', 'P1')).toBe('panel P1 is there already and no partner of P1; expected a new mark');
    expect(textOf(file, 'P1', '')).toBe('"" is no mark; expected a text of 1 to 60 signs');
    expect(textOf(made, 'P1', 'P2')).toBe(
      'connection C1-H is there already in another panel; expected that name to be free',
    );
  });
  it('makes it anew in its place after a change', () => {
    const moved = {
      ...made,
      job: { ...made.job, castIns: made.job.castIns.map((c) => (c.key === 'i4' ? { ...c, x_mm: 2100 } : c)) },
    };
    const again = makeHandedPartner(moved, 'P1', 'P1-H');
    expect(again.ok && again.isRemade).toBe(true);
    const { job } = again.ok ? again.file : made;
    expect(job.panels.map(({ mark }) => mark)).toEqual(['P1', 'P1-H']);
    expect(job.castIns.map(({ panel, id, x_mm }) => [panel, id, x_mm]).slice(3)).toEqual([
      ['P1', '4', 2100],
      ['P1-H', '1', 3100],
      ['P1-H', '2', 2900],
      ['P1-H', '3', 2300],
      ['P1-H', '4', 1900],
    ]);
    expect(makePartner(made, 'P1', 'P1-H').file).toEqual(made);
  });
});

describe('partners that are no mirror image', () => {
  const made = makePartner(mustRead(sampleJob(skew)), 'P1', 'P1-H').file;
  /** The faults after a change of the partner's panel, cast-in items or connections. */
  const faultsWith = (key: 'panels' | 'castIns' | 'connections', change: (entry: Json) => Json | null) => {
    const plain = JSON.parse(JSON.stringify(made)) as { job: Record<string, Json[]> }; // safe: a job file just written
    plain.job[key] = plain.job[key]!.flatMap((entry) => {
      if (entry.mark !== 'P1-H' && entry.panel !== 'P1-H') return [entry];
      const changed = change(entry);
      return changed === null ? [] : [changed];
    });
    return faultsOf(plain);
  };
  const only = (id: string, changes: Json) => (entry: Json) =>
    entry.id === id || entry.mark === id ? { ...entry, ...changes } : entry;

  it('take rounding, another lie in the form, and a way of writing the same directions', () => {
    expect(faultsWith('castIns', only('1', { x_mm: 3100.0000005, crossBar: { direction_deg: -30 } }))).toEqual([]);
    expect(faultsWith('panels', (panel) => ({ ...panel, inForm: { turn_deg: 90, datum: 'top-left' } }))).toEqual([]);
    expect(faultsWith('connections', only('C1-H', { turn_deg: 360 }))).toEqual([]);
  });
  it('name what is off, and from where', () => {
    expect(faultsWith('castIns', only('4', { x_mm: 2000.00001 }))).toEqual([
      'job.castIns[7].x_mm: insert 4 of panel P1-H is not the mirror image of that of P1: x_mm is 2000.00001; expected 2000, or no link (handedOf)',
    ]);
    expect(faultsWith('castIns', only('3', { item: 'F16', recess_mm: 2 }))).toEqual([
      'job.castIns[6].recess_mm: insert 3 of panel P1-H is not the mirror image of that of P1: recess_mm is 2; expected 0, or no link (handedOf)',
    ]);
    expect(faultsWith('panels', (panel) => ({ ...panel, thickness_mm: 200 }))).toEqual([
      'job.panels[1].thickness_mm: panel P1-H is not the mirror image of that of P1: thickness_mm is 200; expected 180, or no link (handedOf)',
    ]);
    expect(faultsWith('connections', only('C2-H', { actions: { kind: 'required', N_kN: 1, V_kN: 0 } }))[0]).toMatch(
      /connection C2-H of panel P1-H is not the mirror image of that of P1: actions.kind is "required"; expected "none"/,
    );
  });
  it('name what is missing and what is there beside', () => {
    expect(faultsWith('castIns', (entry) => (entry.id === '4' ? null : entry))).toEqual([
      'job.panels[1].handedOf: panel P1-H has no insert 4, as its source P1 wants; expected one, or no link (handedOf)',
    ]);
    expect(faultsWith('castIns', only('4', { id: '5' }))).toEqual([
      'job.panels[1].handedOf: panel P1-H has no insert 4, as its source P1 wants; expected one, or no link (handedOf)',
      'job.castIns[7]: insert 5 of panel P1-H has none to be mirrored from in P1; expected it there too, or no link (handedOf)',
    ]);
  });
  it('are linked to a panel of its own, not to themselves or a partner', () => {
    expect(faultsOf(sampleJob({ panels: [samplePanel({ handedOf: 'P1' })] }))).toEqual([
      'job.panels[0].handedOf: panel P1 is given as its own handed partner; expected another panel',
    ]);
    expect(faultsWith('panels', (panel) => ({ ...panel, handedOf: 'P9' }))).toEqual([
      'job.panels[1].handedOf: there is no panel P9; expected one of P1, P1-H',
    ]);
    const chain = sampleJob({
      panels: [samplePanel({ handedOf: 'P2' }), samplePanel({ key: 'p2', mark: 'P2', handedOf: 'P1' })],
      ...{ castIns: [], connections: [] },
    });
    expect(faultsOf(chain)).toEqual([
      'job.panels[0].handedOf: panel P1 is linked to P2, which is itself the handed partner of P1; expected P1, or no link',
      'job.panels[1].handedOf: panel P2 is linked to P1, which is itself the handed partner of P2; expected P2, or no link',
    ]);
  });
});
