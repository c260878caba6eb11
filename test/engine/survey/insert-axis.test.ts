import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FaceAxes, findStance, findTiltedStance, placeAtHeight } from '../../../src/engine/survey/insert-axis.ts';

const face: FaceAxes = { through: [0, 0, 0], right: [1, 0, 0], up: [0, 1, 0], out: [0, 0, 1] };
const degrees = (angle: number | null) => ((angle ?? Number.NaN) * 180) / Math.PI;
/** A rod 95 mm long whose end stands 3 mm aside. */
const RISE = Math.sqrt(95 ** 2 - 3 ** 2);

describe('how an insert stands in its face', () => {
  // Worked by hand: asin(3/95) = 1.81°, 30 · tan 1.81° = 0.95 mm.
  it('leans 1.81° when its top is 3 mm aside over 95 mm: 0.95 mm at a plate 30 mm in front', () => {
    const stance = findTiltedStance(face, [100, 200, 0], [103, 200, RISE]);
    expect(degrees(stance.tilt)).toBeCloseTo(1.81, 2);
    expect(stance.toward).toBe(0);
    expect(placeAtHeight(face, stance, 30)[0]! - 100).toBeCloseTo(0.95, 2);
    expect(stance.at).toEqual([100, 200, 0]);
  });

  it('reads the same from a deeper point', () => {
    const stance = findTiltedStance(face, [100, 200, 0], [97, 200, -RISE]);
    expect(degrees(stance.tilt)).toBeCloseTo(1.81, 2);
    expect(degrees(stance.toward)).toBeCloseTo(0, 9);
  });

  it('tells depth from proud, and finds the place at the face along the axis', () => {
    expect(findStance(face, [5, 6, -4])).toMatchObject({ at: [5, 6, 0], depth: 4, tilt: null });
    expect(findStance(face, [5, 6, 3]).depth).toBe(-3);
    // 10 mm deep and leaning 1 in 10 upward: 1 mm higher at the face.
    const stance = findTiltedStance(face, [0, 0, -10], [0, 9, 80]);
    expect(stance.at[1]).toBeCloseTo(1, 9);
    expect(stance.depth).toBeCloseTo(10, 9);
    expect(degrees(stance.toward)).toBeCloseTo(90, 9);
    expect(stance.lean[1]).toBeCloseTo(0.1, 9);
  });

  it('is the same on any face', () => {
    const other: FaceAxes = { through: [0, 0, -180], right: [-1, 0, 0], up: [0, 1, 0], out: [0, 0, -1] };
    const stance = findTiltedStance(other, [100, 200, -176], [103, 200, -176 - RISE]);
    expect(stance.depth).toBeCloseTo(4, 9);
    // To the right in the drawing is to the left as seen from in front of the other face.
    expect(degrees(stance.toward)).toBeCloseTo(180, 9);
    expect(placeAtHeight(other, stance, 30)[2]).toBeCloseTo(-210, 9);
    expect(placeAtHeight(other, stance, 30)[0]! - stance.at[0]!).toBeCloseTo(0.95, 2);
  });

  it('lies on its axis at every height', () => {
    const part = fc.integer({ min: -20, max: 20 });
    fc.assert(
      fc.property(part, part, part, fc.integer({ min: -60, max: 60 }), (dx, dy, top, height) => {
        const stance = findTiltedStance(face, [0, 0, top], [dx, dy, top + 100]);
        const [x, y, z] = placeAtHeight(face, stance, height);
        expect(x).toBeCloseTo(((height - top) * dx) / 100, 6);
        expect(y).toBeCloseTo(((height - top) * dy) / 100, 6);
        expect(z).toBeCloseTo(height, 9);
      }),
      { seed: 5 },
    );
  });

  it('refuses two points that give no axis', () => {
    expect(() => findTiltedStance(face, [0, 0, 0], [0, 0, 4])).toThrow(/4\.0 mm apart, expected at least 5/);
    expect(() => findTiltedStance(face, [0, 0, 0], [80, 0, 20])).toThrow(/76° off square/);
  });
});
