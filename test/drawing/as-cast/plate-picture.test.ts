import { describe, expect, it } from 'vitest';
import { findHoleRooms, findTightest } from '../../../src/assess/as-cast/hole-rooms.ts';
import { clipArea } from '../../../src/drawing/as-cast/clip-area.ts';
import { drawPlateAsCast } from '../../../src/drawing/as-cast/plate-picture.ts';
import { boxOfMarks } from '../../../src/drawing/boxes.ts';
import { findPlate } from '../../../src/web/pieces/as-cast/plate-subject.ts';
import { castOf, connectionOf, reportOff } from '../../assess/as-cast/casts.ts';

const ROOM = { width: 150, height: 92, text: 5.4 };
const write = (mm: number) => `${mm.toFixed(1)} mm`;
const ground = castOf('P01').sample;

/** The connection of inserts 13 and 14 with one of them off. */
const off = () => connectionOf(reportOff('P01', { 13: { dx: 12, dy: 5 } }), 'C03');

describe('the room of bolts in their holes', () => {
  it('is what the hole leaves less how far the bolt stands aside', () => {
    const found = off();
    const plate = findPlate(ground, found, null)!;
    const rooms = findHoleRooms(plate.panel, plate.fixed, plate.holes, plate.members);
    const of = (number: number) => rooms.find(({ member }) => member.item.number === number)!;
    const slack = (of(14).hole.diameter_mm - of(14).boltDiameter) / 2;
    expect(of(14).room).toBeCloseTo(slack, 9);
    // 12 and 5 mm aside are 13 mm.
    expect(of(13).room).toBeCloseTo(slack - 13, 9);
    expect(findTightest(rooms)).toBe(of(13));
  });

  it('of a slot is used up where its straight part ends', () => {
    const plate = findPlate(ground, off(), null)!;
    const holes = plate.holes.map((hole) => ({ ...hole, slot_mm: 20, slotAngle_deg: 0 }));
    const rooms = findHoleRooms(plate.panel, plate.fixed, holes, plate.members);
    const one = rooms.find(({ member }) => member.item.number === 13)!;
    // 12 mm along it are 2 mm beyond 10 mm, 5 mm across.
    expect(one.room).toBeCloseTo((one.hole.diameter_mm - one.boltDiameter) / 2 - Math.hypot(2, 5), 9);
  });

  it('is the same that the remedy tells, where the plate was moved', () => {
    const found = off();
    for (const remedy of found.remedies.filter(({ clearance }) => clearance !== null)) {
      const plate = findPlate(ground, found, remedy)!;
      const used = plate.members.filter(({ item }) => !plate.unused.has(item.castIn.key));
      const least = findTightest(findHoleRooms(plate.panel, plate.fixed, plate.holes, used));
      expect(least!.room).toBeCloseTo(remedy.clearance!.margin, 6);
    }
  });
});

describe('the plate as cast', () => {
  it('has every bolt, crosses those that do not go in, and says how much is missing', () => {
    const found = off();
    const { marks } = drawPlateAsCast(findPlate(ground, found, null)!, ROOM, write);
    const bolts = marks.filter((mark) => mark.kind === 'circle');
    expect(bolts.map((mark) => (mark.kind === 'circle' ? mark.fill : ''))).toEqual(
      expect.arrayContaining(['black', 'white']),
    );
    const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(texts.some((text) => /^\d: 12\.0 mm missing$/.test(text))).toBe(true);
  });

  it('stays in its room, and shows a side of the concrete that is near', () => {
    const found = off();
    const drawing = drawPlateAsCast(findPlate(ground, found, null)!, ROOM, write);
    const box = boxOfMarks(drawing.marks)!;
    expect(box.x).toBeGreaterThanOrEqual(-1e-6);
    expect(box.y).toBeGreaterThanOrEqual(-1e-6);
    expect(box.x + box.width).toBeLessThanOrEqual(ROOM.width + 1e-6);
    expect(box.y + box.height).toBeLessThanOrEqual(ROOM.height + 1e-6);
  });
});

describe('a polygon cut at a box', () => {
  const box = { x: 0, y: 0, width: 10, height: 10 };

  it('keeps what lies inside, cuts what sticks out, and leaves nothing of what lies outside', () => {
    const inside = [
      [1, 1],
      [4, 1],
      [4, 4],
    ] as const;
    expect(clipArea(inside, box)).toEqual(inside);
    expect(
      clipArea(
        [
          [5, 5],
          [15, 5],
          [15, 8],
          [5, 8],
        ],
        box,
      ),
    ).toEqual([
      [5, 5],
      [10, 5],
      [10, 8],
      [5, 8],
    ]);
    expect(
      clipArea(
        [
          [20, 20],
          [30, 20],
          [30, 30],
        ],
        box,
      ),
    ).toEqual([]);
  });
});
