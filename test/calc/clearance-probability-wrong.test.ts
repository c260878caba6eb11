import { describe } from 'vitest';
import { refuseAll } from './wrong-inputs.ts';

const hole = { id: 'A', x_mm: 0, y_mm: 0, diameter_mm: 18 };
const other = { id: 'B', x_mm: 200, y_mm: 0, diameter_mm: 18 };
const right = {
  calc: 'clearance-probability',
  sigma_mm: 1,
  bolt_mm: 16,
  target: null,
  seed: 1,
  holes: [hole, other],
};
const without = (key: keyof typeof right) => Object.fromEntries(Object.entries(right).filter(([name]) => name !== key));

describe('wrong inputs of clearance-probability', () => {
  refuseAll(right, [
    ['no deviation', without('sigma_mm'), 'sigma_mm', /standard deviation of a bolt/],
    ['a deviation of nothing', { ...right, sigma_mm: 0 }, 'sigma_mm', /above 0/],
    ['a deviation as text', { ...right, sigma_mm: '1' }, 'sigma_mm', /mm/],
    ['no bolts', without('bolt_mm'), 'bolt_mm', /diameter of the bolts/],
    ['a negative bolt', { ...right, bolt_mm: -16 }, 'bolt_mm', /above 0/],
    ['no holes', without('holes'), 'holes', /list of holes/],
    ['an empty list of holes', { ...right, holes: [] }, 'holes', /at least one hole/],
    ['two holes of one name', { ...right, holes: [hole, { ...other, id: 'A' }] }, 'holes[1].id', /A/],
    ['no target', without('target'), 'target', /chance that is wanted/],
    ['a target of certainty', { ...right, target: 1 }, 'target', /0\.001 to 0\.99999/],
    ['a target in per cent', { ...right, target: 99 }, 'target', /0\.001 to 0\.99999/],
    ['no seed', without('seed'), 'seed', /whole number/],
    ['half a seed', { ...right, seed: 0.5 }, 'seed', /whole number/],
    ['a negative seed', { ...right, seed: -1 }, 'seed', /from 0/],
    ['holes that are no list', { ...right, holes: hole }, 'holes', /list of holes/],
    ['a hole as number', { ...right, holes: [hole, 18] }, 'holes[1]', /hole/],
    [
      'a hole without a place',
      { ...right, holes: [hole, { id: 'B', y_mm: 0, diameter_mm: 18 }] },
      'holes[1].x_mm',
      /mm/,
    ],
    ['a hole of no size', { ...right, holes: [hole, { ...other, diameter_mm: 0 }] }, 'holes[1].diameter_mm', /above 0/],
    ['a deviation that is no number', { ...right, sigma_mm: Number.NaN }, 'sigma_mm', /mm/],
    ['an unknown key', { ...right, turns: 5 }, 'turns', /is not a key/],
  ]);
});
