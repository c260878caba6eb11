import { describe, expect, it } from 'vitest';
import { type ClearanceChoice, freeze, judgeClearance } from '../../../src/assess/yard/clearance.ts';
import type { Flag } from '../../../src/assess/yard/piece-report.ts';
import { ENGINE_VERSION } from '../../../src/engine/version.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import type { KindAndBody } from '../../../src/records/record.ts';
import {
  checkAll,
  demoFile,
  formCheck,
  keyOf,
  PEOPLE,
  PieceTablet,
  pieceOf,
  sight,
  taped,
  type Who,
} from './yard-sample.ts';

const sample = pieceOf(demoFile(), 'P12', '1');

const issueC = (file: JobFile): JobFile => ({
  ...file,
  job: { ...file.job, revision: { letter: 'C', status: 'for construction', date: '2026-12-13' } },
});
/** Revision C: insert no. 2 stands 40 mm from where it was. */
const changed = pieceOf(
  demoFile((file) => {
    const next = issueC(file);
    const castIns = next.job.castIns.map((castIn) =>
      castIn.key === keyOf(sample.plan, 2) ? { ...castIn, x_mm: castIn.x_mm + 40 } : castIn,
    );
    return { ...next, job: { ...next.job, castIns } };
  }),
  'P12',
  '1',
);
/** Revision C with nothing in it that the yard does otherwise for this piece. */
const unchanged = pieceOf(demoFile(issueC), 'P12', '1');

function checked(but: readonly number[] = []): PieceTablet {
  const tablet = new PieceTablet(1, sample);
  checkAll(tablet, but);
  return tablet;
}

function clear(tablet: PieceTablet, who: Who, condition: string | null = null) {
  const frozen = freeze(tablet.sample.context, tablet.report(), null);
  return tablet.write(who, null, {
    kind: 'cleared',
    body: { role: who === 'foreman' ? 'foreman' : 'qa', condition, frozen },
  });
}

function override(tablet: PieceTablet, who: Who) {
  const frozen = freeze(tablet.sample.context, tablet.report(), null);
  const role = who === 'foreman' ? 'foreman' : 'checker';
  return tablet.write(who, null, { kind: 'override', body: { role, reason: 'the truck is here', frozen } });
}

const held: KindAndBody = { kind: 'held', body: { reason: 'cap of no. 3' } };
const poured: KindAndBody = { kind: 'poured', body: { reason: null } };

const kinds = (tablet: PieceTablet): readonly Flag['kind'][] => tablet.report().flags.map(({ kind }) => kind);

function may(tablet: PieceTablet, who: Who): ClearanceChoice['may'] {
  return judgeClearance(tablet.sample.context, tablet.report(), PEOPLE[who]).may;
}

describe('who may clear what', () => {
  it.each([
    ['qa', 'clear'],
    ['foreman', 'only on an override'],
    ['checker', 'refused'],
    ['engineer', 'refused'],
  ] as const)('nothing open, %s: %s', (who, answer) => {
    expect(may(checked(), who)).toBe(answer);
  });
  it.each([
    ['qa', 'clear with a condition'],
    ['foreman', 'only on an override'],
    ['setter', 'refused'],
  ] as const)('an insert not looked at, %s: %s', (who, answer) => {
    expect(may(checked([1]), who)).toBe(answer);
  });
  it.each([
    ['qa', 'only on an override'],
    ['foreman', 'only on an override'],
    ['checker', 'refused'],
  ] as const)('a wrong type, %s: %s', (who, answer) => {
    const tablet = checked();
    tablet.write('checker', 2, sight(2, { type: false }));
    expect(may(tablet, who)).toBe(answer);
  });
  it('refuses everybody without a revision for construction, and a piece that is poured or scrapped', () => {
    const preliminary = pieceOf(
      demoFile((file) => ({
        ...file,
        job: { ...file.job, revision: { letter: 'B', status: 'for approval', date: '2026-11-27' } },
      })),
      'P12',
      '1',
    );
    const tablet = new PieceTablet(1, preliminary);
    checkAll(tablet);
    expect(judgeClearance(preliminary.context, tablet.report(), PEOPLE.qa)).toMatchObject({
      may: 'refused',
      why: 'no revision for construction is in force: nothing may be cleared by it',
      mayOverride: false,
    });
    const cast = checked();
    cast.write('foreman', null, poured);
    expect(may(cast, 'qa')).toBe('refused');
    const gone = checked();
    gone.write('qa', null, { kind: 'scrapped', body: { reason: 'cracked' } });
    expect(may(gone, 'qa')).toBe('refused');
  });
});

