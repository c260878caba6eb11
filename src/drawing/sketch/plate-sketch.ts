import type { Point } from '../../engine/geometry/point.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import { boxAround } from '../boxes.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { drawArea, drawLine, drawText } from '../marks.ts';
import { placeMarks } from '../place.ts';
import { ringOfHole } from './hole-ring.ts';

/** Of the names of holes [mm of paper]. */
const SIZE = 2.6;
/** White round the plate [mm of paper]. */
const MARGIN = 3;

/**
 * A plate with its holes from its front, as large as the room lets it.
 * @param room [mm of paper]
 * @param isNamed holes with their names, and the axes of the plate
 */
export function drawPlateSketch(
  fixture: Fixture,
  room: { readonly width: number; readonly height: number },
  isNamed: boolean,
): Drawing {
  const { outline_mm, attachment_mm, holes } = fixture;
  const box = boxAround(outline_mm);
  const scale = Math.min((room.width - 2 * MARGIN) / box.width, (room.height - 2 * MARGIN) / box.height);
  const put = ([x, y]: Point): Point => [
    room.width / 2 + (x - box.x - box.width / 2) * scale,
    room.height / 2 + (y - box.y - box.height / 2) * scale,
  ];
  const plate: readonly Mark[] = [
    drawArea('section', 'medium', 'grey', outline_mm),
    ...(attachment_mm === null ? [] : [drawArea('section', 'dashed', 'none', attachment_mm)]),
    ...holes.map((hole) => drawArea('insert', 'thin', 'white', ringOfHole(hole))),
  ];
  const [ox, oy] = put([0, 0]);
  const names: readonly Mark[] = isNamed
    ? [
        drawLine('datum', [ox - 2.5, oy], [ox + 2.5, oy], 'hair'),
        drawLine('datum', [ox, oy - 2.5], [ox, oy + 2.5], 'hair'),
        ...holes.map(({ id, at_mm, diameter_mm }) => {
          const [x, y] = put(at_mm);
          return drawText([x, y + (diameter_mm / 2) * scale + 1], id, SIZE, { align: 'middle', weight: 'bold' });
        }),
      ]
    : [];
  const [x0, y0] = put([0, 0]);
  return { ...room, marks: [...placeMarks(plate, { scale, move: [x0, y0] }), ...names] };
}
