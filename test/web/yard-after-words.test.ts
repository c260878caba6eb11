import { describe, expect, it } from 'vitest';
import type { InsertReport } from '../../src/assess/yard/piece-report.ts';
import { planPiece } from '../../src/assess/yard/plan-piece.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { foldPiece } from '../../src/records/fold/fold-piece.ts';
import { makeRecord } from '../../src/records/make-record.ts';
import type { Person } from '../../src/records/person.ts';
import type { FactRecord, KindAndBody } from '../../src/records/record.ts';
import { makeUuidV7 } from '../../src/records/uuid-v7.ts';
import { makeDecision, mayDecide } from '../../src/web/pieces/decide.ts';
import type { OpenPiece } from '../../src/web/pieces/read-piece.ts';
import type { WriteDraft } from '../../src/web/records/record-device.ts';
import { countBack, findAgeHours, readValues } from '../../src/web/yard/screens/after/uncover.ts';
import { compareSaid, listConflicts } from '../../src/web/yard/screens/conflict/conflict-words.ts';
import { ScreedSession } from '../../src/web/yard/screens/screed/screed-session.ts';
import { findNextScreed, listScreedStops, tellSetting } from '../../src/web/yard/screens/screed/screed-stops.ts';
import { demo } from '../job/edit/demo.ts';

const PIECE = '0'.repeat(24);
const plan = planPiece(indexJob(demo), { id: PIECE, mark: 'P13', bed: null });
const clock = { now: Date.parse('2026-11-30T09:00:00Z') };

/** A record by what it says; nothing was seen unless it is said. */
function record(said: KindAndBody, item: string | null, seen: readonly string[] = [], checkKey?: string): FactRecord {
  clock.now += 1000;
  return makeRecord(
    {
      ...said,
      job: 'job000000000',
      piece: PIECE,
      item,
      revision: null,
      checkKey: checkKey ?? (item === null ? null : (plan.keys.get(item) ?? null)),
      measuredAt: null,
      measuredBy: null,
    },
    {
      id: makeUuidV7(clock.now, (bytes) => crypto.getRandomValues(bytes)),
      seen,
      now: new Date(clock.now).toISOString(),
      clock_s: null,
      person: 'person000000',
      device: 'device0000000000',
      app: 'test',
      previous: null,
    },
  );
}

const screed = (level: boolean, cap = true): KindAndBody => ({
  kind: 'screed-checked',
  body: { level, plumb: true, cap, level_mm: null, note: null },
});

describe('the stops after screeding', () => {
  it('hold each insert of the trowelled face once, and no other', () => {
    const stops = listScreedStops(foldPiece(PIECE, []), plan);
    const numbers = stops.flatMap(({ members }) => members.map(({ number }) => number));
    expect([...numbers].sort((a, b) => a - b)).toEqual(plan.afterScreed.map(({ number }) => number));
    expect(findNextScreed(stops, 0)).toBe(0);
  });

  it('take the worse of two who did not know of each other, and nothing that was said of another design', () => {
    const key = plan.afterScreed[0]!.castIn.key;
    const two = listScreedStops(foldPiece(PIECE, [record(screed(true), key), record(screed(false), key)]), plan);
    expect(two[0]!.wrong.map(({ castIn }) => castIn.key)).toEqual([key]);
    const old = listScreedStops(foldPiece(PIECE, [record(screed(true), key, [], 'f'.repeat(64))]), plan);
    expect(old[0]!.unseen.map(({ castIn }) => castIn.key)).toContain(key);
  });

  it('tell how long it can be moved, with the source of that', () => {
    const at = Date.parse('2026-11-30T10:00:00Z');
    expect(tellSetting(null, at)).toMatchObject({ isLate: false });
    expect(tellSetting('2026-11-30T09:38:00Z', at).words).toBe(
      'Poured 22 min ago. Still movable for about 30–60 min at 20 °C, less in heat (common practice).',
    );
    expect(tellSetting('2026-11-30T09:25:00Z', at).isLate).toBe(true);
    expect(tellSetting('2026-11-30T07:00:00Z', at).words).toMatch(/^Poured 3 h ago: likely no longer movable/);
  });
});