describe('a clearance', () => {
  it('freezes inputs, revision, engine and what was open', () => {
    const tablet = checked([1]);
    const report = tablet.report();
    expect(freeze(sample.context, report, { number: 7, hash: 'a'.repeat(64) })).toEqual({
      revision: sample.context.revision,
      engine: ENGINE_VERSION,
      inputs: report.clearance.inputs,
      open: ['no. 1: not looked at'],
      head: { number: 7, hash: 'a'.repeat(64) },
    });
  });
  it('stands, with its condition where it has one', () => {
    const whole = checked();
    clear(whole, 'qa');
    expect(whole.report()).toMatchObject({ phase: 'cleared', clearance: { is: 'cleared' }, flags: [] });
    const part = checked([1]);
    clear(part, 'qa', 'no. 1 before the concrete reaches it');
    expect(part.report()).toMatchObject({ phase: 'cleared', clearance: { is: 'cleared with a condition' }, flags: [] });
  });
  it('by a foreman is none, and is flagged', () => {
    const tablet = checked();
    clear(tablet, 'foreman');
    expect(tablet.report()).toMatchObject({ phase: 'in the form', clearance: { is: 'none' } });
    expect(kinds(tablet)).toEqual(['decided without the right']);
  });
  it('without a condition is none where something was open', () => {
    const tablet = checked([1]);
    clear(tablet, 'qa');
    expect(tablet.report().clearance.is).toBe('none');
    expect(tablet.report().flags).toMatchObject([
      {
        kind: 'cleared on other inputs',
        words: 'cleared without a condition though it was open: no. 1: not looked at',
      },
    ]);
  });
  it('with a condition is none where no condition can lift what was open', () => {
    const tablet = checked();
    tablet.write('checker', 2, sight(2, { type: false }));
    clear(tablet, 'qa', 'change it');
    expect(tablet.report().clearance.is).toBe('none');
    expect(kinds(tablet)).toEqual(['cleared on other inputs']);
  });
  it('that says other inputs than the records is none', () => {
    const tablet = checked();
    const frozen = { ...freeze(sample.context, tablet.report(), null), inputs: 'b'.repeat(64) };
    tablet.write('qa', null, { kind: 'cleared', body: { role: 'qa', condition: null, frozen } });
    expect(tablet.report().clearance.is).toBe('none');
    expect(tablet.report().flags[0]?.words).toBe('what it says it was given on is not what the records say');
  });
  it('falls by what is found after it, and stands by what is good', () => {
    const tablet = checked();
    clear(tablet, 'qa');
    tablet.write('checker', 2, taped(sample.plan, 2, { x: 1 }));
    expect(tablet.report().clearance.is).toBe('cleared');
    tablet.write('checker', 2, taped(sample.plan, 2, { x: 30 }));
    expect(tablet.report()).toMatchObject({ phase: 'in the form', clearance: { is: 'none' } });
    expect(tablet.report().flags).toMatchObject([
      { kind: 'cleared on other inputs', words: expect.stringContaining('since then: no. 2') },
    ]);
  });
  it('falls when what it rests on is taken back', () => {
    const tablet = checked();
    const record = tablet.write('checker', 1, sight(2));
    const first = [...tablet.known.values()].find(({ item, kind }) => item === record.item && kind === 'placed')!;
    clear(tablet, 'qa');
    for (const { id } of [record, first])
      tablet.write('checker', 1, { kind: 'correction', body: { of: id, reason: 'another piece' } });
    expect(tablet.report().clearance.is).toBe('none');
  });
  it('falls by a hold, before or beside it', () => {
    const tablet = checked();
    const other = new PieceTablet(2, sample);
    other.learn(tablet);
    clear(tablet, 'qa');
    other.write('setter', null, held);
    tablet.learn(other);
    expect(tablet.report()).toMatchObject({ phase: 'held', clearance: { is: 'held' } });
    expect(kinds(tablet)).toEqual(['conflict']);
    clear(tablet, 'qa');
    expect(tablet.report()).toMatchObject({ phase: 'cleared', flags: [] });
    tablet.write('setter', null, held);
    expect(tablet.report().phase).toBe('held');
  });
  it('falls by a revision that changes an insert of it, and by no other', () => {
    const tablet = checked();
    clear(tablet, 'qa');
    tablet.sample = unchanged;
    expect(tablet.report()).toMatchObject({ clearance: { is: 'cleared' }, flags: [] });
    tablet.sample = changed;
    expect(tablet.report().clearance.is).toBe('none');
    expect(tablet.report().flags).toMatchObject([
      { kind: 'cleared on other inputs', words: 'cleared by revision B; revision C changed no. 2' },
    ]);
  });
  it('on an override stands for what was open then, and is for a foreman or QA', () => {
    const tablet = checked([1]);
    override(tablet, 'checker');
    expect(tablet.report().clearance.is).toBe('none');
    expect(kinds(tablet)).toEqual(['decided without the right']);
    override(tablet, 'foreman');
    expect(tablet.report()).toMatchObject({ phase: 'cleared', clearance: { is: 'override' } });
  });
});

