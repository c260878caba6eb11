import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, doBoxesOverlap, growBox } from '../../src/drawing/boxes.ts';
import {
  type LabelPlace,
  type LabelSurroundings,
  type LabelWish,
  placeLabels,
} from '../../src/drawing/label-places.ts';
import { doesSegmentMeetBox, doSegmentsCross } from '../../src/drawing/segments.ts';

const open: LabelSurroundings = { frame: { x: 0, y: 0, width: 360, height: 200 }, obstacles: [], lines: [], gap: 1 };

const wish = (x: number, y: number, width = 16, height = 4): LabelWish => ({
  anchor: [x, y],
  radius: 2,
  width,
  height,
});

/** Spread evenly, in hundredths of a mm: fast-check's own doubles are nearly all next to their limits. */
const length = (min: number, max: number) =>
  fc.integer({ min: 100 * min, max: 100 * max }).map((hundredths) => hundredths / 100);
const point = fc.tuple(length(5, 355), length(5, 195));
const wishes = fc
  .array(fc.tuple(point, length(6, 26)), { maxLength: 50 })
  .map((list) => list.map(([[x, y], width]) => wish(x, y, width)));
const box = fc
  .tuple(point, length(1, 80), length(1, 60))
  .map(([[x, y], width, height]): Box => ({ x, y, width, height }));
const surroundings = fc
  .tuple(fc.array(box, { maxLength: 4 }), fc.array(fc.tuple(point, point), { maxLength: 6 }))
  .map(([obstacles, lines]): LabelSurroundings => ({ ...open, obstacles, lines }));

/** Points along a segment, its ends left out: what an eye sees, without the code that is tested. */
function sample([from, to]: readonly [readonly [number, number], readonly [number, number]]) {
  return Array.from({ length: 99 }, (_, k): [number, number] => {
    const share = (k + 1) / 100;
    return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  });
}

const holds = ({ x, y, width, height }: Box, [px, py]: readonly [number, number]) =>
  px > x + 1e-6 && px < x + width - 1e-6 && py > y + 1e-6 && py < y + height - 1e-6;

const found = (places: readonly (LabelPlace | null)[]) => places.filter((place) => place !== null);

