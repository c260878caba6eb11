import type { Point } from '../../engine/geometry/point.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { FixtureHole } from '../documents/fixture.ts';
import type { Panel } from '../documents/panel.ts';
import { frameOf, placeInPlate, placeOnFace } from '../face-frame.ts';

/** A place that was turned and shifted is the same within this [mm]. */
const SAME_PLACE = 1e-3;

/** Decimals of a place in a document that was computed [mm]. */
const DECIMALS = 1e6;

const tidy = (value: number) => Math.round(value * DECIMALS) / DECIMALS + 0;

/** Where a place in a plate's own axes is, as the documents give places on its face. */
export function placeOfHole(panel: Panel, connection: Connection, at: Point): Point {
  const frame = frameOf(panel, connection);
  // A face's frame is its own reverse: it shifts and mirrors, and twice of it is nothing.
  const [x, y] = frame.toFace(placeOnFace(frame, connection.origin_mm, connection.turn_deg, at));
  return [tidy(x), tidy(y)];
}

/** How far an insert stands off the centre of its hole, in the axes of the plate; null where it stands there. */
export function findOffHole(panel: Panel, connection: Connection, hole: FixtureHole, castIn: CastIn): Point | null {
  const frame = frameOf(panel, connection);
  const onFace = frame.toFace([castIn.x_mm, castIn.y_mm]);
  const [x, y] = placeInPlate(frame, connection.origin_mm, connection.turn_deg, onFace);
  const off: Point = [x - hole.at_mm[0], y - hole.at_mm[1]];
  return Math.hypot(...off) <= SAME_PLACE ? null : off;
}
