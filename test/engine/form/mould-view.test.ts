import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Lay, levelOf, mouldView } from '../../../src/engine/form/mould-view.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { ALL_LAYS, anyOutline, anyPoint, turnOf } from './lays.ts';

const sheet: readonly Point[] = [
  [0, 0],
  [3000, 0],
  [3000, 2000],
  [0, 2000],
];
const lay = (changes: Partial<Lay> = {}) =>
  mouldView({
    outline: sheet,
    drawnFace: 'outside',
    faceDown: 'inside',
    turn: 0,
    datum: 'bottom-left',
    ...changes,
  });

/** Second way, step by step as the words go: mirror in the extent, turn about the origin, count from the corner of the new extent. */
function byHand({ outline, drawnFace, faceDown, turn, datum }: Lay, at: Point): { form: Point; plan: Point } {
  const widest = outline.map(([x]) => x);
  const step = ([x, y]: Point): Point => {
    const u = drawnFace === faceDown ? Math.min(...widest) + Math.max(...widest) - x : x;
    if (turn === 0) return [u, y];
    if (turn === 90) return [-y, u];
    return turn === 180 ? [-u, -y] : [y, -u];
  };
  const turned = outline.map(step);
  const [xs, ys] = [turned.map(([x]) => x), turned.map(([, y]) => y)];
  const [x, y] = step(at);
  const plan: Point = [x - Math.min(...xs), y - Math.min(...ys)];
  return {
    plan,
    form: [
      datum.endsWith('left') ? plan[0] : Math.max(...xs) - x,
      datum.startsWith('bottom') ? plan[1] : Math.max(...ys) - y,
    ],
  };
}

describe('a panel in the form, by hand', () => {
  // A sheet of 3000 × 2000 and a point 500 from its left and 300 from its lower side as drawn. Worked on paper, one view a line.
  it.each([
    ['drawn face up, as drawn', {}, [500, 300]],
    ['drawn face down: mirrored', { faceDown: 'outside' }, [2500, 300]],
    ['a quarter turn', { turn: 90 }, [1700, 500]],
    ['a half turn', { turn: 180 }, [2500, 1700]],
    ['three quarter turns', { turn: 270 }, [300, 2500]],
    ['mirrored, then a quarter turn', { faceDown: 'outside', turn: 90 }, [1700, 2500]],
    ['mirrored, then three quarter turns', { faceDown: 'outside', turn: 270 }, [300, 500]],
    ['from bottom-right', { datum: 'bottom-right' }, [2500, 300]],
    ['from top-left', { datum: 'top-left' }, [500, 1700]],
    ['from top-right', { datum: 'top-right' }, [2500, 1700]],
    ['a quarter turn, from top-right', { turn: 90, datum: 'top-right' }, [300, 2500]],
    ['drawn from the inside, inside down', { drawnFace: 'inside', faceDown: 'inside' }, [2500, 300]],
  ] as const)('%s', (_, changes, expected) => {
    expect(lay(changes).toForm([500, 300])).toEqual(expected);
  });

  it('counts from the extent of a panel that is drawn anywhere', () => {
    const moved = sheet.map(([x, y]): Point => [x - 700, y + 250]);
    expect(lay({ outline: moved, faceDown: 'outside' }).toForm([-200, 550])).toEqual([2500, 300]);
  });

  it('says how long and wide the form is and where the datum corner lies in the plan', () => {
    const turned = lay({ turn: 90, datum: 'top-right' });
    expect([turned.length, turned.width]).toEqual([2000, 3000]);
    expect(turned.datumAt).toEqual([2000, 3000]);
    expect(lay({ datum: 'bottom-right' }).datumAt).toEqual([3000, 0]);
    expect(lay({ datum: 'top-left' }).datumAt).toEqual([0, 2000]);
  });

  // By hand: 30° as drawn is 150° in the mirror; a quarter turn adds 90°.
  it('turns directions', () => {
    expect(lay().turnDirection(30)).toBe(30);
    expect(lay({ faceDown: 'outside' }).turnDirection(30)).toBe(150);
    expect(lay({ faceDown: 'outside', turn: 90 }).turnDirection(30)).toBe(240);
    expect(lay({ turn: 270 }).turnDirection(90)).toBe(0);
    expect(lay({ faceDown: 'outside' }).turnDirection(200)).toBe(340);
  });

  it('tells which face is down', () => {
    expect(levelOf(lay({ faceDown: 'outside' }), 'outside')).toBe('on the form');
    expect(levelOf(lay({ faceDown: 'outside' }), 'inside')).toBe('at the top');
    expect(levelOf(lay({ faceDown: 'inside' }), 'outside')).toBe('at the top');
    expect(levelOf(lay({ faceDown: 'inside' }), 'inside')).toBe('on the form');
  });
});

