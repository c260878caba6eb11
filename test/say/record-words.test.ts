import { describe, expect, it } from 'vitest';
import { bodies } from '../../src/records/bodies.ts';
import { type FactRecord, factRecord, type KindAndBody, type RecordKind } from '../../src/records/record.ts';
import { groupAlike } from '../../src/say/group-alike.ts';
import { placesOf, writeRuns } from '../../src/say/number-runs.ts';
import { writerOf } from '../../src/say/quantities.ts';
import { type RecordNames, tellLevel } from '../../src/say/record-tellers.ts';
import { nameItems, tellRecord, tellRecords } from '../../src/say/record-words.ts';

const HASH = 'a'.repeat(64);
const idOf = (k: number) => `01900000-0000-7000-8000-${String(k).padStart(12, '0')}`;
const frozen = {
  revision: { letter: 'C', fingerprint: HASH },
  engine: '0.4.0',
  inputs: HASH,
  open: ['no. 4 is off'],
  head: null,
};

/** A record as a device would write it; what matters is said by the test. */
function record(k: number, said: KindAndBody, over: Partial<FactRecord> = {}): FactRecord {
  return factRecord.parse({
    v: 1,
    id: idOf(k),
    job: 'abcdefghijkl',
    piece: 'b'.repeat(24),
    item: null,
    seen: [],
    revision: null,
    checkKey: null,
    measuredAt: '2026-11-30T06:00:00Z',
    typedAt: '2026-11-30T06:00:00Z',
    clock_s: null,
    person: 'pppppppppppp',
    measuredBy: null,
    device: 'dddddddddddddddd',
    app: '0.4.0',
    chain: { number: k, previous: k === 1 ? null : HASH },
    ...said,
    ...over,
  });
}

const look = { kind: 'placed', body: { stage: 1, type: true, face: true, firm: true, note: null } } as const;
const first = record(1, look, { item: 'k4' });

const names: RecordNames = {
  person: (id) => (id === 'pppppppppppp' ? 'M. Nobody' : null),
  number: (item) => (item.startsWith('k') ? Number(item.slice(1)) : null),
  piece: () => 'P13 no. 1',
  record: (id) => (id === first.id ? first : null),
  write: writerOf('metric'),
};

