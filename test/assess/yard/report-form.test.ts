import { describe, expect, it } from 'vitest';
import { findFormCheck } from '../../../src/assess/set-out/form-check.ts';
import { judgeForm } from '../../../src/assess/yard/report-form.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import type { KindAndBody } from '../../../src/records/record.ts';
import { checkAll, demoFile, formCheck, PEOPLE, PieceTablet, pieceOf } from './yard-sample.ts';

/** 4000 × 3000, ± 3 mm; the diagonals are 5000. */
const rectangle: readonly Point[] = [
  [0, 0],
  [4000, 0],
  [4000, 3000],
  [0, 3000],
];
const gable: readonly Point[] = [
  [0, 0],
  [4000, 0],
  [4000, 2000],
  [0, 3000],
];
const A = 'datum corner to the corner opposite (A)';
const B = 'the two other corners to each other (B)';

function judge(outline: readonly Point[], off: Readonly<Record<string, number>>, leftOut: readonly string[] = []) {
  const form = findFormCheck(outline, 4000, 3000, 180, [0, 0], 3);
  return judgeForm(form, 2, ({ what, nominal }) => (leftOut.includes(what) ? null : nominal + (off[what] ?? 0)));
}

describe('the form itself', () => {
  it.each([
    ['as it should be', {}],
    ['at its limits', { length: 3, width: -3, [A]: 3, [B]: -3, 'depth 1': 2, 'depth 4': -2 }],
  ])('is right %s', (_, off) => {
    expect(judge(rectangle, off)).toEqual({ findings: [], missing: [] });
  });
  it('is racked where the sides are right and the diagonals differ', () => {
    expect(judge(rectangle, { [A]: 5, [B]: -4 }).findings).toEqual([
      "the form is racked: its diagonals differ by 9 mm, 6 allowed: the form's fault: square it before anything is measured from it",
    ]);
    expect(judge(rectangle, { [A]: 7 }).findings).toHaveLength(1);
    expect(judge(rectangle, { [A]: 6 }).findings).toEqual([]);
  });
  it('is too long, too narrow, too deep', () => {
    expect(judge(rectangle, { length: 4, width: -5, 'depth 2': 3 }).findings).toEqual([
      'the form is 4 mm too long: 4004 mm taped, 4000 wanted, ± 3 allowed',
      'the form is 5 mm too narrow: 2995 mm taped, 3000 wanted, ± 3 allowed',
      'the form is 3 mm too deep at depth 2: 183 mm taped, 180 wanted, ± 2 allowed',
    ]);
  });
  it('cannot have both diagonals long with its sides right: somebody taped wrong', () => {
    expect(judge(rectangle, { [A]: 9, [B]: 8 }).findings).toEqual([
      'its diagonals are 9 mm longer than its sides allow: tape all four again',
    ]);
    // With a wrong side they are long as well, and nothing is said of them.
    expect(judge(rectangle, { length: 9, [A]: 7, [B]: 7 }).findings).toHaveLength(1);
  });
  it('of another outline is held against each line across', () => {
    expect(judge(gable, { 'corner 1 to corner 3': -7 }).findings).toEqual([
      "the form is racked: corner 1 to corner 3 is 7 mm too short, ± 6 allowed, its sides are right: the form's fault: square it before anything is measured from it",
    ]);
    expect(judge(gable, { 'corner 1 to corner 3': 6, 'corner 3 to corner 4': 4 }).findings).toEqual([
      'the form is 4 mm too long from corner 3 to corner 4: 4127 mm taped, 4123 wanted, ± 3 allowed',
    ]);
  });
  it('says what was not taped', () => {
    expect(judge(rectangle, {}, [A, 'depth 3'])).toEqual({ findings: [], missing: [A, 'depth 3'] });
  });
});

