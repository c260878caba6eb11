import { describe, expect, it } from 'vitest';
import { judgePlacing } from '../../../src/assess/yard/judge-placing.ts';
import type { Extent } from '../../../src/assess/yard/rights.ts';
import type { FactRecord, KindAndBody } from '../../../src/records/record.ts';
import { checkAll, demoFile, keyOf, PieceTablet, pieceOf, sight, taped, type Who } from './yard-sample.ts';

/** P12 no. 1: 2 is a single insert with room to spare, 4 to 7 a group whose plate leaves none; all in the trowelled face. */
const sample = pieceOf(demoFile(), 'P12', '1');
/** P01 no. 1: 1 and 2 lie in the mould face. */
const underCage = pieceOf(demoFile(), 'P01', '1');

function insertOf(tablet: PieceTablet, number: number) {
  const found = tablet.report().inserts.find(({ item }) => item.number === number);
  if (found === undefined) throw new Error(`no insert no. ${number}`);
  return found;
}

function pointsOf(tablet: PieceTablet, number: number) {
  return tablet.report().openPoints.filter((point) => point.number === number);
}

function decide(about: readonly FactRecord[], verdict: 'accepted' | 'to be moved' | 'rejected', who: Who): KindAndBody {
  const isEngineer = who === 'engineer' || who === 'unregistered';
  return {
    kind: 'decision',
    body: {
      about: about.map(({ id }) => id),
      verdict,
      role: isEngineer ? 'design engineer' : who === 'qa' ? 'qa' : 'foreman',
      registration: who === 'engineer' ? 'No. 1, Nowhere' : null,
      reason: 'looked at',
      computed: { state: 'works', ratio: null, engine: '0.1.0' },
    },
  };
}

function checked(of = sample): PieceTablet {
  const tablet = new PieceTablet(1, of);
  checkAll(tablet);
  return tablet;
}

describe('an insert in a report', () => {
  it('is open until somebody looked and the digits that are asked for are taken', () => {
    const tablet = new PieceTablet(1, sample);
    expect(insertOf(tablet, 2)).toMatchObject({ state: 'open', why: ['not looked at', 'y not taped'] });
    tablet.write('checker', 2, sight(2));
    expect(insertOf(tablet, 2)).toMatchObject({ state: 'open', why: ['y not taped'] });
    expect(pointsOf(tablet, 2)).toEqual([
      { words: 'no. 2: y not taped', number: 2, liftedBy: 'checking it', isHard: false },
    ]);
    tablet.write('checker', 2, taped(sample.plan, 2));
    expect(insertOf(tablet, 2)).toMatchObject({ state: 'good', why: [] });
    // Nothing is asked of no. 1 but a look.
    tablet.write('checker', 1, sight(2));
    expect(insertOf(tablet, 1).state).toBe('good');
  });
  it.each([
    ['type', 'wrong type', true, 'design engineer'],
    ['face', 'beyond the limits', true, 'design engineer'],
    ['firm', 'beyond the limits', false, 'setter'],
  ] as const)('is out by sight: %s', (what, extent, isHard, liftedBy) => {
    const tablet = checked();
    tablet.write('checker', 2, sight(2, { [what]: false }));
    expect(insertOf(tablet, 2)).toMatchObject({ state: 'out', extent });
    expect(pointsOf(tablet, 2)).toMatchObject([{ isHard, liftedBy }]);
    tablet.write('checker', 2, sight(2));
    expect(insertOf(tablet, 2).state).toBe('good');
  });
  it('that is not there is said to be missing', () => {
    const tablet = checked();
    tablet.write('checker', 2, sight(2, { type: false, face: false, firm: false }));
    expect(pointsOf(tablet, 2)).toMatchObject([{ words: expect.stringContaining('it is not there'), isHard: true }]);
  });
  it.each([
    [2, 7, 'works', 'inside the limits', false],
    [2, 9, 'works', 'beyond the limits', false],
    [4, 7, 'does not work', 'beyond the limits', true],
  ] as const)('no. %s off by %s mm: %s, %s', (number, x, verdict, extent, isHard) => {
    const tablet = checked();
    tablet.write('checker', number, taped(sample.plan, number, { x }));
    expect(insertOf(tablet, number)).toMatchObject({ state: 'out', extent, answer: { verdict } });
    expect(pointsOf(tablet, number)).toMatchObject([{ isHard, liftedBy: 'setter' }]);
    expect(insertOf(tablet, number).why[0]).toContain(`off by ${x} mm along x: move it ${x} mm toward`);
  });
  it('says why it does not work by what makes it so, and nothing where it works', () => {
    const tablet = checked();
    tablet.write('checker', 2, taped(sample.plan, 2, { x: 7 }));
    expect(insertOf(tablet, 2).why).toEqual([expect.stringMatching(/it works where it is$/)]);
    tablet.write('checker', 4, taped(sample.plan, 4, { x: 7 }));
    const { answer, why } = insertOf(tablet, 4);
    expect(answer?.asPlaced).toMatchObject({ after: { state: 'passes' }, plate: { kind: 'does not go on' } });
    expect(why[0]).toMatch(/it does not work where it is \(the plate does not go on at hole \w+\)$/);
  });
  it('stays out along an axis that was not taped again', () => {
    const tablet = checked();
    tablet.write('checker', 2, taped(sample.plan, 2, { y: 30 }));
    const only: KindAndBody = {
      kind: 'measured',
      body: { stage: 2, x_mm: 2500, y_mm: null, level_mm: null, basis: 'tape' },
    };
    tablet.write('checker', 2, only);
    expect(insertOf(tablet, 2).state).toBe('out');
    tablet.write('checker', 2, taped(sample.plan, 2));
    expect(insertOf(tablet, 2).state).toBe('good');
  });
  it('is judged as if it alone had been asked about', () => {
    const tablet = checked();
    tablet.write('checker', 4, taped(sample.plan, 4, { x: 30 }));
    const { answer, item } = insertOf(tablet, 4);
    const others = new Map([7].map((number) => [keyOf(sample.plan, number), { x: 4140, y: 660, level: null }]));
    const { index } = sample.context;
    const at = { index, bed: sample.plan.setOut.bed, now: 2 } as const;
    expect(answer).toEqual(judgePlacing(at, sample.plan, item, { x: 4290, y: 540, level: null }, others));
  });
});

