import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listFormMeasures } from '../../src/assess/yard/form-measures.ts';
import { planPiece } from '../../src/assess/yard/plan-piece.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { readSheet, readTime, type SheetGround } from '../../src/web/yard/screens/sheet/read-sheet.ts';
import {
  cellName,
  formCellName,
  isLengthText,
  listRows,
  readSightKey,
  stepFrom,
} from '../../src/web/yard/screens/sheet/sheet-cells.ts';
import {
  EMPTY_DRAFT,
  isTouched,
  keepDraft,
  putCell,
  readDraft,
  type SheetDraft,
} from '../../src/web/yard/screens/sheet/sheet-draft.ts';
import { demo } from '../job/edit/demo.ts';

const plan = planPiece(indexJob(demo), { id: '0'.repeat(24), mark: 'P13', bed: null });
const measures = listFormMeasures(plan.setOut.form).map(({ what }) => what);
const rows = listRows(plan, measures);
const names = rows.flatMap(({ cells }) => cells.map(({ name }) => name));

const GROUND: SheetGround = {
  plan,
  measures,
  inForce: { letter: 'C', fingerprint: 'c'.repeat(64) },
  revisions: [
    { letter: 'A', fingerprint: 'a'.repeat(64) },
    { letter: 'C', fingerprint: 'c'.repeat(64) },
  ],
  person: 'typist000000',
  now: Date.parse('2026-11-30T15:00:00Z'),
};
const SIGNED = { day: '2026-11-30', time: '09:40', by: 'setter000000' };
const first = plan.setOut.items.find(({ stage }) => stage === 1)!;
const key = first.castIn.key;

function fill(cells: Readonly<Record<string, string>>, changes: Partial<SheetDraft> = {}): SheetDraft {
  return {
    ...EMPTY_DRAFT,
    letter: 'c',
    parts: { ...EMPTY_DRAFT.parts, 'stage 1': SIGNED },
    cells,
    ...changes,
  };
}

describe('the boxes of a sheet', () => {
  it('stand in the order of the paper: form, before the cage, before the pour, after screeding; every insert has its row', () => {
    expect(rows.slice(0, measures.length).map(({ part }) => part)).toEqual(measures.map(() => 'form'));
    const order = rows.map(({ part }) => part).filter((part, i, all) => part !== all[i - 1]);
    expect(order).toEqual(['form', 'stage 1', 'stage 2', 'screed']);
    const placed = rows.filter(({ part }) => part === 'stage 1' || part === 'stage 2');
    expect(placed.map(({ item }) => item?.number)).toEqual(plan.setOut.items.map(({ number }) => number));
    expect(new Set(names).size).toBe(names.length);
  });

  it('are all passed through by "next", and back by "before"', () => {
    const walked = [names[0]!];
    for (let at = stepFrom(rows, names[0]!, 'next'); at !== null; at = stepFrom(rows, at, 'next')) walked.push(at);
    expect(walked).toEqual(names);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: names.length - 2 }), (i) => {
        expect(stepFrom(rows, stepFrom(rows, names[i]!, 'next')!, 'before')).toBe(names[i]);
      }),
    );
  });

  it('keep to their column up and down', () => {
    const [one, two] = rows.filter(({ part }) => part === 'stage 1');
    expect(stepFrom(rows, one!.cells[3]!.name, 'down')).toBe(two!.cells[3]!.name);
    expect(stepFrom(rows, two!.cells[3]!.name, 'up')).toBe(one!.cells[3]!.name);
  });

  it('take what a tape and a pencil write, nothing else', () => {
    for (const text of ['', '-', '5', '-5', '1234.5']) expect(isLengthText(text), text).toBe(true);
    for (const text of ['a', '1.2.3', '5-', '1234567', '1.25']) expect(isLengthText(text), text).toBe(false);
    expect(['y', 'N', 'a', '1'].map(readSightKey)).toEqual(['y', 'n', 'all', null]);
  });
});

