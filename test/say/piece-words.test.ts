import { expect, it } from 'vitest';
import type { OpenPoint } from '../../src/assess/yard/piece-report.ts';
import { gatherPoints, tellPartBack, tellPartsBack } from '../../src/say/piece-words.ts';

const point = (number: number | null, words: string, isHard = false): OpenPoint => ({
  number,
  words: number === null ? words : `no. ${number}: ${words}`,
  liftedBy: 'checking it',
  isHard,
});

it('draws points together that say the same of several inserts, and no others', () => {
  const points = [
    point(null, 'the form is not checked', true),
    ...[3, 4, 5, 9].map((number) => point(number, 'not looked at')),
    point(7, 'not looked at', true),
    point(8, 'x not taped'),
  ];
  expect(gatherPoints(points).map(({ words, numbers }) => [words, numbers])).toEqual([
    ['the form is not checked', []],
    ['no. 3–5, 9: not looked at', [3, 4, 5, 9]],
    ['no. 7: not looked at', [7]],
    ['no. 8: x not taped', [8]],
  ]);
});

it.each([
  [null, '12 out, not counted back'],
  [12, 'all 12 back'],
  [10, '12 out, 10 back, 2 missing'],
  [13, '12 out, 13 back, 1 more than went out'],
] as const)('tells parts that came back: %s', (back, words) => {
  expect(tellPartBack({ part: 'NP16', name: 'Plate', out: 12, back })).toBe(`Plate: ${words}`);
});

it('tells first what did not come back as it went out', () => {
  const part = (name: string, out: number, back: number | null) => ({ part: name, name, out, back });
  expect(tellPartsBack([part('Cap', 1, 1), part('Magnet', 4, 3), part('Bar', 2, 2), part('Board', 1, null)])).toEqual([
    'Magnet: 4 out, 3 back, 1 missing',
    'Board: 1 out, not counted back',
    'Cap: 1 back',
    'Bar: all 2 back',
  ]);
});