describe('an insert measured by two', () => {
  const apart = (x: number) => {
    const one = checked();
    const other = new PieceTablet(2, sample);
    other.learn(one);
    one.write('checker', 2, taped(sample.plan, 2));
    other.write('setter', 2, taped(sample.plan, 2, { x }));
    one.learn(other);
    return one;
  };
  it('is in conflict, and the worse of the two counts', () => {
    const tablet = apart(30);
    expect(insertOf(tablet, 2)).toMatchObject({ state: 'conflict', answer: { deviation: { x: 30 }, advice: 'move' } });
    expect(pointsOf(tablet, 2)).toMatchObject([{ isHard: true, liftedBy: 'checking it' }]);
    expect(tablet.report().flags.map(({ kind }) => kind)).toEqual(['conflict']);
  });
  it('is no conflict where they say the same', () => {
    expect(insertOf(apart(0), 2).state).toBe('good');
  });
  const choose: KindAndBody = {
    kind: 'measured',
    body: { stage: 2, x_mm: 2500, y_mm: 450, level_mm: null, basis: 'chosen' },
  };
  it('is settled by a checker who chose', () => {
    const tablet = apart(30);
    tablet.write('checker', 2, choose);
    expect(insertOf(tablet, 2).state).toBe('good');
  });
  it('is not settled by a setter who chose, and that is flagged', () => {
    const tablet = apart(30);
    tablet.write('setter', 2, choose);
    expect(insertOf(tablet, 2)).toMatchObject({ state: 'conflict', answer: { deviation: { x: 30 } } });
    expect(tablet.report().flags.map(({ kind }) => kind)).toContain('decided without the right');
  });
});