describe('a sheet that is typed in', () => {
  it('becomes records of when and by whom it was measured, not of when it is typed', () => {
    const { faults, drafts } = readSheet(
      fill({
        [formCellName(measures[0]!)]: '5998',
        [cellName('stage 1', key, 'x')]: '412',
        [cellName('stage 1', key, 'y')]: '300.5',
        [cellName('stage 1', key, 'type')]: 'y',
        [cellName('stage 1', key, 'face')]: 'y',
        [cellName('stage 1', key, 'firm')]: 'n',
      }),
      GROUND,
    );
    expect(faults).toEqual([]);
    expect(drafts.map(({ kind, body }) => [kind, body])).toEqual([
      ['form-checked', { measures: [{ what: measures[0], measured_mm: 5998 }] }],
      ['placed', { stage: 1, type: true, face: true, firm: false, note: null }],
      ['measured', { stage: 1, x_mm: 412, y_mm: 300.5, level_mm: null, basis: 'sheet' }],
    ]);
    for (const draft of drafts) {
      expect(draft.measuredAt).toBe(new Date('2026-11-30T09:40').toISOString());
      expect(draft.measuredBy).toBe('setter000000');
      expect(draft).not.toHaveProperty('revision');
    }
    expect(drafts.map(({ checkKey }) => checkKey)).toEqual([plan.formKey, plan.keys.get(key), plan.keys.get(key)]);
  });

  it('names nobody else where the person typed what they had measured', () => {
    const { drafts } = readSheet(fill({ [cellName('stage 1', key, 'x')]: '1' }), { ...GROUND, person: SIGNED.by });
    expect(drafts.map(({ measuredBy }) => measuredBy)).toEqual([null]);
  });

  it.each([
    ['a box of three left out', { [cellName('stage 1', key, 'type')]: 'y' }, {}, /"face" is left out/],
    ['a sign alone', { [cellName('stage 1', key, 'x')]: '-' }, {}, /"-" is no length/],
    ['no letter', { [cellName('stage 1', key, 'x')]: '4' }, { letter: ' ' }, /which revision letter/],
    ['nothing', {}, {}, /nothing is typed/],
    [
      'no time',
      { [cellName('stage 1', key, 'x')]: '4' },
      { parts: { ...EMPTY_DRAFT.parts, 'stage 1': { ...SIGNED, time: '' } } },
      /at what time/,
    ],
    [
      'a moment to come',
      { [cellName('stage 1', key, 'x')]: '4' },
      { parts: { ...EMPTY_DRAFT.parts, 'stage 1': { ...SIGNED, day: '2027-01-01' } } },
      /still to come/,
    ],
  ])('is not written down with %s', (_, cells, changes, words) => {
    const { faults, drafts } = readSheet(fill(cells, changes), GROUND);
    expect(faults.map((fault) => fault.words).join('\n')).toMatch(words);
    expect(drafts).toEqual([]);
  });

  it('goes under the revision that it was printed by; no insert is then answered by the one in force', () => {
    const cells = { [cellName('stage 1', key, 'x')]: '4' };
    const [old] = readSheet(fill(cells, { letter: 'A' }), GROUND).drafts;
    expect(old).toMatchObject({ revision: { letter: 'A', fingerprint: 'a'.repeat(64) }, checkKey: null });
    const [unknown] = readSheet(fill(cells, { fingerprint: 'd'.repeat(12) }), GROUND).drafts;
    expect(unknown).toMatchObject({ revision: null, checkKey: null });
    const [current] = readSheet(fill(cells, { fingerprint: 'c'.repeat(12) }), GROUND).drafts;
    expect(current).not.toHaveProperty('revision');
  });

  it('takes time and person of a later part from the part before, where that part says nothing', () => {
    const late = plan.setOut.items.find(({ stage }) => stage === 2)!;
    const cells = { [cellName('stage 2', late.castIn.key, 'x')]: '4' };
    const [same] = readSheet(fill(cells), GROUND).drafts;
    expect(same?.measuredAt).toBe(new Date('2026-11-30T09:40').toISOString());
    const later = { ...EMPTY_DRAFT.parts, 'stage 1': SIGNED, 'stage 2': { day: '', time: '11:05', by: '' } };
    const [own] = readSheet(fill(cells, { parts: later }), GROUND).drafts;
    expect(own).toMatchObject({ measuredAt: new Date('2026-11-30T11:05').toISOString(), measuredBy: SIGNED.by });
  });

  it('has its photo written down first', () => {
    const photo = { hash: 'f'.repeat(64), bytes: 1000, width: 1600, height: 1200 };
    const { drafts } = readSheet(fill({ [cellName('stage 1', key, 'x')]: '4' }, { photo }), GROUND);
    expect(drafts.map(({ kind }) => kind)).toEqual(['photo', 'measured']);
    expect(drafts[0]?.body).toMatchObject({ photo: photo.hash, of: 'sheet' });
  });
});

describe('a time on a sheet', () => {
  it('is read with a colon or without, in 24 hours', () => {
    expect(['0940', '9:40', '940', '23.59'].map(readTime)).toEqual(['09:40', '09:40', '09:40', '23:59']);
    expect(['2460', '9', 'noon', ''].map(readTime)).toEqual([null, null, null, null]);
  });

  it('is no time on a day that does not exist or is only begun', () => {
    const cells = { [cellName('stage 1', key, 'x')]: '4' };
    for (const [day, words] of [
      ['2026-13-01', /there is no 2026-13-01/],
      ['30.11.2026', /there is no 30.11.2026/],
      ['2026-11-', /which day/],
    ] as const) {
      const parts = { ...EMPTY_DRAFT.parts, 'stage 1': { ...SIGNED, day } };
      const { faults, drafts } = readSheet(fill(cells, { parts }), GROUND);
      expect(faults.map((fault) => fault.words).join('\n')).toMatch(words);
      expect(drafts).toEqual([]);
    }
  });
});

describe('what is typed', () => {
  const memory = () => {
    const kept = new Map<string, string>();
    return {
      getItem: (name: string) => kept.get(name) ?? null,
      setItem: (name: string, text: string) => void kept.set(name, text),
      removeItem: (name: string) => void kept.delete(name),
      size: () => kept.size,
    };
  };

  it('is there again after a reload, for its own piece', () => {
    const storage = memory();
    const typed = putCell(fill({}), cellName('stage 1', key, 'x'), '41');
    keepDraft(storage, 'one', typed);
    expect(readDraft(storage, 'one')).toEqual(typed);
    expect(readDraft(storage, 'two')).toEqual(EMPTY_DRAFT);
    expect(isTouched(typed)).toBe(true);
  });

  it('is forgotten once it is written down, and what cannot be read is as if it were not there', () => {
    const storage = memory();
    keepDraft(storage, 'one', fill({ a: 'b' }));
    keepDraft(storage, 'one', EMPTY_DRAFT);
    expect(storage.size()).toBe(0);
    storage.setItem('onepour-sheet one', '{"v":0}');
    expect(readDraft(storage, 'one')).toEqual(EMPTY_DRAFT);
  });
});
