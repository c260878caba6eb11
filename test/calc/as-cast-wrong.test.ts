import { describe } from 'vitest';
import { refuseAll } from './wrong-inputs.ts';

const first = { id: 'C1', design_mm: [0, 0], measured_mm: [10, 20] };
const second = { id: 'C2', design_mm: [100, 0], measured_mm: [110, 20] };
const insert = { id: '7', design_mm: [50, 50], measured_mm: [60, 70] };
const right = { calc: 'as-cast', control: [first, second], inserts: [insert] };
const without = (key: keyof typeof right) => Object.fromEntries(Object.entries(right).filter(([name]) => name !== key));
const control = (...changed: readonly unknown[]) => ({ ...right, control: changed });
const inserts = (...changed: readonly unknown[]) => ({ ...right, inserts: changed });
const line = (k: number) => ({ id: `L${k}`, design_mm: [k * 100, 5, 0], measured_mm: [k * 100, 7, 1] });
const solid = (...points: readonly unknown[]) => ({ ...right, control: points, inserts: [] });

describe('wrong inputs of as-cast', () => {
  refuseAll(right, [
    ['no control points', without('control'), 'control', /list of control points/],
    ['an empty list', control(), 'control', /at least two/],
    ['one control point', control(first), 'control', /at least two .*in 3D three that are not in one line/],
    ['two control points in 3D', solid(line(0), line(1)), 'control', /at least three/],
    ['three in one line in 3D', solid(line(0), line(1), line(2)), 'control', /in one line/],
    [
      'control points in one place',
      control(first, { ...second, design_mm: [0, 0] }),
      'control',
      /in one place as designed/,
    ],
    [
      'measured in one place',
      control(first, { ...second, measured_mm: [10, 20] }),
      'control',
      /in one place as measured/,
    ],
    ['control as number', { ...right, control: 3 }, 'control', /list of control points/],
    ['a control point as number', control(first, 3), 'control[1]', /"design_mm"/],
    ['no name', control(first, { ...second, id: '' }), 'control[1].id', /name of the point/],
    ['a name as number', control(first, { ...second, id: 2 }), 'control[1].id', /name of the point/],
    ['a name twice', control(first, { ...second, id: 'C1' }), 'control[1].id', /there twice/],
    ['no design', control(first, { id: 'C2', measured_mm: [1, 2] }), 'control[1].design_mm', /\[x, y, z\] in mm/],
    ['one number', control(first, { ...second, design_mm: [1] }), 'control[1].design_mm', /\[x, y\] or/],
    ['four numbers', control(first, { ...second, measured_mm: [1, 2, 3, 4] }), 'control[1].measured_mm', /\[x, y\] or/],
    [
      '2D and 3D mixed',
      control(first, { ...second, measured_mm: [1, 2, 3] }),
      'control[1].measured_mm',
      /has 3 numbers, expected 2/,
    ],
    [
      'an insert in 3D',
      inserts({ ...insert, design_mm: [1, 2, 3] }),
      'inserts[0].design_mm',
      /has 3 numbers, expected 2/,
    ],
    [
      'no number',
      control(first, { ...second, measured_mm: [Number.NaN, 2] }),
      'control[1].measured_mm[0]',
      /coordinate/,
    ],
    ['too far', control(first, { ...second, design_mm: [2e6, 2] }), 'control[1].design_mm[0]', /to 1000000 mm/],
    ['no deviation', control(first, { ...second, sigma_mm: 0 }), 'control[1].sigma_mm', /above 0/],
    ['no inserts', without('inserts'), 'inserts', /list of inserts/],
    ['an insert twice', inserts(insert, insert), 'inserts[1].id', /there twice/],
    ['an insert with a deviation', inserts({ ...insert, sigma_mm: 1 }), 'inserts[0].sigma_mm', /not a key/],
    ['an unknown key', { ...right, scale: true }, 'scale', /not a key/],
    [
      'a square that is mirrored',
      control(
        ...[
          [0, 0],
          [9, 0],
          [9, 9],
          [0, 9],
        ].map(([x, y], i) => ({ id: `${i}`, design_mm: [x, y], measured_mm: [y, x] })),
      ),
      'control',
      /several turns/,
    ],
  ]);
});