describe('an insert that is accepted', () => {
  const out = (number: number, x: number) => {
    const tablet = checked();
    const record = tablet.write('checker', number, taped(sample.plan, number, { x }));
    return { tablet, record };
  };
  it.each([
    [7, 'qa', 'accepted'],
    [7, 'engineer', 'accepted'],
    [7, 'foreman', 'out'],
    [9, 'qa', 'out'],
    [9, 'engineer', 'accepted'],
    [9, 'unregistered', 'out'],
  ] as const)('off by %s mm, by %s: %s', (x, who, state) => {
    const { tablet, record } = out(2, x);
    tablet.write(who, 2, decide([record], 'accepted', who));
    expect(insertOf(tablet, 2).state).toBe(state);
    expect(tablet.report().openPoints.length).toBe(state === 'accepted' ? 0 : 1);
    expect(tablet.report().flags.map(({ kind }) => kind)).toEqual(
      state === 'accepted' ? [] : ['decided without the right'],
    );
  });
  it('is out again by what was found after it', () => {
    const { tablet, record } = out(2, 7);
    tablet.write('qa', 2, decide([record], 'accepted', 'qa'));
    tablet.write('checker', 2, taped(sample.plan, 2, { x: 8 }));
    expect(insertOf(tablet, 2).state).toBe('out');
  });
  it('is not accepted by a decision that knew of one fault only', () => {
    const { tablet, record } = out(2, 7);
    const other = new PieceTablet(2, sample);
    other.learn(tablet);
    other.write('checker', 2, sight(2, { firm: false }));
    tablet.write('engineer', 2, decide([record], 'accepted', 'engineer'));
    expect(insertOf(tablet, 2).state).toBe('accepted');
    tablet.learn(other);
    expect(insertOf(tablet, 2).state).toBe('out');
  });
  it('after it was rejected only by a design engineer', () => {
    const { tablet, record } = out(2, 7);
    tablet.write('checker', 2, decide([record], 'rejected', 'foreman'));
    expect(pointsOf(tablet, 2)).toMatchObject([{ isHard: true }]);
    tablet.write('qa', 2, decide([record], 'accepted', 'qa'));
    expect(insertOf(tablet, 2).state).toBe('out');
    tablet.write('engineer', 2, decide([record], 'accepted', 'engineer'));
    expect(insertOf(tablet, 2).state).toBe('accepted');
  });
  it('by one and to be moved by another who did not know of it is in conflict, and out', () => {
    const { tablet, record } = out(2, 7);
    const other = new PieceTablet(2, sample);
    other.learn(tablet);
    tablet.write('qa', 2, decide([record], 'accepted', 'qa'));
    other.write('foreman', 2, decide([record], 'to be moved', 'foreman'));
    tablet.learn(other);
    expect(insertOf(tablet, 2)).toMatchObject({ state: 'conflict', decision: { body: { verdict: 'to be moved' } } });
  });
  it('by nobody where the rules set no limits', () => {
    const strict = pieceOf(
      demoFile((file) => ({
        ...file,
        library: { ...file.library, rules: { ...file.library.rules, acceptance: null } },
      })),
      'P12',
      '1',
    );
    const tablet = checked(strict);
    const record = tablet.write('checker', 2, taped(strict.plan, 2, { x: 6 }));
    expect(insertOf(tablet, 2).extent satisfies Extent | null).toBe('beyond the limits');
    tablet.write('qa', 2, decide([record], 'accepted', 'qa'));
    expect(insertOf(tablet, 2).state).toBe('out');
  });
});

