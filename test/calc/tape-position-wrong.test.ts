import { describe } from 'vitest';
import { refuseAll } from './wrong-inputs.ts';

const start = {
  to: {
    edge: [
      [0, 0],
      [0, 2000],
    ],
  },
  distance_mm: 500,
  sigma_mm: 1,
};
const rail = {
  to: {
    edge: [
      [0, 0],
      [3000, 0],
    ],
  },
  distance_mm: 300,
  sigma_mm: 1,
};
const corner = { to: { point: [3000, 0] }, distance_mm: 2518, sigma_mm: 1 };
const right = { calc: 'tape-position', tapeClass: null, guess_mm: [480, 310], measured: [start, rail, corner] };
const without = (key: keyof typeof right) => Object.fromEntries(Object.entries(right).filter(([name]) => name !== key));
const measured = (...changed: readonly unknown[]) => ({ ...right, measured: changed });

describe('wrong inputs of tape-position', () => {
  refuseAll(right, [
    ['no tape', without('tapeClass'), 'tapeClass', /"I" or "II", or null/],
    ['a tape of class III', { ...right, tapeClass: 'III' }, 'tapeClass', /"I" or "II"/],
    ['a tape as number', { ...right, tapeClass: 2 }, 'tapeClass', /"I" or "II"/],
    ['no guess', without('guess_mm'), 'guess_mm', /point \[x, y\]/],
    ['a guess of three numbers', { ...right, guess_mm: [1, 2, 3] }, 'guess_mm', /point \[x, y\]/],
    ['a guess that is no number', { ...right, guess_mm: [Number.NaN, 2] }, 'guess_mm[0]', /mm/],
    ['a guess on an edge', { ...right, guess_mm: [480, 0] }, 'guess_mm', /lies on what distance 1/],
    [
      'a guess on a point',
      { ...right, guess_mm: [3000, 0], measured: [corner, start] },
      'guess_mm',
      /lies on what distance 0/,
    ],
    ['no distances', without('measured'), 'measured', /list of distances/],
    ['one distance', measured(start), 'measured', /at least two distances/],
    ['distances that are no list', { ...right, measured: start }, 'measured', /list of distances/],
    ['a distance as number', measured(start, 300), 'measured[1]', /distance \{ "to"/],
    ['a distance to nothing', measured(start, { distance_mm: 300, sigma_mm: 1 }), 'measured[1].to', /"edge"/],
    ['a distance to an empty place', measured(start, { ...rail, to: {} }), 'measured[1].to', /names neither/],
    [
      'a distance to two things',
      measured(start, { ...rail, to: { ...rail.to, point: [0, 0] } }),
      'measured[1].to',
      /names both/,
    ],
    ['a distance to a list', measured(start, { ...rail, to: [0, 0] }), 'measured[1].to', /"point"/],
    [
      'an edge of one point',
      measured(start, {
        ...rail,
        to: {
          edge: [
            [5, 5],
            [5, 5],
          ],
        },
      }),
      'measured[1].to.edge',
      /two points apart/,
    ],
    ['an edge with one end', measured(start, { ...rail, to: { edge: [[0, 0]] } }), 'measured[1].to.edge', /two ends/],
    [
      'a point as text',
      measured(start, { ...corner, to: { point: '3000, 0' } }),
      'measured[1].to.point',
      /point \[x, y\]/,
    ],
    ['no length', measured(start, { to: rail.to, sigma_mm: 1 }), 'measured[1].distance_mm', /measured distance/],
    ['a negative length', measured(start, { ...rail, distance_mm: -300 }), 'measured[1].distance_mm', /from 0/],
    ['a length as text', measured(start, { ...rail, distance_mm: '300' }), 'measured[1].distance_mm', /mm/],
    [
      'no length to a point',
      measured(start, { ...corner, distance_mm: 0 }),
      'measured[1].distance_mm',
      /more than 0 mm/,
    ],
    [
      'no deviation and no tape',
      measured(start, { ...rail, sigma_mm: null }),
      'measured[1].sigma_mm',
      /is missing, expected it for each/,
    ],
    ['a deviation left out', measured(start, { to: rail.to, distance_mm: 300 }), 'measured[1].sigma_mm', /is missing/],
    ['a deviation of nothing', measured(start, { ...rail, sigma_mm: 0 }), 'measured[1].sigma_mm', /above 0/],
    ['parallel edges only', measured(start, start), 'measured', /all edges run the same way/],
    [
      'a guess in line with two points',
      { ...right, guess_mm: [480, 0], measured: [corner, { ...corner, to: { point: [0, 0] } }] },
      'guess_mm',
      /in line with the points; expected a guess beside/,
    ],
    [
      'an unknown key in a place',
      measured(start, { ...rail, to: { ...rail.to, name: 'rail' } }),
      'measured[1].to.name',
      /is not a key/,
    ],
    ['an unknown key in a distance', measured(start, { ...rail, unit: 'mm' }), 'measured[1].unit', /is not a key/],
    ['an unknown key', { ...right, scale: 1 }, 'scale', /is not a key/],
  ]);
});
