import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layBars } from '../../src/assess/set-out/lay-bars.ts';
import { drawConnectionDetail } from '../../src/drawing/connection-detail.ts';
import { clipRing, clipSegment } from '../../src/drawing/detail/clip.ts';
import { findDetailView, listMembers } from '../../src/drawing/detail/detail-view.ts';
import { layPlate } from '../../src/drawing/detail/plate-in-plan.ts';
import type { Mark } from '../../src/drawing/drawing.ts';
import { DrawingError } from '../../src/drawing/drawing-error.ts';
import { writeSigned } from '../../src/drawing/sheets/words.ts';
import type { Point } from '../../src/engine/geometry/point.ts';
import { type DetailSample, ELL, GABLE, sampleGroup } from './detail-sample.ts';
import { findOverhang, findOverlaps, listTexts, textOf } from './picture-checks.ts';

const ROOM = { width: 128, height: 113 };

const faces = ['outside', 'inside'] as const;
const lies = faces.flatMap((drawnFace) =>
  faces.flatMap((faceDown) =>
    ([0, 90, 180, 270] as const).flatMap((turn_deg) =>
      (['bottom-left', 'bottom-right', 'top-left', 'top-right'] as const).map((datum) => ({
        drawnFace,
        faceDown,
        inForm: { turn_deg, datum },
      })),
    ),
  ),
);

/** Three inserts in an L: no turn or mirror makes it itself. */
const L: readonly Point[] = [
  [700, 500],
  [950, 500],
  [700, 620],
];
const ON_EDGE: readonly Point[] = [
  [700, 60],
  [950, 60],
  [700, 110],
];

function draw({ setOut, group }: DetailSample, room = ROOM) {
  return drawConnectionDetail(setOut, group, layBars(setOut.panel), room);
}

/** Middles of what is drawn of each insert, in the order of the group. */
function readInserts(marks: readonly Mark[]): readonly Point[] {
  return marks.flatMap((mark): Point[] => {
    if (mark.kind === 'symbol') return [mark.at];
    return mark.kind === 'circle' && mark.layer === 'insert' && mark.fill === 'white' ? [mark.at] : [];
  });
}

/** Where the middle lines cross. */
function readCentre(marks: readonly Mark[]): Point {
  const lines = marks.filter((mark) => mark.kind === 'line' && mark.layer === 'dimension' && mark.pen === 'dash-dot');
  const [level, upright] = lines;
  if (level?.kind !== 'line' || upright?.kind !== 'line') throw new Error('two middle lines are expected');
  return [upright.from[0], level.from[1]];
}

/** Where the arrow to the datum corner looks, as a unit vector. */
function readArrow(marks: readonly Mark[]): Point {
  const stem = marks.find((mark) => mark.kind === 'line' && mark.layer === 'datum')!;
  if (stem.kind !== 'line') throw new Error('the arrow has a stem');
  const [x, y] = [stem.to[0] - stem.from[0], stem.to[1] - stem.from[1]];
  return [x / Math.hypot(x, y), y / Math.hypot(x, y)];
}

/** Direction across the view of one who stands inside the form and looks out at a side: sight × up. */
function handOf(inward: Point): Point {
  const sight = [-inward[0], -inward[1], 0] as const;
  const up = [0, 0, 1] as const;
  return [sight[1] * up[2] - sight[2] * up[1], sight[2] * up[0] - sight[0] * up[2]];
}

