import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/engine/geometry/point.ts';
import { panel as panelSchema } from '../../src/job/documents/panel.ts';
import { frameOf, placeInPlate, placeOnFace, turnVector } from '../../src/job/face-frame.ts';
import { samplePanel } from './sample-job.ts';

type Vector = readonly [number, number, number];

const outlines = {
  counterClockwise: [
    [0, 0],
    [4000, 0],
    [4000, 3000],
    [0, 2000],
  ],
  clockwise: [
    [0, 2000],
    [4000, 3000],
    [4000, 0],
    [0, 0],
  ],
} as const;

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/**
 * A second way, in space: x and y of the drawn face, z toward the one who looks at the drawn face (the drawn face at z = 0, the far
 * face at z = −180). Where a position of the document lies, and which way its face looks.
 */
function inSpace(
  drawnFace: string,
  outline: readonly Point[],
  face: string,
  edge: number,
  at: Point,
): { place: Vector; normal: Vector } {
  if (face !== 'edge') {
    return face === drawnFace
      ? { place: [at[0], at[1], 0], normal: [0, 0, 1] }
      : { place: [at[0], at[1], -180], normal: [0, 0, -1] };
  }
  const [ax, ay] = outline[edge]!;
  const [bx, by] = outline[(edge + 1) % outline.length]!;
  const length = Math.hypot(bx - ax, by - ay);
  const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
  const z = drawnFace === 'outside' ? -at[1] : at[1] - 180;
  const middle: Point = [2000, 1200];
  const side = (middle[0] - ax) * uy - (middle[1] - ay) * ux;
  const outward: Vector = side < 0 ? [uy, -ux, 0] : [-uy, ux, 0];
  return { place: [ax + ux * at[0], ay + uy * at[0], z], normal: outward };
}

describe('frames of faces', () => {
  it.each(
    (['outside', 'inside'] as const).flatMap((drawnFace) =>
      (['counterClockwise', 'clockwise'] as const).flatMap((turning) =>
        (['outside', 'inside', 'edge'] as const).map((face) => ({ drawnFace, turning, face })),
      ),
    ),
  )(
    'drawn $drawnFace, $turning, $face: right-handed as one stands in front, and true to length',
    ({ drawnFace, turning, face }) => {
      const outline = outlines[turning];
      const panel = panelSchema.parse(samplePanel({ drawnFace, outline_mm: outline }));
      for (const edge of face === 'edge' ? [0, 1, 2, 3] : [0]) {
        const { toFace } = frameOf(panel, { face, edge: face === 'edge' ? edge : null });
        const documentPoints: Point[] = [
          [300, 40],
          [700, 40],
          [300, 90],
        ];
        const [o, a, b] = documentPoints.map((p) => inSpace(drawnFace, outline, face, edge, p).place) as [
          Vector,
          Vector,
          Vector,
        ]; // safe: three points in, three out
        const { normal } = inSpace(drawnFace, outline, face, edge, documentPoints[0]!);
        const [fo, fa, fb] = documentPoints.map(toFace) as [Point, Point, Point]; // safe: as above
        const spaceTurn = dot(cross(minus(a, o), minus(b, o)), normal);
        const faceTurn = (fa[0] - fo[0]) * (fb[1] - fo[1]) - (fa[1] - fo[1]) * (fb[0] - fo[0]);
        expect(faceTurn).toBeCloseTo(spaceTurn, 6);
        expect(Math.hypot(fa[0] - fo[0], fa[1] - fo[1])).toBeCloseTo(400, 9);
      }
    },
  );

  // By hand: extent 0 to 4000, so x = 900 of the drawn face is 4000 − 900 = 3100 from the left as seen from the other side.
  it('mirrors the face that is not drawn left to right within the extent of the panel', () => {
    const panel = panelSchema.parse(samplePanel());
    const { toFace, isMirrored } = frameOf(panel, { face: 'inside', edge: null });
    expect(toFace([900, 500])).toEqual([3100, 500]);
    expect(isMirrored).toBe(true);
  });
  // By hand: bottom edge (0), drawn from outside, thickness 180: 60 mm from outside is 120 mm from the far face, upward as the drawn face is up.
  it('lays an edge down with the drawn face upward', () => {
    const panel = panelSchema.parse(samplePanel());
    expect(frameOf(panel, { face: 'edge', edge: 0 }).toFace([300, 60])).toEqual([300, 120]);
    const fromInside = panelSchema.parse(samplePanel({ drawnFace: 'inside' }));
    expect(frameOf(fromInside, { face: 'edge', edge: 0 }).toFace([300, 60])).toEqual([300, 60]);
    const clockwise = panelSchema.parse(samplePanel({ outline_mm: outlines.clockwise }));
    // Edge 2 of the clockwise outline runs from (4000, 0) to (0, 0), from right to left as seen: x = 4000 − 300.
    expect(frameOf(clockwise, { face: 'edge', edge: 2 }).toFace([300, 60])).toEqual([3700, 120]);
  });
  it('refuses an edge without its number', () => {
    expect(() => frameOf(panelSchema.parse(samplePanel()), { face: 'edge', edge: null })).toThrow(/number of its edge/);
  });

  it('turns quarter turns exactly and others counter-clockwise', () => {
    expect([0, 90, 180, 270, -90, 450].map((turn) => turnVector([3, 4], turn).map((v) => v + 0))).toEqual([
      [3, 4],
      [-4, 3],
      [-3, -4],
      [4, -3],
      [4, -3],
      [-4, 3],
    ]);
    const [x, y] = turnVector([2, 0], 30);
    expect([x, y]).toEqual([expect.closeTo(Math.sqrt(3), 12), expect.closeTo(1, 12)]);
  });

  it('places in the plate what it placed on the face, on any face', () => {
    const coordinate = fc.double({ min: -5000, max: 5000, noNaN: true });
    const panel = panelSchema.parse(samplePanel({ outline_mm: outlines.clockwise }));
    fc.assert(
      fc.property(
        fc.constantFrom('outside', 'inside', 'edge'),
        fc.tuple(coordinate, coordinate),
        fc.tuple(coordinate, coordinate),
        fc.double({ min: -720, max: 720, noNaN: true }),
        (face, origin, local, turn) => {
          const frame = frameOf(panel, { face, edge: face === 'edge' ? 1 : null });
          const back = placeInPlate(frame, origin, turn, placeOnFace(frame, origin, turn, local));
          expect(Math.hypot(back[0] - local[0], back[1] - local[1])).toBeLessThan(1e-8);
        },
      ),
    );
  });
});
