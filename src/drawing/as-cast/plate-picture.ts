import type { AsCastInsert } from '../../assess/as-cast/as-cast-report.ts';
import { findBoltDiameter, findHoleRooms, type HoleRoom, placeAsCast } from '../../assess/as-cast/hole-rooms.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { frameOf, panelSide, placeOnFace } from '../../job/face-frame.ts';
import { type Box, boxAround, boxOfMarks, growBox } from '../boxes.ts';
import { clipRing } from '../detail/clip.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { type LabelWish, placeLabels } from '../label-places.ts';
import { drawArea, drawCircle, drawLine, drawPath, drawText } from '../marks.ts';
import { circleRing } from '../place.ts';
import { ringOfHole } from '../sketch/hole-ring.ts';
import { ASCENT, DESCENT, measureText } from '../text-size.ts';
import { clipArea } from './clip-area.ts';
import type { PictureRoom } from './deviation-picture.ts';

/** A plate on its bolts as cast, as one stands in front of it. */
export interface PlateAsCast {
  readonly panel: Panel;
  /** As designed, and where the plate comes to lie: the same where it is not moved. */
  readonly designed: Connection;
  readonly fixed: Connection;
  readonly fixture: Fixture;
  /** Holes as they will be. */
  readonly holes: readonly FixtureHole[];
  readonly members: readonly AsCastInsert[];
  /** Without it holes are named alone: how much they lack is said elsewhere. */
  readonly hasLengths: boolean;
  /** Permanent keys of inserts that get no bolt. */
  readonly unused: ReadonlySet<string>;
}

/** Around plate and bolts [mm of paper]. */
const MARGIN = 4;
/** A change of a hole smaller than this is none [mm]. */
const SAME = 1e-6;

/** The concrete of the face, as one sees it. */
function listFaceRings(panel: Panel, connection: Connection): readonly (readonly Point[])[] {
  const { toFace } = frameOf(panel, connection);
  if (connection.face !== 'edge' || connection.edge === null)
    return [panel.outline_mm, ...panel.openings_mm].map((ring) => ring.map(toFace));
  const { length } = panelSide(panel, connection.edge);
  const { thickness_mm: t } = panel;
  const corners: readonly Point[] = [
    [0, 0],
    [length, 0],
    [length, t],
    [0, t],
  ];
  return [corners.map(toFace)];
}

function isChanged(hole: FixtureHole, fixture: Fixture): boolean {
  const before = fixture.holes.find(({ id }) => id === hole.id);
  if (before === undefined) return true;
  const [dx, dy] = [hole.at_mm[0] - before.at_mm[0], hole.at_mm[1] - before.at_mm[1]];
  return Math.hypot(dx, dy, hole.diameter_mm - before.diameter_mm, hole.slot_mm - before.slot_mm) > SAME;
}

/** A bolt: solid where it goes in, crossed out where it does not, an empty ring where none is put in. */
function drawBolt(at: Point, radius: number, is: 'in' | 'does not go in' | 'left out'): readonly Mark[] {
  if (is === 'left out') return [drawPath('insert', circleRing(at, radius), 'dashed', true)];
  if (is === 'in') return [drawCircle('insert', 'thin', 'black', at, radius)];
  const arm = radius + 1.2;
  return [
    drawCircle('insert', 'thick', 'white', at, radius),
    drawLine('insert', [at[0] - arm, at[1] - arm], [at[0] + arm, at[1] + arm], 'thick'),
    drawLine('insert', [at[0] - arm, at[1] + arm], [at[0] + arm, at[1] - arm], 'thick'),
  ];
}

/** A hole's name; of one that lacks room how much. */
function nameHole({ hole, room }: HoleRoom, isUsed: boolean, write: (mm: number) => string): string {
  return isUsed && room < -SAME ? `${hole.id}: ${write(-room)} missing` : hole.id;
}

