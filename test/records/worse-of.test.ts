import { expect, test } from 'vitest';
import { worseOf } from '../../src/records/fold/worse-of.ts';
import type { KindAndBody } from '../../src/records/record.ts';
import { cleared, clearedIf, held, measured, override, placed, Tablet } from './writing.ts';

const uncovered = (thread: boolean, capBack: boolean): KindAndBody => ({
  kind: 'uncovered',
  body: { plateOff: true, mortarOut: true, thread, turns: null, capBack, note: null },
});
const screed = (level: boolean): KindAndBody => ({
  kind: 'screed-checked',
  body: { level, plumb: true, cap: true, level_mm: null, note: null },
});
const decision = (verdict: 'accepted' | 'to be moved' | 'rejected'): KindAndBody => ({
  kind: 'decision',
  body: {
    about: ['018f0000-0000-7000-8000-000000000000'],
    verdict,
    role: 'qa',
    registration: null,
    reason: 'seen',
    computed: { state: 'not known', ratio: null, engine: '1' },
  },
});
const stripped = (back: number): KindAndBody => ({
  kind: 'stripped',
  body: { plates: [{ part: 'FP1', out: 4, back }] },
});

test.each<[string, KindAndBody, KindAndBody]>([
  ['a condition before none', clearedIf, cleared],
  ['an override before a condition', override, clearedIf],
  ['held before an override', held, override],
  ['wrong by sight before right', placed(false), placed(true)],
  ['level wrong before right', screed(false), screed(true)],
  ['two wrong before one', uncovered(false, false), uncovered(false, true)],
  ['a cap missing before back in', { kind: 'cap', body: { is: 'missing' } }, { kind: 'cap', body: { is: 'back in' } }],
  ['rejected before to be moved', decision('rejected'), decision('to be moved')],
  ['to be moved before accepted', decision('to be moved'), decision('accepted')],
  ['a plate missing before all back', stripped(3), stripped(4)],
])('%s', (_, worse, better) => {
  const one = new Tablet(1);
  const [a, b] = [one.write(worse, 0), one.write(better, 1)];
  expect(worseOf([a, b])).toBe(a);
  expect(worseOf([b, a])).toBe(a);
});

test('equally bad: the first by id', () => {
  const one = new Tablet(1);
  const [a, b] = [one.write(measured(1), 0), one.write(measured(900), 1)];
  expect(worseOf([b, a])).toBe(a);
});
