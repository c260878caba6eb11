import { expect, it } from 'vitest';
import { tellShift } from '../../../src/assess/as-cast/tell-shift.ts';
import { connectionOf, reportOff } from './casts.ts';

const panel = { drawnFace: 'outside' } as const;

it('tells a shift as one sees it who stands before the face', () => {
  expect(tellShift([-4, 2.26], 'inside', panel)).toBe('4 mm to the left and 2.3 mm up');
  expect(tellShift([0.2, -1], 'outside', panel)).toBe('0.2 mm to the right and 1 mm down');
  expect(tellShift([0, 3], 'inside', panel, (mm) => `${mm} units`)).toBe('3 units up');
});

it('tells nothing of less than 0.05 mm', () => {
  expect(tellShift([0.049, -0.049], 'inside', panel)).toBeNull();
  expect(tellShift([0.051, 0], 'inside', panel)).toBe('0.1 mm to the right');
});

it('tells in an edge to which face: up and down are not the same on every bed', () => {
  expect(tellShift([0, 2], 'edge', panel)).toBe('2 mm toward the outside face');
  expect(tellShift([1, -2], 'edge', { drawnFace: 'inside' })).toBe(
    '1 mm to the right and 2 mm away from the inside face',
  );
});

it('no remedy of a plate in an edge goes up or down', () => {
  const report = reportOff('P07', { 3: { dx: 4, dy: 3 }, 4: { dy: 3 } });
  const words = connectionOf(report, 'C22').remedies.map((remedy) => remedy.words);
  expect(words.some((one) => / face\b/.test(one))).toBe(true);
  for (const one of words) expect(one).not.toMatch(/ mm (up|down)\b/);
});
