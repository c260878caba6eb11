import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calc/calculation.ts';

const rail = {
  edge: [
    [0, 0],
    [3000, 0],
  ],
};
const start = {
  edge: [
    [0, 0],
    [0, 2000],
  ],
};
const given = {
  calc: 'tape-position',
  tapeClass: null,
  guess_mm: [290, 410],
  measured: [
    { to: start, distance_mm: 300, sigma_mm: 1 },
    { to: rail, distance_mm: 400, sigma_mm: 1 },
    { to: { point: [0, 0] }, distance_mm: 503, sigma_mm: 1 },
  ],
};
type Answer = {
  x_mm: number;
  y_mm: number;
  sigma_x_mm: number;
  sigma_y_mm: number;
  residuals_mm: number[];
  suspect: number | null;
  notes: string[];
};
const ask = (changes: object = {}) => calculate({ ...given, ...changes }) as Answer;

describe('tape-position', () => {
  // By hand in test/engine/form/tape-position.test.ts: (300.9, 401.2), variances 0.82 and 0.68, residuals −0.9, −1.2, 1.5.
  it('gives place, deviations and residuals under the keys of the contract', () => {
    const answer = ask();
    expect(answer.x_mm).toBeCloseTo(300.9, 8);
    expect(answer.y_mm).toBeCloseTo(401.2, 8);
    expect(answer.sigma_x_mm).toBeCloseTo(Math.sqrt(0.82), 8);
    expect(answer.sigma_y_mm).toBeCloseTo(Math.sqrt(0.68), 8);
    expect(answer.residuals_mm[2]).toBeCloseTo(1.5, 8);
    expect(answer.suspect).toBeNull();
    expect(answer.notes).toEqual([]);
  });

  // By hand: 300 mm with class II: (0.5² + 0.5² + 1²)/3 = 0.5; 2400 mm: 0.686667. A σ of its own comes before the tape's.
  it('takes deviations from the class of the tape where a distance has none', () => {
    const measured = [
      { to: start, distance_mm: 300, sigma_mm: null },
      {
        to: {
          edge: [
            [0, 2800],
            [3000, 2800],
          ],
        },
        distance_mm: 2400,
      },
    ];
    const answer = ask({ tapeClass: 'II', measured });
    expect(answer.sigma_x_mm).toBeCloseTo(Math.sqrt(0.5), 9);
    expect(answer.sigma_y_mm).toBeCloseTo(Math.sqrt(2.06 / 3), 9);
    expect(answer.y_mm).toBeCloseTo(400, 9);
    expect(ask({ tapeClass: 'II' }).sigma_x_mm).toBeCloseTo(Math.sqrt(0.82), 8);
  });

  it('says that two distances check nothing', () => {
    expect(ask({ measured: given.measured.slice(0, 2) }).notes).toEqual([
      expect.stringContaining('two distances only'),
    ]);
  });

  it('names a distance that does not agree, and says to measure it again', () => {
    const corner = { to: { point: [3000, 2000] }, distance_mm: Math.hypot(2700, 1600), sigma_mm: 1 };
    const slipped = { to: { point: [3000, 0] }, distance_mm: Math.hypot(2700, 400) + 30, sigma_mm: 1 };
    const answer = ask({ measured: [...given.measured.slice(0, 2), corner, slipped] });
    expect(answer.suspect).toBe(3);
    expect(answer.notes).toEqual([expect.stringMatching(/^measured\[3\] does not agree .* measure it again$/)]);
  });

  it('does not guess which of three is wrong', () => {
    const measured = [...given.measured.slice(0, 2), { to: { point: [0, 0] }, distance_mm: 530, sigma_mm: 1 }];
    const answer = ask({ measured });
    expect(answer.suspect).toBeNull();
    expect(answer.notes).toEqual([
      expect.stringContaining('measured[0], measured[1], measured[2] is wrong cannot be told'),
    ]);
  });

  // (2985, 600): 15 before the edge x = 3000, where the guess lies 5 beyond it.
  it('says that the distances contradict the side of the guess', () => {
    const end = {
      edge: [
        [3000, 0],
        [3000, 2000],
      ],
    };
    const measured = [
      { to: end, distance_mm: 15, sigma_mm: 1 },
      { to: rail, distance_mm: 600, sigma_mm: 1 },
      { to: start, distance_mm: 2985, sigma_mm: 1 },
      { to: { point: [0, 0] }, distance_mm: 3045, sigma_mm: 1 },
    ];
    const answer = ask({ guess_mm: [3005, 600], measured });
    expect(answer.suspect).toBeNull();
    expect(answer.notes).toEqual([
      expect.stringMatching(/^the place lies across the edge of measured\[0\] from guess_mm/),
    ]);
    expect(ask({ guess_mm: [2990, 600], measured }).notes).toEqual([]);
  });

  it('says what no other distance checks, and where the tape misses its edge', () => {
    const twice = [given.measured[0], given.measured[0], given.measured[1]];
    expect(ask({ measured: twice }).notes).toEqual(['no other distance checks measured[2]']);
    const short = {
      to: {
        edge: [
          [0, 500],
          [0, 2000],
        ],
      },
      distance_mm: 300,
      sigma_mm: 1,
    };
    expect(ask({ measured: [short, given.measured[1]] }).notes[1]).toMatch(/measured\[0\]: square to its edge/);
  });
});