describe('the form in a report', () => {
  const sample = pieceOf(demoFile(), 'P12', '1');
  it('is open, then good', () => {
    const tablet = new PieceTablet(1, sample);
    expect(tablet.report().form).toMatchObject({ state: 'open', findings: [] });
    tablet.write('checker', null, formCheck(sample));
    expect(tablet.report().form.state).toBe('good');
  });
  it('stays open while a length is missing, and takes the lengths of several checks together', () => {
    const tablet = new PieceTablet(1, sample);
    const whole = formCheck(sample);
    if (whole.kind !== 'form-checked') throw new Error('no check');
    const { measures } = whole.body;
    tablet.write('checker', null, { kind: 'form-checked', body: { measures: measures.slice(0, 2) } });
    expect(tablet.report().form).toMatchObject({ state: 'open', findings: [expect.stringContaining('not taped')] });
    tablet.write('checker', null, { kind: 'form-checked', body: { measures: measures.slice(2) } });
    expect(tablet.report().form.state).toBe('good');
  });
  it('stays out when only something else is taped later, and is good when it is taped again', () => {
    const tablet = new PieceTablet(1, sample);
    tablet.write('checker', null, formCheck(sample, { length: 10 }));
    tablet.write('checker', null, {
      kind: 'form-checked',
      body: { measures: [{ what: 'depth 1', measured_mm: sample.plan.setOut.form.depth }] },
    });
    expect(tablet.report().form.state).toBe('out');
    tablet.write('checker', null, formCheck(sample));
    expect(tablet.report().form.state).toBe('good');
  });
  it('is in conflict where two people did not know of each other; a look at both settles it', () => {
    const [one, other] = [new PieceTablet(1, sample), new PieceTablet(2, sample)];
    one.write('checker', null, formCheck(sample));
    other.write('setter', null, formCheck(sample, { length: 10 }));
    one.learn(other);
    const report = one.report();
    expect(report.form.state).toBe('conflict');
    expect(report.form.findings.some((words) => words.includes('10 mm too long'))).toBe(true);
    expect(report.flags.map(({ kind }) => kind)).toContain('conflict');
    one.write('checker', null, formCheck(sample));
    expect(one.report().form.state).toBe('good');
  });
  it('that is out stands before the inserts', () => {
    const tablet = new PieceTablet(1, sample);
    checkAll(tablet);
    tablet.write('checker', null, formCheck(sample, { length: 10 }));
    expect(tablet.report().openPoints).toMatchObject([{ number: null, liftedBy: 'setter', isHard: true }]);
  });
  it('that is out is taken as it is by a design engineer only, until it is taped anew', () => {
    const tablet = new PieceTablet(1, sample);
    checkAll(tablet);
    const out = tablet.write('checker', null, formCheck(sample, { length: 10 }));
    const accept = (who: 'qa' | 'engineer'): KindAndBody => ({
      kind: 'decision',
      body: {
        about: [out.id],
        verdict: 'accepted',
        role: who === 'qa' ? 'qa' : 'design engineer',
        registration: who === 'qa' ? null : 'No. 1, Nowhere',
        reason: 'the joint takes it up',
        computed: { state: 'not known', ratio: null, engine: '0.1.0' },
      },
    });
    tablet.write('qa', null, accept('qa'));
    expect(tablet.report().form.state).toBe('out');
    expect(tablet.report().flags.map(({ words }) => words)).toEqual([
      'Q. Assurance accepted the form without the right to: it does not count',
    ]);
    tablet.write('engineer', null, accept('engineer'));
    expect(tablet.report()).toMatchObject({ form: { state: 'accepted', decision: { person: PEOPLE.engineer.id } } });
    expect(tablet.report().openPoints).toEqual([]);
    tablet.write('checker', null, formCheck(sample, { length: 12 }));
    expect(tablet.report().form).toMatchObject({ state: 'out', decision: null });
  });
  it('is open again by a revision that changes it', () => {
    const tablet = new PieceTablet(1, sample);
    tablet.write('checker', null, formCheck(sample));
    tablet.sample = pieceOf(
      demoFile((file) => ({
        ...file,
        library: {
          ...file.library,
          rules: { ...file.library.rules, tolerances: { ...file.library.rules.tolerances, form_mm: 2 } },
        },
      })),
      'P12',
      '1',
    );
    expect(tablet.report().form.state).toBe('open again');
  });
});