describe('the detail of a connection, seen from above', () => {
  it.each(lies)('lies as the panel does: $drawnFace drawn, $faceDown down, $inForm', (lie) => {
    const sample = sampleGroup(L, { face: 'outside' }, { panel: lie });
    const { marks, scale } = draw(sample);
    const members = listMembers(sample.setOut, sample.group);
    const [first] = members;
    const drawn = readInserts(marks);
    const centre = readCentre(marks);
    const corner = lie.inForm.datum;
    const away: Point = [corner.endsWith('left') ? 1 : -1, corner.startsWith('bottom') ? 1 : -1];
    for (const [k, { item, dx, dy }] of members.entries()) {
      const at = drawn[k]!;
      // From insert to insert as in the plan, at the scale.
      expect((at[0] - drawn[0]![0]) * scale).toBeCloseTo(item.plan[0] - first!.item.plan[0], 6);
      expect((at[1] - drawn[0]![1]) * scale).toBeCloseTo(item.plan[1] - first!.item.plan[1], 6);
      // Figures count from the middle, positive away from the datum corner; printed ones are whole mm.
      expect(Math.abs((at[0] - centre[0]) * scale * away[0] - dx)).toBeLessThanOrEqual(0.5 + 1e-6);
      expect(Math.abs((at[1] - centre[1]) * scale * away[1] - dy)).toBeLessThanOrEqual(0.5 + 1e-6);
      expect(textOf(marks).split('\n')).toContain(writeSigned(dx));
      expect(textOf(marks).split('\n')).toContain(writeSigned(dy));
    }
    const arrow = readArrow(marks);
    expect([Math.sign(arrow[0]), Math.sign(arrow[1])]).toEqual([-away[0], -away[1]]);
    const isMirrored = lie.drawnFace === lie.faceDown;
    expect(textOf(marks)).toContain(isMirrored ? 'MIRROR IMAGE of the drawing' : 'same hand as the drawing');
  });

  it('says where the middle is, by end and rail, and the diagonal to check by', () => {
    // Worked by hand: drawn from the outside, outside down: x becomes 5200 − x. Inserts at x 4250 and 4500, y 500 and 620: 4375, 560 between them.
    const words = textOf(draw(sampleGroup(L, { face: 'outside' })).marks);
    expect(words).toContain('centre: 4375 from fixed stop end, 560 from wall rail');
    // √(250² + 120²) = 277.3.
    expect(words).toMatch(/check diagonal \d to \d: 277/);
    expect(words).toContain('mould face – OUTSIDE, seen from above');
    expect(words).toContain('to the datum corner: fixed stop end / wall rail');
  });

  it('numbers every insert beside it', () => {
    const { marks } = draw(sampleGroup(L, { face: 'inside' }));
    const bold = listTexts(marks).filter(({ weight, layer }) => weight === 'bold' && layer === 'insert');
    expect(bold.map(({ text }) => text).sort()).toEqual(['1', '2', '3']);
  });

  it('tells the nearest bar, axis to axis: 15 mm worked by hand', () => {
    // Bars along x at y = 520 + 150 k: 20 from y = 500. Bars along y at x = 715 + 200 k: 15 from x = 700.
    const bar = { diameter_mm: 10, cover_mm: 40 };
    const reinforcement = {
      bars: [
        { ...bar, face: 'outside', direction_deg: 0, spacing_mm: 150, through_mm: [700, 520] },
        { ...bar, face: 'inside', direction_deg: 90, spacing_mm: 200, through_mm: [715, 520], kind: 'mesh' },
      ],
      edge: 'none',
      limitsCrackWidth: false,
    };
    const { marks } = draw(sampleGroup([[700, 500]], { face: 'outside' }, { panel: { reinforcement } }));
    expect(textOf(marks).replaceAll('\n', ' ')).toContain(
      'nearest to an insert: Ø10 mesh of the trowelled face, 15 from 1, axis to axis from above',
    );
    const bars = marks.filter(({ layer }) => layer === 'bar');
    expect(bars.length).toBeGreaterThan(2);
    expect(bars.length % 2).toBe(0);
  });

  it('draws the cross bar as long and as wide as it is, where the panel lies turned', () => {
    for (const [turn_deg, isUpright] of [
      [0, false],
      [90, true],
    ] as const) {
      const { marks, scale } = draw(
        sampleGroup(
          [[900, 500]],
          { face: 'outside' },
          {
            panel: { inForm: { turn_deg, datum: 'bottom-left' } },
            item: { crossBar: { diameter_mm: 12, length_mm: 80 } },
            castIn: { holding: 'WAY' },
          },
        ),
      );
      const bar = marks.find((mark) => mark.layer === 'bar' && mark.kind === 'area')!;
      if (bar.kind !== 'area') throw new Error('a cross bar is an area');
      const [xs, ys] = [0, 1].map((axis) => bar.rings[0]!.map((point) => point[axis]! * scale));
      const size = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
      expect(size(xs!)).toBeCloseTo(isUpright ? 12 : 80, 6);
      expect(size(ys!)).toBeCloseTo(isUpright ? 80 : 12, 6);
    }
  });
});