function drawNames(
  names: readonly { readonly at: Point; readonly radius: number; readonly text: string; readonly isBold: boolean }[],
  room: PictureRoom,
  obstacles: readonly Box[],
): readonly Mark[] {
  const weightOf = (isBold: boolean) => (isBold ? 'bold' : 'plain');
  const wishes = names.map(
    ({ at, radius, text, isBold }): LabelWish => ({
      anchor: at,
      radius: radius + 0.6,
      width: measureText(text, room.text, weightOf(isBold)) + 0.6,
      height: (ASCENT + DESCENT) * room.text,
    }),
  );
  const frame: Box = growBox({ x: 0, y: 0, width: room.width, height: room.height }, -0.5);
  const places = placeLabels(wishes, { frame, obstacles, lines: [], gap: 0.4 });
  return names.flatMap(({ text, isBold }, i): readonly Mark[] => {
    const place = places[i] ?? null;
    if (place === null) return [];
    return [
      ...(place.leader === null ? [] : [drawLine('text', ...place.leader, 'hair')]),
      drawText([place.box.x + 0.3, place.box.y + DESCENT * room.text], text, room.text, { weight: weightOf(isBold) }),
    ];
  });
}

/**
 * A plate to scale on its bolts as cast, from the front of its face, x right and y up: the plate as it will be fixed grey, as designed dashed; holes that
 * are changed with a thick rim; bolts solid where they go in, crossed where they do not. Sides of the concrete where they are in sight.
 * @param write a length for people
 */
export function drawPlateAsCast(plate: PlateAsCast, room: PictureRoom, write: (mm: number) => string): Drawing {
  const { panel, designed, fixed, fixture, holes, members, unused, hasLengths } = plate;
  const frame = frameOf(panel, designed);
  const lay = (connection: Connection) => (at: Point) =>
    placeOnFace(frame, connection.origin_mm, connection.turn_deg, at);
  const onPlate = lay(fixed);
  const outline = fixture.outline_mm.map(onPlate);
  const before = fixture.outline_mm.map(lay(designed));
  const seats = members.map((member) => ({ member, at: frame.toFace(placeAsCast(member)) }));
  const box = boxAround([...outline, ...before, ...seats.map(({ at }) => at)]);
  const free = { width: room.width - 2 * MARGIN, height: room.height - 2 * MARGIN };
  const scale = Math.min(free.width / box.width, free.height / box.height);
  const put = ([x, y]: Point): Point => [
    room.width / 2 + (x - box.x - box.width / 2) * scale,
    room.height / 2 + (y - box.y - box.height / 2) * scale,
  ];
  const sheet: Box = { x: 0, y: 0, width: room.width, height: room.height };
  const rings = listFaceRings(panel, designed).map((ring) => ring.map(put));
  const concrete = rings.map((ring) => clipArea(ring, sheet)).filter((ring) => ring.length > 2);
  const rooms = findHoleRooms(panel, fixed, holes, members);
  const roomOf = new Map(rooms.map((one) => [one.member.item.castIn.key, one]));
  const bolts = seats.flatMap(({ member, at }) => {
    const diameter = findBoltDiameter(designed, member);
    if (diameter === null) return [];
    const found = roomOf.get(member.item.castIn.key);
    const is = unused.has(member.item.castIn.key)
      ? 'left out'
      : found !== undefined && found.room < -SAME
        ? 'does not go in'
        : 'in';
    return drawBolt(put(at), (diameter / 2) * scale, is);
  });
  const names = rooms.map((one) => {
    const isUsed = !unused.has(one.member.item.castIn.key);
    return {
      at: put(onPlate(one.hole.at_mm)),
      radius: ((one.hole.diameter_mm + one.hole.slot_mm) / 2) * scale,
      text: hasLengths ? nameHole(one, isUsed, write) : one.hole.id,
      isBold: isUsed && one.room < -SAME,
    };
  });
  // What stands in a hole, with the arms of a cross.
  const taken = bolts.map((mark) => boxOfMarks([mark])).filter((one) => one !== null);
  const marks: readonly Mark[] = [
    ...(concrete.length === 0 ? [] : [drawArea('section', null, 'light', ...concrete)]),
    ...rings.flatMap((ring) => clipRing(ring, sheet)).map(([from, to]) => drawLine('outline', from, to, 'thick')),
    drawArea('section', 'medium', 'grey', outline.map(put)),
    drawPath('section', before.map(put), 'dashed', true),
    ...(fixture.attachment_mm === null
      ? []
      : [
          drawPath(
            'section',
            fixture.attachment_mm.map((at) => put(onPlate(at))),
            'thin',
            true,
          ),
        ]),
    ...holes.map((hole) =>
      drawArea(
        'insert',
        isChanged(hole, fixture) ? 'thick' : 'thin',
        'white',
        ringOfHole(hole).map((at) => put(onPlate(at))),
      ),
    ),
    ...bolts,
    ...drawNames(names, room, taken),
  ];
  return { width: room.width, height: room.height, marks };
}
