import { describe } from 'vitest';
import { refuseAll } from './wrong-inputs.ts';

const right = {
  calc: 'chair-stack',
  panelThickness_mm: 180,
  insertLength_mm: 95,
  aimBelowFace_mm: 1,
  allowedBelowFace_mm: [0, 3],
  chairSink_mm: 0,
  chairHeights_mm: [75, 80, 84, 90],
};
const without = (key: keyof typeof right) => Object.fromEntries(Object.entries(right).filter(([name]) => name !== key));

describe('wrong inputs of chair-stack', () => {
  refuseAll(right, [
    ['no thickness', without('panelThickness_mm'), 'panelThickness_mm', /thickness of the panel/],
    ['no thickness at all', { ...right, panelThickness_mm: 0 }, 'panelThickness_mm', /above 0/],
    ['a negative thickness', { ...right, panelThickness_mm: -180 }, 'panelThickness_mm', /above 0/],
    ['a thickness as text', { ...right, panelThickness_mm: '180' }, 'panelThickness_mm', /mm/],
    ['a thickness that is no number', { ...right, panelThickness_mm: Number.NaN }, 'panelThickness_mm', /mm/],
    [
      'a thickness in metres by its key',
      { ...without('panelThickness_mm'), panelThickness_m: 0.18 },
      'panelThickness_mm',
      /mm/,
    ],
    ['no insert', without('insertLength_mm'), 'insertLength_mm', /length of the insert/],
    ['an insert of no length', { ...right, insertLength_mm: 0 }, 'insertLength_mm', /above 0/],
    [
      'an insert as long as the panel is thick',
      { ...right, insertLength_mm: 180 },
      'insertLength_mm',
      /less than the thickness of 180 mm/,
    ],
    ['no aim', without('aimBelowFace_mm'), 'aimBelowFace_mm', /is aimed/],
    ['an aim above the face', { ...right, aimBelowFace_mm: -1 }, 'aimBelowFace_mm', /from 0/],
    [
      'an aim that is not allowed',
      { ...right, aimBelowFace_mm: 4 },
      'aimBelowFace_mm',
      /not allowed, expected 0 to 3 mm/,
    ],
    ['an aim less than allowed', { ...right, allowedBelowFace_mm: [2, 3] }, 'aimBelowFace_mm', /expected 2 to 3 mm/],
    ['nothing allowed', without('allowedBelowFace_mm'), 'allowedBelowFace_mm', /\[least, most\]/],
    ['limits reversed', { ...right, allowedBelowFace_mm: [3, 0] }, 'allowedBelowFace_mm', /3 mm is more than 0 mm/],
    ['one limit', { ...right, allowedBelowFace_mm: [3] }, 'allowedBelowFace_mm', /\[least, most\]/],
    ['a limit as number', { ...right, allowedBelowFace_mm: 3 }, 'allowedBelowFace_mm', /\[least, most\]/],
    ['only tops above the face', { ...right, allowedBelowFace_mm: [-3, -1] }, 'allowedBelowFace_mm[1]', /from 0/],
    ['no sink', without('chairSink_mm'), 'chairSink_mm', /sinks into the form/],
    ['a negative sink', { ...right, chairSink_mm: -1 }, 'chairSink_mm', /from 0/],
    ['a sink that is endless', { ...right, chairSink_mm: Number.POSITIVE_INFINITY }, 'chairSink_mm', /number from 0/],
    ['a chair that sinks in whole', { ...right, chairSink_mm: 75 }, 'chairHeights_mm[0]', /75 mm sinks in whole/],
    ['no chairs', without('chairHeights_mm'), 'chairHeights_mm', /list of chair heights/],
    ['an empty stock', { ...right, chairHeights_mm: [] }, 'chairHeights_mm', /at least one/],
    ['a chair that is no list', { ...right, chairHeights_mm: 84 }, 'chairHeights_mm', /list of chair heights/],
    ['a negative chair', { ...right, chairHeights_mm: [84, -90] }, 'chairHeights_mm[1]', /height of a chair/],
    ['a chair as text', { ...right, chairHeights_mm: [84, '90'] }, 'chairHeights_mm[1]', /height of a chair/],
    ['a chair twice', { ...right, chairHeights_mm: [84, 90, 84] }, 'chairHeights_mm[2]', /84 mm stands there twice/],
    ['an unknown key', { ...right, recess_mm: 2 }, 'recess_mm', /is not a key/],
  ]);
});
