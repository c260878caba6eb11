import { expect, it } from 'vitest';
import {
  addItem,
  changeBed,
  changeConcrete,
  changeItem,
  copyName,
  mergeItems,
  nameCatalogue,
  nameRules,
} from '../../../src/job/edit/commands/edit-library.ts';
import { previewEdit, type Recipe } from '../../../src/job/edit/edit-job.ts';
import { findConcreteUses, findItemUses } from '../../../src/job/find-uses.ts';
import { findOtherFoot } from '../../../src/job/other-foot.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { demo } from './demo.ts';

function edit(recipe: Recipe) {
  const file = previewEdit(demo, recipe);
  expect(readJobDocument(file)).toMatchObject({ ok: true });
  return file;
}

it('has all that use a renamed insert, mix or bed follow', () => {
  const renamed = edit(
    changeItem('F16-103', (item) => {
      item.id = 'X';
    }),
  );
  expect(findItemUses(renamed).get('X')).toEqual(findItemUses(demo).get('F16-103'));
  const mixed = edit(
    changeConcrete('C40', (mix) => {
      mix.id = 'C40W';
    }),
  );
  expect(findConcreteUses(mixed).get('C40W')).toEqual(findConcreteUses(demo).get('C40'));
  const bedded = edit(
    changeBed('B1', (bed) => {
      bed.id = 'B9';
    }),
  );
  expect(bedded.job.pours.map((pour) => pour.bed)).toEqual(['B9', 'B2', 'B9']);
});

it('keeps the pins of the job with the editions', () => {
  expect(edit(nameCatalogue({ edition: '3' })).job.pins.catalogue.edition).toBe('3');
  expect(edit(nameRules({ edition: '3', name: 'Other' })).job.pins.rules.edition).toBe('3');
});

it('puts a copy behind its original, under a name that is free', () => {
  const [first, second] = demo.library.catalogue.items;
  expect(copyName('F', ['F', 'F copy'])).toBe('F copy 2');
  const { items } = edit(addItem({ ...first!, id: 'F12-70 copy' }, first!.id)).library.catalogue;
  expect(items.slice(0, 3).map(({ id }) => id)).toEqual([first!.id, 'F12-70 copy', second!.id]);
});

it('merges inserts in the order of the catalogue, new ones last', () => {
  const [a, b, c] = demo.library.catalogue.items;
  const other = { ...b!, name: 'Other' };
  expect(mergeItems([a!, b!], [c!, other], 'add')).toEqual([a, other, c]);
  expect(mergeItems([a!, b!], [c!], 'replace')).toEqual([c]);
});

it('tells a foot by its area and back', () => {
  const item = demo.library.catalogue.items[0]!;
  const area = findOtherFoot(item);
  // π/4 (36² − 18²) = 763.4 mm²
  expect(area).toMatchObject({ kind: 'area', area_mm2: 763 });
  expect(findOtherFoot({ ...item, foot: area })).toMatchObject({ kind: 'diameter', diameter_mm: 35.9 });
});