describe('the detail of a connection in an edge', () => {
  const outlines = { gable: GABLE, ell: ELL };
  const cases = lies.flatMap((lie) => [
    ...GABLE.map((_, edge) => ({ ...lie, shape: 'gable' as const, edge })),
    ...ELL.map((_, edge) => ({ ...lie, shape: 'ell' as const, edge })),
  ]);

  it.each(cases)(
    'is seen from inside the form: $drawnFace drawn, $faceDown down, $inForm, side $edge of the $shape',
    (lie) => {
      const { edge, shape, ...panel } = lie;
      const sample = sampleGroup(ON_EDGE, { face: 'edge', edge }, { panel: { ...panel, outline_mm: outlines[shape] } });
      const { marks, scale } = draw(sample);
      const members = listMembers(sample.setOut, sample.group);
      const hand = handOf(members[0]!.item.inward!);
      const [drawn, centre, arrow] = [readInserts(marks), readCentre(marks), readArrow(marks)];
      for (const [k, { item, dx, dy }] of members.entries()) {
        const [from, to] = [members[0]!.item, item];
        const along = (to.plan[0] - from.plan[0]) * hand[0] + (to.plan[1] - from.plan[1]) * hand[1];
        expect((drawn[k]![0] - drawn[0]![0]) * scale).toBeCloseTo(along, 6);
        expect((drawn[k]![1] - drawn[0]![1]) * scale).toBeCloseTo(to.aboveBed! - from.aboveBed!, 6);
        // What is printed counts from the corner that the arrow looks at.
        expect(Math.abs((drawn[k]![0] - centre[0]) * scale * -arrow[0] - dx)).toBeLessThanOrEqual(0.5 + 1e-6);
        expect(Math.abs((drawn[k]![1] - centre[1]) * scale - dy)).toBeLessThanOrEqual(0.5 + 1e-6);
      }
    },
  );

  it('has the fixed stop end to the hand that it is to: facing the wall rail, the end at x = 0 lies toward +x of the picture', () => {
    // Worked by hand: the wall rail is at y = 0, so one who stands in the form and faces it has x = 0 to the hand of the west.
    const { marks } = draw(sampleGroup(ON_EDGE, { face: 'edge', edge: 0 }));
    expect(readArrow(marks)).toEqual([1, expect.closeTo(0, 9)]);
    expect(textOf(marks)).toContain('to fixed stop end');
    expect(textOf(marks)).toContain('edge at wall rail, seen from inside the form');
    // Along 5200 − 700 and 5200 − 950: 4375 between them; 60 and 110: 85 above the bed.
    expect(textOf(marks)).toContain('centre: 4375 along, from fixed stop end; 85 above the bed');
  });

  it('stands on the bed, as thick as the panel', () => {
    const { marks, scale } = draw(sampleGroup(ON_EDGE, { face: 'edge', edge: 0 }));
    const levels = marks.flatMap((mark) =>
      mark.kind === 'line' && mark.layer === 'outline' && mark.from[1] === mark.to[1] ? [mark.from[1]] : [],
    );
    expect((Math.max(...levels) - Math.min(...levels)) * scale).toBeCloseTo(180, 6);
    const lowest = Math.min(...readInserts(marks).map(([, y]) => y));
    expect((lowest - Math.min(...levels)) * scale).toBeCloseTo(60, 6);
  });
});

describe('the plate of a connection, laid on the panel', () => {
  // A plate whose corners are the inserts themselves, in its own axes as one stands in front of the face.
  const plateOf = (places: readonly Point[], origin: Point, flip: readonly [1 | -1, 1 | -1]) =>
    places.map(([x, y]): Point => [flip[0] * (x - origin[0]), flip[1] * (y - origin[1])]);

  function compare(sample: DetailSample, outline: readonly Point[]): void {
    const laid = layPlate(sample.setOut, sample.group, sample.connection, { ...sample.fixture, outline_mm: outline });
    const view = findDetailView(sample.setOut, sample.group);
    const byId = new Map(sample.setOut.items.map((item) => [item.castIn.id, item]));
    for (const [k, corner] of laid.entries()) {
      const { plan, aboveBed } = byId.get(String(k + 1))!;
      const at = view.toView(plan, aboveBed);
      expect(corner[0]).toBeCloseTo(at[0], 6);
      expect(corner[1]).toBeCloseTo(at[1], 6);
    }
  }

  it.each(lies)('covers its inserts on either face and any edge: $drawnFace drawn, $faceDown down, $inForm', (lie) => {
    const origin: Point = [800, 540];
    for (const face of faces) {
      const sample = sampleGroup(L, { face }, { panel: lie, connection: { origin_mm: origin } });
      // The face that is not drawn is seen from its back in the drawing.
      compare(sample, plateOf(L, origin, [face === lie.drawnFace ? 1 : -1, 1]));
    }
    const onEdge: Point = [800, 80];
    for (const edge of [0, 1, 2, 3]) {
      const sample = sampleGroup(ON_EDGE, { face: 'edge', edge }, { panel: lie, connection: { origin_mm: onEdge } });
      // In front of an edge with the drawn face up: the outline runs counter-clockwise, so x along it; y toward the drawn face.
      compare(sample, plateOf(ON_EDGE, onEdge, [1, lie.drawnFace === 'inside' ? 1 : -1]));
    }
  });

  it('is drawn dashed and said to come later', () => {
    const sample = sampleGroup(L, { face: 'outside' }, { connection: { origin_mm: [800, 540] } });
    const plate = layPlate(sample.setOut, sample.group, sample.connection, sample.fixture);
    const { marks, scale } = drawConnectionDetail(sample.setOut, sample.group, [], ROOM, plate);
    const outline = marks.find(({ layer }) => layer === 'holding')!;
    if (outline.kind !== 'polyline') throw new Error('a plate is a closed line');
    const xs = outline.points.map(([x]) => x);
    expect((Math.max(...xs) - Math.min(...xs)) * scale).toBeCloseTo(300, 6);
    expect(outline.pen).toBe('dashed');
    expect(textOf(marks)).toContain('dashed: the plate, bolted on later');
  });
});