/** One sentence of each kind: kept here as people read it. */
const SENTENCES: { readonly [Kind in RecordKind]: readonly [KindAndBody & { readonly kind: Kind }, string] } = {
  'piece-started': [
    {
      kind: 'piece-started',
      body: { panelKey: 'p13', mark: 'P13', serial: '2', pour: 'T1', bed: 'B1', recastOf: 'c'.repeat(24) },
    },
    'M. Nobody began P13 no. 2 for pour T1 on bed B1, cast in place of P13 no. 1.',
  ],
  're-marked': [
    { kind: 're-marked', body: { panelKey: 'p14', mark: 'P14', serial: '1', reason: 'painted wrong' } },
    'M. Nobody marked it P14 no. 1: painted wrong.',
  ],
  scrapped: [{ kind: 'scrapped', body: { reason: 'cracked' } }, 'M. Nobody scrapped it: cracked.'],
  located: [{ kind: 'located', body: { place: 'grid B3' } }, 'M. Nobody set down where it stands: grid B3.'],
  'form-checked': [
    {
      kind: 'form-checked',
      body: {
        measures: [
          { what: 'length', measured_mm: 6003 },
          { what: 'depth 1', measured_mm: 180.5 },
        ],
      },
    },
    'M. Nobody measured the form: length: 6003 mm, depth 1: 180.5 mm.',
  ],
  placed: [
    { kind: 'placed', body: { stage: 2, type: false, face: true, firm: false, note: 'F20 in place of F16' } },
    'M. Nobody checked the piece before the pour: WRONG TYPE, NOT FIRM, face as shown; F20 in place of F16.',
  ],
  measured: [
    { kind: 'measured', body: { stage: 1, x_mm: 1203, y_mm: null, level_mm: -3, basis: 'sheet' } },
    'M. Nobody measured the piece before the cage: x 1203 mm, 3 mm proud of the face, typed from the sheet.',
  ],
  photo: [
    {
      kind: 'photo',
      body: { photo: HASH, type: 'image/jpeg', bytes: 1, width: 1, height: 1, of: 'defect', note: 'honeycomb' },
    },
    'M. Nobody photographed a defect; honeycomb.',
  ],
  comment: [{ kind: 'comment', body: { text: 'glue was wet' } }, 'M. Nobody wrote about the piece: glue was wet.'],
  correction: [
    { kind: 'correction', body: { of: first.id, reason: 'wrong insert' } },
    'M. Nobody withdrew “M. Nobody checked insert 4 before the cage: type, face, firm as shown”: wrong insert.',
  ],
  decision: [
    {
      kind: 'decision',
      body: {
        about: [first.id],
        verdict: 'accepted',
        role: 'design engineer',
        registration: 'no. 1',
        reason: 'computed again',
        computed: { state: 'works', ratio: 0.83, engine: '0.4.0' },
      },
    },
    'M. Nobody accepted the form as it is, as design engineer, registration no. 1: computed again.',
  ],
  cleared: [
    { kind: 'cleared', body: { role: 'qa', condition: 'plate to be slotted', frozen } },
    'M. Nobody cleared the piece as QA by revision C, on the condition: plate to be slotted.',
  ],
  held: [{ kind: 'held', body: { reason: 'form racked' } }, 'M. Nobody held the piece: form racked.'],
  override: [
    { kind: 'override', body: { role: 'foreman', reason: 'truck at the gate', frozen } },
    'M. Nobody let it be poured on an override as foreman by revision C, with 1 open point: truck at the gate.',
  ],
  poured: [{ kind: 'poured', body: { reason: null } }, 'M. Nobody poured it.'],
  'screed-checked': [
    { kind: 'screed-checked', body: { level: false, plumb: true, cap: true, level_mm: 4, note: null } },
    'M. Nobody checked the piece after screeding: NOT level, plumb, cap on; 4 mm below the face.',
  ],
  stripped: [
    { kind: 'stripped', body: { plates: [{ part: 'FP16', out: 8, back: 6 }] } },
    'M. Nobody stripped it, fixing plates 6 of 8 back; MISSING 2 FP16.',
  ],
  uncovered: [
    {
      kind: 'uncovered',
      body: { plateOff: true, mortarOut: false, thread: true, turns: 8, capBack: true, note: null },
    },
    'M. Nobody opened up the piece: mortar NOT out, plate off, thread runs by hand, cap back in; 8 turns by hand.',
  ],
  cap: [{ kind: 'cap', body: { is: 'missing' } }, 'M. Nobody found NO CAP in the piece.'],
  'strength-result': [
    { kind: 'strength-result', body: { specimen: 'cylinder', age_hours: 18, values_MPa: [16.5, 17], report: 'L 12' } },
    'M. Nobody entered cylinder strengths at 18 h: 16.5 MPa, 17 MPa, report L 12.',
  ],
  'lot-taken': [{ kind: 'lot-taken', body: { item: 'F16', lot: 'L3', count: 12 } }, 'M. Nobody took 12 F16 of lot L3.'],
  surveyed: [
    {
      kind: 'surveyed',
      body: {
        basis: 'instrument',
        file: { name: 'p13.csv', hash: HASH, reading: 'semicolons, metres' },
        tool: { name: 'station 2', serial: '77', calibratedUntil: null },
        controls: [
          {
            ...{ name: 'A', kind: 'corner', design_mm: [0, 0], edgeEnd_mm: null, measured_mm: [1, 2], sigma_mm: 5 },
            ...{ isUsed: false, note: 'broken off' },
          },
        ],
        points: [{ item: 'k4', name: '4', measured_mm: [1, 2, 3], second: null, sigma_mm: 1 }],
        ...{ tapes: [], stances: [], note: null },
      },
    },
    'M. Nobody surveyed insert 4 with an instrument, by 0 of 1 known point, file p13.csv; station 2, no. 77, no calibration date read.',
  ],
  'remedy-decided': [
    {
      kind: 'remedy-decided',
      body: {
        ...{ connection: 'kc', connectionMark: 'C2', about: [first.id], remedy: 'holes slotted' },
        change: { move: null, holes: [], washer_mm: null, unused: [], packers_mm: null },
        ...{ words: 'Hole 2 becomes a slot.', role: 'design engineer', registration: 'no. 1', reason: 'it carries' },
        computed: { state: 'works', ratio: 0.5, clearance_mm: 0.4, engine: '0.4.0' },
      },
    },
    'M. Nobody decided for connection C2: holes slotted. Hole 2 becomes a slot. As design engineer, registration no. 1: it carries; computed as cast then: works, 50 %, clearance left 0.4 mm.',
  ],
  delivered: [
    { kind: 'delivered', body: { caps: false, threads: true, note: null } },
    'M. Nobody looked at the piece on delivery: CAP MISSING, threads clean.',
  ],
  offered: [
    { kind: 'offered', body: { connection: 'kc', connectionMark: 'C2', wentOn: 'no', note: '6 mm short' } },
    'M. Nobody offered up the plate of connection C2: it did NOT go on; 6 mm short.',
  ],
  tightened: [
    {
      kind: 'tightened',
      body: {
        ...{ connection: 'kc', connectionMark: 'C2', how: 'torque wrench', torque_Nm: 80, tool: null },
        bolts: [
          { item: 'k4', length_mm: 50, turns: 9, packers_mm: 0 },
          { item: 'k5', length_mm: 45, turns: null, packers_mm: 0 },
        ],
        ...{ lubricated: true, note: null },
      },
    },
    'M. Nobody tightened connection C2: 2 bolts of 45, 50 mm, torque wrench, 80 Nm, lubricated.',
  ],
  sealed: [{ kind: 'sealed', body: { with: 'grout' } }, 'M. Nobody filled and sealed the piece with grout.'],
  'proof-planned': [
    {
      kind: 'proof-planned',
      body: {
        items: ['k4', 'k5'],
        ...{ load_kN: 12.5, hold_min: 2, movement_mm: null, role: 'qa', reason: 'first lot' },
      },
    },
    'M. Nobody planned pull tests of inserts 4, 5: 12.5 kN held 2 min, as QA: first lot.',
  ],
  'proof-loaded': [
    {
      kind: 'proof-loaded',
      body: {
        ...{ load_kN: 12.5, held_min: 2, movement_mm: 0.3, failure: 'concrete cone', support_mm: 160 },
        ...{ gauge: null, at: null, note: null },
      },
    },
    'M. Nobody pulled the piece with 12.5 kN for 2 min, moved 0.3 mm, feet 160 mm from its axis: it FAILED: concrete cone.',
  ],
  docket: [
    { kind: 'docket', body: { number: '4711', mix: 'C40', at: null } },
    'M. Nobody took the docket of the concrete: no. 4711, mix C40.',
  ],
};