describe('a poured piece', () => {
  it('that was cleared has no flag', () => {
    const tablet = checked();
    clear(tablet, 'qa');
    tablet.write('foreman', null, poured);
    expect(tablet.report()).toMatchObject({
      phase: 'poured',
      poured: { clearance: 'cleared', tooLate: null },
      flags: [],
    });
  });
  const BEFORE: readonly (readonly [string, (tablet: PieceTablet) => void, Flag['kind']])[] = [
    ['nobody cleared', () => undefined, 'poured without clearance'],
    [
      'was held',
      (tablet) => {
        tablet.write('setter', null, held);
      },
      'poured while held',
    ],
    [
      'was overridden',
      (tablet) => {
        override(tablet, 'foreman');
      },
      'poured on an override',
    ],
    [
      'a foreman cleared',
      (tablet) => {
        clear(tablet, 'foreman');
      },
      'poured without clearance',
    ],
  ];
  it.each(BEFORE)('that %s is flagged', (_, before, kind) => {
    const tablet = checked();
    before(tablet);
    tablet.write('foreman', null, poured);
    expect(kinds(tablet)[0]).toBe(kind);
  });
  it('stays flagged whatever is cleared later or elsewhere, in any order', () => {
    const tablet = checked();
    const other = new PieceTablet(2, sample);
    other.learn(tablet);
    clear(other, 'qa');
    tablet.write('foreman', null, poured);
    tablet.learn(other);
    expect(kinds(tablet)).toEqual(['poured without clearance', 'cleared too late']);
    expect(tablet.report().clearance).toMatchObject({ is: 'none', record: null });
    clear(tablet, 'qa');
    expect(kinds(tablet)).toEqual(['poured without clearance', 'cleared too late']);
  });
  it('that was changed between clearance and pour was poured without clearance', () => {
    const tablet = checked();
    clear(tablet, 'qa');
    tablet.write('checker', 2, sight(2, { firm: false }));
    tablet.write('foreman', null, poured);
    expect(tablet.report().poured?.clearance).toBe('without clearance');
    expect(kinds(tablet)).toEqual(['poured without clearance', 'cleared on other inputs']);
  });
  it('keeps its clearance when a revision comes after it, and is said to be cast by the old one', () => {
    const tablet = checked();
    clear(tablet, 'qa');
    tablet.write('foreman', null, poured);
    tablet.sample = changed;
    const report = tablet.report();
    expect(report.poured?.clearance).toBe('cleared');
    expect(report.flags).toMatchObject([
      { kind: 'by an old revision', words: 'cast by revision B; revision C changed no. 2' },
    ]);
  });
  it('that was changed between clearance and pour stays flagged when a revision comes after it', () => {
    const tablet = checked();
    clear(tablet, 'qa');
    tablet.write('checker', 2, sight(2, { firm: false }));
    tablet.write('foreman', null, poured);
    tablet.sample = changed;
    expect(tablet.report().poured?.clearance).toBe('without clearance');
    tablet.sample = unchanged;
    expect(tablet.report().poured?.clearance).toBe('without clearance');
  });
  it('that was cleared though something was open stays flagged when a revision comes after it', () => {
    const tablet = checked([1]);
    clear(tablet, 'qa');
    tablet.write('foreman', null, poured);
    tablet.sample = changed;
    expect(tablet.report().poured?.clearance).toBe('without clearance');
  });
  it('that was poured by the new revision on a clearance by the old one had none', () => {
    const tablet = checked();
    clear(tablet, 'qa');
    tablet.sample = changed;
    tablet.write('foreman', null, poured);
    expect(kinds(tablet)).toContain('poured without clearance');
    expect(kinds(tablet)).toContain('cleared on other inputs');
  });
  it('that is said not to be poured after all keeps a flag', () => {
    const tablet = checked();
    const record = tablet.write('foreman', null, poured);
    tablet.write('foreman', null, { kind: 'correction', body: { of: record.id, reason: 'the piece beside it' } });
    const report = tablet.report();
    expect(report.poured).toBeNull();
    expect(report.flags).toMatchObject([
      {
        kind: 'poured withdrawn',
        words: 'a record that it was poured was taken back by F. Foreman: the piece beside it',
      },
    ]);
  });
});

describe('a piece that is scrapped or marked anew', () => {
  it('by somebody who may not is not, and that is flagged', () => {
    const tablet = checked();
    tablet.write('setter', null, { kind: 'scrapped', body: { reason: 'cracked' } });
    expect(tablet.report().phase).toBe('in the form');
    expect(kinds(tablet)).toEqual(['decided without the right']);
    tablet.write('foreman', null, { kind: 'scrapped', body: { reason: 'cracked' } });
    expect(tablet.report().phase).toBe('scrapped');
    const other = checked();
    const { panelKey, mark } = sample.head;
    other.write('setter', null, { kind: 're-marked', body: { panelKey, mark, serial: '2', reason: 'washed off' } });
    expect(kinds(other)).toEqual(['decided without the right']);
  });
  it('goes through its life', () => {
    const tablet = new PieceTablet(1, sample);
    expect(tablet.report().phase).toBe('not started');
    tablet.write('checker', null, formCheck(sample));
    expect(tablet.report()).toMatchObject({ phase: 'in the form', last: { kind: 'form-checked' } });
    tablet.write('foreman', null, poured);
    tablet.write('setter', null, { kind: 'stripped', body: { plates: [] } });
    expect(tablet.report().phase).toBe('stripped');
    const all = { plateOff: true, mortarOut: true, thread: true, turns: null, capBack: true, note: null };
    tablet.write('setter', null, { kind: 'uncovered', body: all });
    expect(tablet.report().phase).toBe('opened up');
  });
});
