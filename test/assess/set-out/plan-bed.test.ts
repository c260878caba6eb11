import { expect, it } from 'vitest';
import { planBed } from '../../../src/assess/set-out/plan-bed.ts';
import { addPour } from '../../../src/job/edit/commands/edit-pours.ts';
import { previewEdit } from '../../../src/job/edit/edit-job.ts';
import { demo } from '../../job/edit/demo.ts';

it('lays a panel with its drawn face down as its mirror image, openings too', () => {
  const { pieces } = planBed(demo, demo.job.pours[0]!);
  const [first, , third] = pieces;
  expect([first!.length, first!.width]).toEqual([6000, 3200]);
  // Drawn from 2000 to 3800 of 6000: mirrored from 2200 to 4000.
  expect(first!.openings[0]!.map(([x]) => x).sort()).toEqual([2200, 2200, 4000, 4000]);
  // P03 is drawn 3600 high at its left and 2200 at its right.
  expect(third!.outline).toContainEqual([5200, 3600]);
  expect(third!.outline).toContainEqual([0, 2200]);
});

it('shows what other pours cast on the same bed and day', () => {
  const file = previewEdit(demo, addPour({ id: 'T15', bed: 'B1', date: '2026-12-14' }, ['P11']));
  const plan = planBed(file, file.job.pours[0]!);
  expect(plan.pieces.map(({ piece }) => piece.panel)).toEqual(['P01', 'P02', 'P03', 'P10']);
  expect(plan.others.map(({ pour, piece }) => [pour, piece.panel])).toEqual([['T15', 'P11']]);
});