describe('records in words', () => {
  it.each(Object.keys(bodies) as RecordKind[])('tells a record of the kind %s in one sentence', (kind) => {
    const [said, sentence] = SENTENCES[kind];
    expect(tellRecord(record(9, said), names)).toBe(sentence);
  });

  it('tells a decision about an insert with what was computed, of the form without', () => {
    const [decided] = SENTENCES.decision;
    expect(tellRecord(record(9, decided, { item: 'k4' }), names)).toBe(
      'M. Nobody accepted insert 4 as placed, as design engineer, registration no. 1: computed again; computed as placed then: works, 83 %.',
    );
  });

  it('tells a look at several inserts as one act, and a withdrawn one by itself', () => {
    const looks = [4, 5, 6, 7, 9].map((k, i) => record(i + 1, look, { item: `k${k}` }));
    expect(groupAlike(looks).map((group) => tellRecords(group, names))).toEqual([
      'M. Nobody checked inserts 4–7, 9 before the cage: type, face, firm as shown.',
    ]);
    expect(groupAlike(looks, new Set([idOf(2)])).map(({ length }) => length)).toEqual([1, 1, 3]);
    const later = record(6, look, { item: 'k8', typedAt: '2026-11-30T07:00:00Z' });
    const wrong = record(7, { kind: 'placed', body: { ...look.body, firm: false } }, { item: 'k10' });
    expect(groupAlike([...looks, later, wrong]).map(({ length }) => length)).toEqual([5, 1, 1]);
  });

  it('names who measured where another typed it in, and never a person whose name is not here', () => {
    expect(tellRecord(record(1, look, { item: 'k4', measuredBy: 'qqqqqqqqqqqq' }), names)).toMatch(
      /^somebody whose name is not here checked insert 4/,
    );
  });

  it('says so where what is withdrawn has not arrived', () => {
    const said = { kind: 'correction', body: { of: idOf(77), reason: 'slip' } } as const;
    expect(tellRecord(record(2, said), names)).toContain('withdrew a record that has not arrived here: slip');
  });

  it('names inserts by their numbers, and those of no plan', () => {
    expect(nameItems(['k2', 'k1', null], names.number)).toBe('inserts 1, 2');
    expect(nameItems(['k2', 'x'], names.number)).toBe('insert 2 and an insert that is in no plan now');
    expect(nameItems([null], names.number)).toBe('the piece');
    expect(writeRuns([9, 4, 5, 6, 7, 7])).toBe('4–7, 9');
    expect(placesOf([3])).toBe('insert 3');
  });

  it('tells a level by the face, in the units of the person', () => {
    expect(tellLevel(0, writerOf('metric'))).toBe('flush with the face');
    expect(tellLevel(25.4, writerOf('US'))).toBe('1 in below the face');
  });
});
