import { expect, it } from 'vitest';
import { readSurvey } from '../../../src/files/survey/read-survey.ts';
import { panel as panelSchema } from '../../../src/job/documents/panel.ts';
import { listOpenOfSurvey, makeSurvey } from '../../../src/web/pieces/survey/make-survey.ts';
import {
  beginPair,
  EMPTY_SURVEY,
  keepSurveyDraft,
  type Meaning,
  readSurveyDraft,
  type SurveyDraft,
} from '../../../src/web/pieces/survey/survey-draft.ts';

const panel = panelSchema.parse({
  key: 'p',
  mark: 'P1',
  concrete: 'C',
  drawnFace: 'outside',
  faceDown: 'outside',
  outline_mm: [
    [0, 0],
    [3000, 0],
    [3000, 2000],
  ],
  thickness_mm: 150,
});
const file = readSurvey(
  'p.csv',
  new TextEncoder().encode(
    'a,1.2504,2.0000,0.3000\nb,1.3504,2.0000,0.3000\nk,5.0000,2.0000,0.1000\nm,4.0000,9.0000,0.1000',
  ),
);
const HASH = 'a'.repeat(64);

function draftOf(...meanings: readonly Meaning[]): SurveyDraft {
  return {
    ...EMPTY_SURVEY,
    file: { name: 'p.csv', bytes: '' },
    pairs: file.rows.map((row, k) => beginPair(row, meanings[k]!)),
  };
}

const DRAFT = draftOf(
  { is: 'insert', key: 'one' },
  { is: 'rod', key: 'one' },
  { is: 'corner', name: 'corner 2, inside' },
  { is: 'side', edge: 0 },
);

it('a point is what it was said to be: an insert with its rod, a corner on its face, a side with both ends', () => {
  expect(makeSurvey(panel, DRAFT, file, HASH, null)).toMatchObject({
    basis: 'instrument',
    file: { name: 'p.csv', hash: HASH },
    points: [
      {
        item: 'one',
        name: 'a',
        measured_mm: [1250.4, 2000, 300],
        second: { measured_mm: [1350.4, 2000, 300] },
        sigma_mm: 2,
      },
    ],
    controls: [
      { kind: 'corner', design_mm: [3000, 0, -150], measured_mm: [5000, 2000, 100], sigma_mm: 5, isUsed: true },
      { kind: 'edge', design_mm: [0, 0, 0], edgeEnd_mm: [3000, 0, 0], sigma_mm: 5 },
    ],
  });
});

it('nothing is recorded that nobody confirmed, that is said twice, or that is left out without a reason', () => {
  expect(listOpenOfSurvey(DRAFT, file)).toEqual(['4 points are suggested and not confirmed.']);
  const seen = { ...DRAFT, pairs: DRAFT.pairs.map((pair) => ({ ...pair, isConfirmed: true })) };
  expect(listOpenOfSurvey(seen, file)).toEqual([]);
  const out = { ...seen, pairs: seen.pairs.map((pair) => ({ ...pair, isUsed: false })) };
  expect(listOpenOfSurvey(out, file)).toEqual(['A known point is left out without a reason.']);
  const twice = { ...seen, pairs: seen.pairs.map((pair) => ({ ...pair, meaning: seen.pairs[0]!.meaning })) };
  expect(listOpenOfSurvey(twice, file)).toEqual(['1 place has two points: choose one of them.']);
  expect(
    listOpenOfSurvey(draftOf({ is: 'nothing' }, { is: 'nothing' }, { is: 'nothing' }, { is: 'nothing' }), file),
  ).toEqual(['No point is an insert yet.']);
});

it('what was begun is kept and found again; without room it says so; what is no draft is as if nothing was there', () => {
  const kept = new Map<string, string>();
  const storage = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  };
  expect(keepSurveyDraft(storage, 'piece', DRAFT)).toBe(true);
  expect(readSurveyDraft(storage, 'piece')).toEqual(DRAFT);
  const full = {
    ...storage,
    setItem: () => {
      throw new Error('no room');
    },
  };
  expect(keepSurveyDraft(full, 'piece', DRAFT)).toBe(false);
  storage.setItem('onepour-survey piece', '{"v":2}');
  expect(readSurveyDraft(storage, 'piece')).toBe(EMPTY_SURVEY);
});
