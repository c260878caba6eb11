import { expect, it } from 'vitest';
import {
  addPieces,
  addPour,
  changePiece,
  changePour,
  listUnplanned,
  nextPourId,
  removePiece,
  removePour,
} from '../../../src/job/edit/commands/edit-pours.ts';
import { previewEdit, type Recipe } from '../../../src/job/edit/edit-job.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { demo } from './demo.ts';

const edit = (recipe: Recipe) => previewEdit(demo, recipe);
const poursOf = (recipe: Recipe) => edit(recipe).job.pours;

it('names the next pour after the last one, passing over names that are taken', () => {
  expect(nextPourId(demo)).toBe('T15');
  const taken = edit(addPour({ id: 'T15', bed: 'B1', date: '2027-02-01' }, ['P05']));
  expect(nextPourId({ ...taken, job: { ...taken.job, pours: taken.job.pours.toReversed() } })).toBe('T16');
  expect(nextPourId({ ...demo, job: { ...demo.job, pours: [] } })).toBe('T1');
});

it('puts new pieces beside each other with room between, numbered after those that are cast already', () => {
  expect(listUnplanned(demo)).toEqual(['P05', 'P06']);
  const after = edit(addPour({ id: 'T15', bed: 'B1', date: '2027-02-01' }, ['P05', 'P06', 'P12']));
  expect(readJobDocument(after).ok).toBe(true);
  expect(listUnplanned(after)).toEqual([]);
  const { pieces } = after.job.pours.at(-1)!;
  expect(pieces.map(({ panel, serial }) => [panel, serial])).toEqual([
    ['P05', '1'],
    ['P06', '1'],
    ['P12', '3'],
  ]);
  expect(pieces[0]!.along_mm).toBe(500);
  for (const [k, { along_mm }] of pieces.entries())
    if (k > 0) expect(along_mm).toBeGreaterThan(pieces[k - 1]!.along_mm!);
});

it('leaves a piece without a place where the bed has none, rather than on another', () => {
  // The bed of T14 ends 26 m from its start, and its last piece near there.
  const { pieces } = poursOf(addPieces('T14', ['P01']))[2]!;
  expect(pieces.at(-1)).toEqual({ panel: 'P01', serial: '2', revision: null, along_mm: null });
});

it('changes a pour and its pieces, and takes them away', () => {
  expect(poursOf(changePour('T13', { date: '2027-01-04' }))[1]!.date).toBe('2027-01-04');
  expect(poursOf(changePiece('T12', 1, { revision: null }))[0]!.pieces[1]!.revision).toBeNull();
  expect(poursOf(removePiece('T12', 0))[0]!.pieces.map(({ panel }) => panel)).toEqual(['P02', 'P03', 'P10']);
  expect(poursOf(removePour('T13')).map(({ id }) => id)).toEqual(['T12', 'T14']);
});

it('takes a pour away with its last piece', () => {
  const one = addPour({ id: 'T15', bed: 'B1', date: '2027-02-01' }, ['P05']);
  const both: Recipe = (draft) => {
    one(draft);
    removePiece('T15', 0)(draft);
  };
  expect(poursOf(both).map(({ id }) => id)).toEqual(['T12', 'T13', 'T14']);
});