describe('any detail of a connection', () => {
  it('has no text on another and nothing outside (property)', () => {
    const cells = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 4 })), {
      minLength: 1,
      maxLength: 12,
      selector: ([x, y]) => `${x} ${y}`,
    });
    const edgeCells = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 1 })), {
      minLength: 1,
      maxLength: 8,
      selector: ([x, y]) => `${x} ${y}`,
    });
    const groups = fc.oneof(
      fc.record({ face: fc.constantFrom(...faces), cells }),
      fc.record({ face: fc.constant('edge' as const), cells: edgeCells }),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...lies),
        groups,
        fc.double({ min: 52, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (lie, group, pitch, off) => {
          const { face } = group;
          const points = group.cells.map(
            ([x, y]): Point => [100 + off + x * pitch, face === 'edge' ? 60 + off + y * 60 : 100 + off + y * pitch],
          );
          const sample = sampleGroup(points, face === 'edge' ? { face, edge: 0 } : { face }, { panel: lie });
          const room = { width: 128, height: 150 };
          const picture = draw(sample, room);
          expect(findOverlaps(picture.marks)).toEqual([]);
          expect(findOverhang(picture.marks, picture)).toBe(0);
          expect(picture.height).toBeLessThanOrEqual(room.height);
          expect(picture.width).toBeLessThanOrEqual(room.width);
          // No number is lost: each is at its insert or named in the words.
          const words = textOf(picture.marks);
          for (const { number } of sample.group.members)
            expect(words.split('\n').includes(String(number)) || words.includes('no room for the numbers')).toBe(true);
        },
      ),
      { numRuns: 100, seed: 11 },
    );
  });

  it('takes a larger scale in a larger room', () => {
    const sample = sampleGroup(L, { face: 'outside' });
    const scales = [100, 113, 156, 260].map((height) => draw(sample, { width: 200, height }).scale);
    expect(scales).toEqual([...scales].sort((a, b) => b - a));
    expect(new Set(scales).size).toBeGreaterThan(1);
  });

  it('says what does not fit and what to do', () => {
    const small = { width: 50, height: 40 };
    expect(() => draw(sampleGroup(L, { face: 'outside' }), small)).toThrow(DrawingError);
    expect(() => draw(sampleGroup(L, { face: 'outside' }), small)).toThrow(
      'the detail of connection C1 of panel P1 does not fit on 50 × 40 mm; expected a larger sheet',
    );
  });
});

describe('clipping to what is shown', () => {
  const box = { x: 0, y: 0, width: 10, height: 5 };

  it('keeps what is inside and cuts what leaves, worked by hand', () => {
    expect(clipSegment([1, 1], [9, 4], box)).toEqual([
      [1, 1],
      [9, 4],
    ]);
    expect(clipSegment([-10, 2], [20, 2], box)).toEqual([
      [0, 2],
      [10, 2],
    ]);
    expect(clipSegment([2, -5], [2, 20], box)).toEqual([
      [2, 0],
      [2, 5],
    ]);
    expect(clipSegment([-1, 6], [11, 6], box)).toBeNull();
    expect(clipSegment([-3, 3], [3, 9], box)).toBeNull();
    expect(clipRing(GABLE, box)).toHaveLength(2);
  });

  it('keeps exactly the points inside (property)', () => {
    const coordinate = fc.integer({ min: -20, max: 20 });
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        coordinate,
        coordinate,
        fc.integer({ min: 0, max: 40 }),
        (ax, ay, bx, by, k) => {
          fc.pre(ax !== bx || ay !== by);
          const share = k / 40;
          const [x, y] = [ax + share * (bx - ax), ay + share * (by - ay)];
          const isDeep = x > 1e-9 && x < 10 - 1e-9 && y > 1e-9 && y < 5 - 1e-9;
          const piece = clipSegment([ax, ay], [bx, by], box);
          const square = (bx - ax) ** 2 + (by - ay) ** 2;
          const shareOf = ([px, py]: Point) => ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / square;
          const isKept = piece !== null && share > shareOf(piece[0]) - 1e-9 && share < shareOf(piece[1]) + 1e-9;
          const isOut = x < -1e-9 || x > 10 + 1e-9 || y < -1e-9 || y > 5 + 1e-9;
          if (isDeep) expect(isKept).toBe(true);
          if (isOut) expect(isKept).toBe(false);
        },
      ),
      { numRuns: 500, seed: 3 },
    );
  });
});