describe('an insert under the cage', () => {
  it('that nobody looked at cannot be measured any more, and is for the design engineer', () => {
    const tablet = new PieceTablet(1, underCage);
    checkAll(tablet, [1]);
    expect(insertOf(tablet, 1)).toMatchObject({
      state: 'open',
      notMeasurable: expect.stringContaining('not measurable now'),
    });
    expect(pointsOf(tablet, 1)).toMatchObject([{ liftedBy: 'design engineer', isHard: false }]);
    // Until something of the second stage is looked at, it can be.
    const early = new PieceTablet(1, underCage);
    expect(insertOf(early, 1).notMeasurable).toBeNull();
  });
  it('looked at in the second stage only stays open until a design engineer takes it', () => {
    const tablet = new PieceTablet(1, underCage);
    checkAll(tablet, [1]);
    const late = tablet.write('checker', 1, sight(2));
    expect(insertOf(tablet, 1)).toMatchObject({ state: 'open', extent: 'not measurable' });
    // Digits taken late do not show its type or its face.
    const other = new PieceTablet(2, underCage);
    other.learn(tablet);
    other.write('checker', 1, taped(underCage.plan, 1));
    expect(insertOf(other, 1).state).toBe('open');
    tablet.write('qa', 1, decide([late], 'accepted', 'qa'));
    expect(insertOf(tablet, 1).state).toBe('open');
    tablet.write('engineer', 1, decide([late], 'accepted', 'engineer'));
    expect(insertOf(tablet, 1).state).toBe('accepted');
    expect(tablet.report().openPoints).toEqual([]);
  });
  it('that nobody looked at may be taken by a design engineer on a photo of it', () => {
    const tablet = new PieceTablet(1, underCage);
    checkAll(tablet, [1]);
    const photo = (of: 'insert' | 'piece'): KindAndBody => ({
      kind: 'photo',
      body: { photo: 'a'.repeat(64), type: 'image/jpeg', bytes: 1, width: 1, height: 1, of, note: null },
    });
    tablet.write('checker', null, photo('piece'));
    expect(insertOf(tablet, 1).about).toEqual([]);
    const shot = tablet.write('checker', 1, photo('insert'));
    expect(insertOf(tablet, 1)).toMatchObject({ state: 'open', extent: 'not measurable', about: [{ id: shot.id }] });
    tablet.write('qa', 1, decide([shot], 'accepted', 'qa'));
    expect(insertOf(tablet, 1).state).toBe('open');
    tablet.write('engineer', 1, decide([shot], 'accepted', 'engineer'));
    expect(insertOf(tablet, 1).state).toBe('accepted');
    expect(tablet.report().openPoints).toEqual([]);
  });
  it('that was changed after the cage went in rests on the look before, but not on a decision before', () => {
    const tablet = checked(underCage);
    const off = tablet.write('checker', 1, taped(underCage.plan, 1, { x: 30 }));
    const looked = insertOf(tablet, 1).sight?.latest ?? [];
    tablet.write('engineer', 1, decide([off, ...looked], 'accepted', 'engineer'));
    expect(insertOf(tablet, 1).state).toBe('accepted');
    tablet.sample = pieceOf(
      demoFile((file) => ({
        ...file,
        job: {
          ...file.job,
          revision: { letter: 'C', status: 'for construction', date: '2026-12-13' },
          castIns: file.job.castIns.map((castIn) =>
            castIn.key === keyOf(underCage.plan, 1) ? { ...castIn, x_mm: castIn.x_mm + 40 } : castIn,
          ),
        },
      })),
      'P01',
      '1',
    );
    const { state, about, notMeasurable } = insertOf(tablet, 1);
    expect({ state, notMeasurable }).toEqual({ state: 'open again', notMeasurable: expect.any(String) as string });
    expect(about.map(({ kind }) => kind)).toEqual(['placed']);
    tablet.write('engineer', 1, decide(about, 'accepted', 'engineer'));
    expect(insertOf(tablet, 1).state).toBe('accepted');
  });
  it('that came loose is out in the second stage, though it was good in the first', () => {
    const tablet = checked(underCage);
    tablet.write('checker', 1, sight(2, { firm: false }));
    expect(insertOf(tablet, 1).state).toBe('out');
  });
});

describe('an insert after screeding', () => {
  const screed = (
    wrong: { level?: boolean; plumb?: boolean; cap?: boolean },
    level_mm: number | null = null,
  ): KindAndBody => ({
    kind: 'screed-checked',
    body: { level: true, plumb: true, cap: true, level_mm, note: null, ...wrong },
  });
  it('that moved re-opens itself alone', () => {
    const tablet = checked();
    const before = tablet.report();
    expect(before.screed).toEqual({ done: 0, left: 7, out: 0 });
    tablet.write('checker', 1, screed({}));
    tablet.write('checker', 2, screed({ level: false }, 30));
    const report = tablet.report();
    expect(report.screed).toEqual({ done: 1, left: 5, out: 1 });
    expect(report.inserts.filter(({ state }) => state !== 'good').map(({ item }) => item.number)).toEqual([2]);
    tablet.write('checker', 2, screed({}, 3));
    expect(tablet.report().openPoints).toEqual([]);
  });
  it('is out by its level alone', () => {
    const tablet = checked();
    tablet.write('checker', 2, screed({}, 30));
    expect(insertOf(tablet, 2)).toMatchObject({ state: 'out', answer: { advice: 'move' } });
  });
});

describe('an insert of which a new revision asks something else', () => {
  const moved = pieceOf(
    demoFile((file) => ({
      ...file,
      job: {
        ...file.job,
        revision: { letter: 'C', status: 'for construction', date: '2026-12-13' },
        castIns: file.job.castIns.map((castIn) =>
          castIn.key === keyOf(sample.plan, 2) ? { ...castIn, x_mm: castIn.x_mm + 40 } : castIn,
        ),
      },
    })),
    'P12',
    '1',
  );
  it('is open again, and no other', () => {
    const tablet = checked();
    tablet.sample = moved;
    const report = tablet.report();
    expect(report.inserts.map(({ state }) => state).filter((state) => state !== 'good')).toEqual(['open again']);
    expect(report.openPoints).toMatchObject([
      { number: 2, words: 'no. 2: checked by revision B; revision C changed it' },
    ]);
  });
});