describe('places of labels', () => {
  it('lie on nothing: no other label, obstacle, line, anchor, and inside the frame; no leader runs through a label', () => {
    fc.assert(
      fc.property(wishes, surroundings, (list, around) => {
        const places = placeLabels(list, around);
        expect(places.length).toBe(list.length);
        const set = found(places);
        for (const [k, place] of set.entries()) {
          const { x, y, width, height } = place.box;
          expect(x >= 0 && y >= 0 && x + width <= 360 && y + height <= 200).toBe(true);
          for (const other of set.slice(k + 1)) {
            // With the gap between them.
            expect(doBoxesOverlap(growBox(place.box, 0.49), growBox(other.box, 0.49))).toBe(false);
          }
          for (const obstacle of around.obstacles) expect(doBoxesOverlap(place.box, obstacle)).toBe(false);
          for (const line of around.lines) for (const at of sample(line)) expect(holds(place.box, at)).toBe(false);
          for (const { anchor } of list) {
            const dx = Math.max(x - anchor[0], 0, anchor[0] - x - width);
            const dy = Math.max(y - anchor[1], 0, anchor[1] - y - height);
            expect(Math.hypot(dx, dy)).toBeGreaterThanOrEqual(2 - 1e-9);
          }
          if (place.leader === null) continue;
          for (const at of sample(place.leader)) for (const other of set) expect(holds(other.box, at)).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('keep the size of their label, and end their leader at the rim of what it names', () => {
    fc.assert(
      fc.property(wishes, (list) => {
        for (const [k, place] of placeLabels(list, open).entries()) {
          if (place === null) continue;
          expect([place.box.width, place.box.height]).toEqual([list[k]!.width, list[k]!.height]);
          const [x, y] = list[k]!.anchor;
          if (place.leader !== null)
            expect(Math.hypot(place.leader[0][0] - x, place.leader[0][1] - y)).toBeCloseTo(2, 9);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('are the same for the same input', () => {
    fc.assert(
      fc.property(wishes, surroundings, (list, around) => {
        expect(placeLabels(list, around)).toEqual(placeLabels(list, around));
      }),
      { numRuns: 10 },
    );
  });

  it('are right beside the anchor where there is room, up and toward greater x', () => {
    const [place] = placeLabels([wish(100, 100)], open);
    // Radius 2 and gap 1 at 45°: 3 × 0.7071 = 2.1213 each way, worked by hand.
    expect(place!.box.x).toBeCloseTo(102.1213, 4);
    expect(place!.box.y).toBeCloseTo(102.1213, 4);
    expect(place!.leader).toBeNull();
  });

  it('give way to an opening above and a wall beside, without a leader while one is not needed', () => {
    const obstacles = [{ x: 60, y: 101, width: 100, height: 50 }];
    const [place] = placeLabels([wish(100, 100)], { ...open, obstacles });
    expect(place!.leader).toBeNull();
    expect(place!.box.y + place!.box.height).toBeLessThanOrEqual(101);
  });

  it('get a leader where there is no room beside', () => {
    const ring = Array.from({ length: 12 }, (_, k) => wish(100 + 9 * Math.cos(k / 1.91), 100 + 9 * Math.sin(k / 1.91)));
    const places = placeLabels([wish(100, 100), ...ring], open);
    expect(places[0]!.leader).not.toBeNull();
    expect(found(places).length).toBe(13);
  });

  it('are all found for two dozen inserts of a wall, and no leaders cross', () => {
    const list = Array.from({ length: 24 }, (_, k) => wish(20 + 14 * k, 40 + 45 * (k % 3) + (k % 4), 20));
    const places = placeLabels(list, open);
    expect(places.every((place) => place !== null)).toBe(true);
    const leaders = found(places).flatMap(({ leader }) => (leader === null ? [] : [leader]));
    for (const [k, a] of leaders.entries())
      for (const b of leaders.slice(k + 1)) expect(doSegmentsCross(...a, ...b)).toBe(false);
  });

  it('are null, never bad, where there is no room at all', () => {
    const frame = { x: 90, y: 90, width: 20, height: 20 };
    expect(placeLabels([wish(100, 100, 30)], { ...open, frame })).toEqual([null]);
    const tight = placeLabels(
      [wish(100, 100, 18), wish(100, 99, 18), wish(100, 101, 18), wish(101, 100, 18), wish(99, 100, 18)],
      {
        ...open,
        frame,
      },
    );
    expect(found(tight).length).toBeGreaterThan(0);
    expect(found(tight).length).toBeLessThan(5);
  });
});

describe('segments', () => {
  const at = { x: 10, y: 10, width: 4, height: 2 };

  it('meet a box through it, into it or inside it, not beside it or along its rim', () => {
    for (const [from, to] of [
      [
        [0, 11],
        [20, 11],
      ],
      [
        [12, 0],
        [12, 20],
      ],
      [
        [0, 0],
        [12, 11],
      ],
      [
        [11, 11],
        [13, 11],
      ],
      [
        [9, 9],
        [15, 13],
      ],
    ] as const)
      expect(doesSegmentMeetBox(from, to, at)).toBe(true);
    for (const [from, to] of [
      [
        [0, 13],
        [20, 13],
      ],
      [
        [0, 10],
        [20, 10],
      ],
      [
        [14, 0],
        [14, 20],
      ],
      [
        [8, 11],
        [12, 15],
      ],
      [
        [0, 0],
        [9, 9],
      ],
    ] as const)
      expect(doesSegmentMeetBox(from, to, at)).toBe(false);
  });

  it('cross inside both only', () => {
    expect(doSegmentsCross([0, 0], [4, 4], [0, 4], [4, 0])).toBe(true);
    expect(doSegmentsCross([0, 0], [4, 4], [4, 4], [8, 0])).toBe(false);
    expect(doSegmentsCross([0, 0], [4, 4], [0, 1], [4, 5])).toBe(false);
    expect(doSegmentsCross([0, 0], [1, 1], [0, 4], [4, 0])).toBe(false);
  });
});
