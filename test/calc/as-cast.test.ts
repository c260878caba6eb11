import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calc/calculation.ts';

interface Answer {
  controlResiduals: { id: string; error_mm: number }[];
  rms_mm: number;
  inserts: { id: string; panel_mm: number[]; dx_mm: number; dy_mm: number; dz_mm?: number }[];
  suspect: string | null;
  notes: string[];
}
const ask = (input: object) => calculate({ calc: 'as-cast', ...input }) as Answer;

/** The panel turned by a quarter and shifted, as an instrument may stand: (x, y) → (1000 − y, 500 + x). */
const seen = ([x = 0, y = 0, ...z]: readonly number[]) => [1000 - y, 500 + x, ...z.map((height) => height + 40)];
const CORNERS = [
  [0, 0],
  [3000, 0],
  [3000, 2000],
  [0, 2000],
];
const control = CORNERS.map((design_mm, i) => ({ id: `C${i + 1}`, design_mm, measured_mm: seen(design_mm) }));

describe('as-cast', () => {
  it('brings 2D points onto the panel, without dz', () => {
    const answer = ask({ control, inserts: [{ id: '7', design_mm: [1500, 600], measured_mm: seen([1504, 597]) }] });
    expect(answer.inserts).toEqual([
      {
        id: '7',
        panel_mm: [expect.closeTo(1504, 6), expect.closeTo(597, 6)],
        dx_mm: expect.closeTo(4, 6),
        dy_mm: expect.closeTo(-3, 6),
      },
    ]);
    expect(answer.rms_mm).toBeCloseTo(0, 6);
  });

  it('brings 3D points onto the panel', () => {
    const solid = control.map(({ id, design_mm }) => ({
      id,
      design_mm: [...design_mm, 0],
      measured_mm: seen([...design_mm, 0]),
    }));
    const answer = ask({
      control: solid,
      inserts: [{ id: '7', design_mm: [1500, 600, 0], measured_mm: seen([1504, 597, -2]) }],
    });
    expect(answer.inserts[0]).toMatchObject({
      dx_mm: expect.closeTo(4, 6),
      dy_mm: expect.closeTo(-3, 6),
      dz_mm: expect.closeTo(-2, 6),
    });
  });

  // By hand: 6 mm too far between two points: 3 mm at each, rms 3.
  it('gives what each control point is off by, and the root mean square of it', () => {
    const two = [control[0]!, { ...control[1]!, measured_mm: seen([3006, 0]) }];
    const { controlResiduals, rms_mm, notes } = ask({ control: two, inserts: [] });
    expect(controlResiduals).toEqual([
      { id: 'C1', error_mm: expect.closeTo(3, 6) },
      { id: 'C2', error_mm: expect.closeTo(3, 6) },
    ]);
    expect(rms_mm).toBeCloseTo(3, 6);
    expect(notes[1]).toMatch(/hardly more control points than needed/);
  });

  it('weighs by sigma_mm, and names a slip where every point has one', () => {
    const slipped = control.map((point, i) => ({ ...point, ...(i === 2 ? { measured_mm: seen([3030, 2000]) } : {}) }));
    expect(ask({ control: slipped, inserts: [] })).toMatchObject({
      suspect: null,
      notes: [expect.stringMatching(/sigma_mm/)],
    });
    const weighed = slipped.map((point) => ({ ...point, sigma_mm: 1 }));
    const named = ask({ control: weighed, inserts: [] });
    expect(named).toMatchObject({
      suspect: 'C3',
      notes: [expect.stringMatching(/^control point C3 .* 30\.0 mm .*measure it again$/)],
    });
    const loose = ask({
      control: slipped.map((point, i) => ({ ...point, sigma_mm: i === 2 ? 900 : 0.1 })),
      inserts: [{ id: '7', design_mm: [0, 0], measured_mm: seen([0, 0]) }],
    });
    expect(Math.abs(loose.inserts[0]!.dx_mm)).toBeLessThan(0.01);
    const three = weighed.slice(0, 2).map((point, i) => (i === 1 ? { ...point, measured_mm: seen([3030, 0]) } : point));
    expect(ask({ control: three, inserts: [] }).notes[0]).toMatch(/which of C1, C2 is wrong cannot be told/);
  });
});
