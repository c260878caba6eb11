import type { WorkedConnection } from '../../assess/assess-connection.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { type Box, boxAround, doBoxesOverlap, growBox, textCorners } from '../boxes.ts';
import { clipRing } from '../detail/clip.ts';
import type { Drawing, Mark, TextMark } from '../drawing.ts';
import { drawArea, drawCircle, drawLine, drawPath, drawText } from '../marks.ts';
import { circleRing } from '../place.ts';
import { type ConnectionSketch, listNearestSides } from '../sketch/connection-sketch.ts';
import { clipArea } from './clip-area.ts';
import type { PictureRoom } from './deviation-picture.ts';

/** An insert of the sketch: where it was drawn and where it is, from the front of its face [mm]. */
export interface SketchedPlace {
  readonly number: number;
  readonly designed: Point;
  readonly found: Point;
}

/** Ticks of dimensions, and around texts [mm of paper]. */
const TICK = 1.1;
const GAP = 0.9;
/** Rings on paper are seen from here on [mm]. */
const LEAST_RADIUS = 1.2;
/** The two edges that matter. */
const EDGES = 2;

function placeTexts(wishes: readonly (readonly TextMark[])[], frame: Box, taken: readonly Box[]): readonly TextMark[] {
  const used = [...taken];
  return wishes.flatMap((places) => {
    const boxOf = (mark: TextMark) => boxAround(textCorners(mark));
    const isInside = ({ x, y, width, height }: Box) =>
      x >= frame.x && y >= frame.y && x + width <= frame.x + frame.width && y + height <= frame.y + frame.height;
    const free = places.find((mark) => {
      const box = boxOf(mark);
      return isInside(box) && !used.some((one) => doBoxesOverlap(box, one));
    });
    if (free === undefined) return [];
    used.push(growBox(boxOf(free), 0.3));
    return [free];
  });
}

/** Around a point, in the order in which a text is best put there. */
function placesAround([x, y]: Point, reach: number, text: string, size: number, weight: 'plain' | 'bold'): TextMark[] {
  const at = (dx: number, dy: number, align: TextMark['align'], baseline: TextMark['baseline']) =>
    drawText([x + dx, y + dy], text, size, { align, baseline, weight });
  return [
    at(reach, reach * 0.6, 'start', 'bottom'),
    at(-reach, reach * 0.6, 'end', 'bottom'),
    at(reach, -reach * 0.6, 'start', 'top'),
    at(-reach, -reach * 0.6, 'end', 'top'),
    at(0, reach + 0.5, 'middle', 'bottom'),
    at(0, -reach - 0.5, 'middle', 'top'),
  ];
}

/**
 * A connection as it came out, to scale, from the front of its face: inserts solid where they are, dashed where they were drawn, its plate thin, and how far the two nearest sides of the
 * concrete are.
 * @param write a length for people
 */
export function drawNonConformanceSketch(
  sketch: ConnectionSketch,
  worked: WorkedConnection,
  places: readonly SketchedPlace[],
  room: PictureRoom,
  write: (mm: number) => string,
): Drawing {
  const edges = listNearestSides(worked).slice(0, EDGES);
  const inPlace = places.flatMap(({ designed, found }) => [designed, found]);
  const shown = growBox(
    boxAround([...inPlace, ...(sketch.plate ?? []), ...edges.flatMap(({ from, to }) => [from, to])]),
    30,
  );
  const scale = Math.min(room.width / shown.width, room.height / shown.height);
  const put = ([x, y]: Point): Point => [
    room.width / 2 + (x - shown.x - shown.width / 2) * scale,
    room.height / 2 + (y - shown.y - shown.height / 2) * scale,
  ];
  const frame: Box = { x: 0, y: 0, width: room.width, height: room.height };
  const rings = [...(sketch.outline === null ? [] : [sketch.outline]), ...sketch.openings].map((ring) => ring.map(put));
  const concrete = rings.map((ring) => clipArea(ring, frame)).filter((ring) => ring.length > 2);
  const radiusOf = (diameter: number) => Math.max(LEAST_RADIUS, (diameter / 2) * scale);
  const body = sketch.inserts[0]?.body ?? 0;
  const foot = sketch.inserts[0]?.foot ?? body;
  const tick = ([x, y]: Point) => drawLine('dimension', [x - TICK, y - TICK], [x + TICK, y + TICK], 'medium');
  const dimensions = edges.map(({ from, to, length }) => ({ from: put(from), to: put(to), length }));
  const marks: readonly Mark[] = [
    ...(concrete.length === 0
      ? [
          drawArea('section', null, 'light', [
            [0, 0],
            [room.width, 0],
            [room.width, room.height],
            [0, room.height],
          ]),
        ]
      : [drawArea('section', null, 'light', ...concrete)]),
    ...rings.flatMap((ring) => clipRing(ring, frame)).map(([from, to]) => drawLine('outline', from, to, 'thick')),
    ...(sketch.plate === null ? [] : [drawPath('section', sketch.plate.map(put), 'thin', true)]),
    ...places.map(({ designed }) => drawPath('insert', circleRing(put(designed), radiusOf(foot)), 'dashed', true)),
    ...places.flatMap(({ found }): Mark[] => [
      drawCircle('insert', 'thin', 'none', put(found), radiusOf(foot)),
      drawCircle('insert', null, 'black', put(found), radiusOf(body)),
    ]),
    ...dimensions.flatMap(({ from, to }): Mark[] => [drawLine('dimension', from, to, 'thin'), tick(from), tick(to)]),
  ];
  const taken = places.map(({ found }): Box => {
    const [x, y] = put(found);
    const r = radiusOf(body);
    return { x: x - r, y: y - r, width: 2 * r, height: 2 * r };
  });
  const texts = placeTexts(
    [
      ...dimensions.map(({ from, to, length }) => {
        const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
        return placesAround(middle, GAP, write(length), room.text, 'plain');
      }),
      ...places.map(({ number, found }) =>
        placesAround(put(found), radiusOf(foot) * 0.75 + GAP, String(number), room.text, 'bold'),
      ),
    ],
    frame,
    taken,
  );
  return { width: room.width, height: room.height, marks: [...marks, ...texts] };
}