describe('a walk over the trowelled face', () => {
  const start = () => {
    const written: WriteDraft[] = [];
    const records: FactRecord[] = [];
    // What the walk reads of a piece: its plan and what was written.
    const read = () => ({ id: PIECE, plan, state: foldPiece(PIECE, records) }) as unknown as OpenPiece;
    const write = async (drafts: readonly WriteDraft[]) => {
      written.push(...drafts);
      const heads = [...foldPiece(PIECE, records).heads.values()].flat();
      records.push(...drafts.map((draft) => record(draft, draft.item, heads)));
      return true;
    };
    return { walk: new ScreedSession(read, { write }), written };
  };

  it('keeps two faults of one insert in one record', async () => {
    const { walk, written } = start();
    walk.pick(plan.afterScreed[0]!.number);
    walk.turn('plumb');
    walk.turn('cap');
    await walk.say();
    expect(written.map(({ body }) => body)).toEqual([
      { level: true, plumb: false, cap: false, level_mm: null, note: null },
    ]);
    expect(walk.step.value).toMatchObject({ kind: 'answer' });
  });

  it('asks by how much where the level is off', async () => {
    const { walk, written } = start();
    walk.pick(plan.afterScreed[0]!.number);
    walk.turn('level');
    await walk.say();
    expect([walk.step.value.kind, written.length]).toEqual(['level', 0]);
    await walk.level(-3);
    expect(written[0]?.body).toMatchObject({ level: false, level_mm: -3 });
  });

  it('is over when every stop was looked at', async () => {
    const { walk, written } = start();
    for (let i = 0; i < 40 && walk.step.value.kind === 'look'; i += 1) await walk.allRight();
    expect(walk.step.value.kind).toBe('end');
    expect(written).toHaveLength(plan.afterScreed.length);
  });
});

describe('two answers beside each other', () => {
  const measured = (x_mm: number): KindAndBody => ({
    kind: 'measured',
    body: { stage: 1, x_mm, y_mm: 450, level_mm: null, basis: 'tape' },
  });

  it('show what differs first, with units, and nothing that neither took', () => {
    expect(compareSaid([record(measured(60), null), record(measured(90), null)])).toEqual([
      { name: 'x', values: ['60 mm', '90 mm'], differs: true },
      { name: 'y', values: ['450 mm', '450 mm'], differs: false },
    ]);
  });

  it('are no conflict where one is of another design', () => {
    const key = plan.setOut.items[0]!.castIn.key;
    const both = [record(measured(60), key), record(measured(90), key)];
    const found = listConflicts(foldPiece(PIECE, both).slots.values(), plan.keys);
    expect(found.map(({ latest }) => latest.length)).toEqual([2]);
    const old = [both[0]!, record(measured(90), key, [], 'f'.repeat(64))];
    expect(listConflicts(foldPiece(PIECE, old).slots.values(), plan.keys)).toEqual([]);
  });
});

describe('a decision about an insert that is off', () => {
  const sight = record(
    { kind: 'placed', body: { stage: 1, type: true, face: true, firm: false, note: null } },
    plan.setOut.items[0]!.castIn.key,
  );
  const insert = (extent: InsertReport['extent'], rejected = false) =>
    ({
      extent,
      decision: rejected ? { body: { verdict: 'rejected' } } : null,
      answer: null,
      about: [sight],
    }) as unknown as InsertReport;
  const who = (roles: Person['roles'], registration: string | null = null): Person => ({
    id: 'person000000',
    name: 'A. Nobody',
    roles,
    registration,
  });

  it.each([
    ['QA inside the limits', who(['qa']), insert('inside the limits'), true],
    ['QA beyond them', who(['qa']), insert('beyond the limits'), false],
    ['a design engineer beyond them', who(['design engineer'], 'no. 7'), insert('beyond the limits'), true],
    ['one without a registration', who(['design engineer']), insert('beyond the limits'), false],
    ['QA of what was rejected', who(['qa']), insert('inside the limits', true), false],
    ['nobody', null, insert('inside the limits'), false],
  ])('may be an acceptance by %s: %#', (_, person, one, may) => {
    expect(mayDecide(person, one, 'accepted').may).toBe(may);
    if (person !== null) expect(makeDecision(one, person, 'accepted', 'r') === null).toBe(!may);
  });

  it('names the records that it is about, the registration, and that nothing was computed', () => {
    expect(
      makeDecision(insert('beyond the limits'), who(['design engineer'], 'no. 7'), 'accepted', 'why'),
    ).toMatchObject({
      about: [sight.id],
      role: 'design engineer',
      registration: 'no. 7',
      computed: { state: 'not known', ratio: null },
    });
    expect(makeDecision(insert('wrong type'), who(['setter']), 'rejected', 'why')).toMatchObject({ role: 'setter' });
  });
});

describe('after stripping', () => {
  it('counts back never below none', () => {
    expect([countBack(null, -1), countBack(null, 1), countBack(3, -1), countBack(0, -1)]).toEqual([0, 1, 2, 0]);
  });

  it('reads strengths as a report writes them', () => {
    expect(readValues('31,5 30.8; 29')).toEqual([31.5, 30.8, 29]);
    for (const text of ['', '0', '12 abc', '300', '-5']) expect(readValues(text), text).toBeNull();
  });

  it('takes the age from the pour, where there was one', () => {
    const now = Date.parse('2026-11-30T10:00:00Z');
    expect(findAgeHours('2026-11-29T14:00:00Z', now)).toBe(20);
    expect(findAgeHours(null, now)).toBeNull();
    expect(findAgeHours('2026-11-30T09:50:00Z', now)).toBeNull();
  });
});