describe.each(ALL_LAYS)('drawn $drawnFace, $faceDown down, turned $turn, from $datum', (way) => {
  it('agrees with the words of the contract step by step', () => {
    fc.assert(
      fc.property(anyOutline, anyPoint, (outline, at) => {
        const view = mouldView({ ...way, outline });
        const second = byHand({ ...way, outline }, at);
        expect(view.toForm(at)).toEqual(second.form);
        expect(view.toPlan(at)).toEqual(second.plan);
      }),
      { numRuns: 30 },
    );
  });

  it('is undone by its inverse, keeps distances, and has the hand of its flips', () => {
    fc.assert(
      fc.property(anyOutline, anyPoint, anyPoint, anyPoint, (outline, p, q, r) => {
        const view = mouldView({ ...way, outline });
        expect(view.toDrawing(view.toForm(p))).toEqual(p);
        const [fp, fq, fr] = [view.toForm(p), view.toForm(q), view.toForm(r)] as const;
        expect(Math.hypot(fp[0] - fq[0], fp[1] - fq[1])).toBeCloseTo(Math.hypot(p[0] - q[0], p[1] - q[1]), 8);
        // A mirrored panel shows: three points that turn one way as drawn turn the other way as seen from above.
        const drawn = turnOf(p, q, r);
        const inPlan = turnOf(view.toPlan(p), view.toPlan(q), view.toPlan(r));
        expect(inPlan + 0).toBe((way.drawnFace === way.faceDown ? -drawn : drawn) + 0);
        const isReversed = way.datum === 'bottom-right' || way.datum === 'top-left';
        expect(turnOf(fp, fq, fr) + 0).toBe((isReversed ? -inPlan : inPlan) + 0);
        expect(view.isMirrored).toBe(way.drawnFace === way.faceDown);
        expect(view.isHandReversed).toBe(isReversed);
      }),
      { numRuns: 30 },
    );
  });

  it('lies against both sides of the datum corner, and gives no negative zero', () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        const view = mouldView({ ...way, outline });
        const xs = view.outline.map(([x]) => x);
        const ys = view.outline.map(([, y]) => y);
        expect([Math.min(...xs), Math.max(...xs)]).toEqual([0, view.length]);
        expect([Math.min(...ys), Math.max(...ys)]).toEqual([0, view.width]);
        expect(view.turnVector([0, 0])).toEqual([0, 0]);
      }),
      { numRuns: 20 },
    );
  });

  it('turns a vector as it turns its ends, and a direction likewise', () => {
    fc.assert(
      fc.property(anyOutline, anyPoint, fc.integer({ min: -360, max: 720 }), (outline, from, degrees) => {
        const view = mouldView({ ...way, outline });
        const angle = (degrees * Math.PI) / 180;
        const vector: Point = [100 * Math.cos(angle), 100 * Math.sin(angle)];
        const [x0, y0] = view.toPlan(from);
        const [x1, y1] = view.toPlan([from[0] + vector[0], from[1] + vector[1]]);
        const [vx, vy] = view.turnVector(vector);
        expect(vx).toBeCloseTo(x1 - x0, 8);
        expect(vy).toBeCloseTo(y1 - y0, 8);
        const turned = view.turnDirection(degrees);
        expect(turned).toBeGreaterThanOrEqual(0);
        expect(turned).toBeLessThan(360);
        expect(100 * Math.cos((turned * Math.PI) / 180)).toBeCloseTo(vx, 8);
        expect(100 * Math.sin((turned * Math.PI) / 180)).toBeCloseTo(vy, 8);
      }),
      { numRuns: 20 },
    );
  });
});

describe('laying a panel twice', () => {
  it('gives the drawing back when it is mirrored twice', () => {
    fc.assert(
      fc.property(anyOutline, anyPoint, (outline, at) => {
        const way = { drawnFace: 'outside', faceDown: 'outside', turn: 0, datum: 'bottom-left' } as const;
        const once = mouldView({ ...way, outline });
        const twice = mouldView({ ...way, outline: outline.map(once.toPlan) });
        const plain = mouldView({ ...way, faceDown: 'inside', outline });
        expect(twice.toPlan(once.toPlan(at))).toEqual(plain.toPlan(at));
      }),
    );
  });

  it('gives the drawing back after four quarter turns', () => {
    fc.assert(
      fc.property(anyOutline, anyPoint, (outline, at) => {
        const quarter = (corners: readonly Point[]) =>
          mouldView({ drawnFace: 'outside', faceDown: 'inside', turn: 90, datum: 'bottom-left', outline: corners });
        let corners = outline;
        let point = at;
        for (let k = 0; k < 4; k += 1) {
          const view = quarter(corners);
          point = view.toPlan(point);
          corners = corners.map(view.toPlan);
        }
        const still = mouldView({
          drawnFace: 'outside',
          faceDown: 'inside',
          turn: 0,
          datum: 'bottom-left',
          outline,
        });
        expect(point).toEqual(still.toPlan(at));
      }),
    );
  });
});
