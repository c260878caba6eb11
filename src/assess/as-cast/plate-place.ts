import type { Point } from '../../engine/geometry/point.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { frameOf, placeInPlate, placeOnFace, turnVector } from '../../job/face-frame.ts';
import { leaveLoads } from '../yard/assess-moved.ts';
import type { Remedy } from './as-cast-report.ts';

export type RecordedMove = NonNullable<Remedy['change']['move']>;

/** The middle of all holes of a plate, in its own axes: what a recorded movement turns it about. */
function findMiddle({ holes }: Pick<Fixture, 'holes'>): Point {
  const sum = (axis: 0 | 1) => holes.reduce((total, { at_mm }) => total + at_mm[axis], 0);
  return [sum(0) / holes.length, sum(1) / holes.length];
}

/**
 * A movement as it is recorded, about the middle of all holes, of one about another middle.
 * @param from what it turns about: the middle of those holes that it was found by
 * @param turn counter-clockwise [degrees], then shifted by `shift` [mm]; in the axes of the plate where it was drawn
 */
export function recordMove(fixture: Fixture, from: Point, turn: number, shift: Point): RecordedMove {
  const middle = findMiddle(fixture);
  const apart: Point = [middle[0] - from[0], middle[1] - from[1]];
  const turned = turnVector(apart, turn);
  return {
    dx_mm: shift[0] + turned[0] - apart[0],
    dy_mm: shift[1] + turned[1] - apart[1],
    turn_deg: turn,
  };
}

/** A connection with its plate moved: turned about the middle of its holes, then shifted, in the axes that it had. Its loads go with it. */
export function movePlate(panel: Panel, connection: Connection, fixture: Fixture, move: RecordedMove): Connection {
  const frame = frameOf(panel, connection);
  const [cx, cy] = findMiddle(fixture);
  const [tx, ty] = turnVector([0 - cx, 0 - cy], move.turn_deg);
  const origin: Point = [cx + tx + move.dx_mm, cy + ty + move.dy_mm];
  const onFace = placeOnFace(frame, connection.origin_mm, connection.turn_deg, origin);
  return {
    ...connection,
    // From the face to the documents is the way back, and both are the same mirroring.
    origin_mm: frame.toFace(onFace),
    turn_deg: connection.turn_deg + move.turn_deg,
  };
}

/** A place on the panel, as the documents give it, in the axes of a plate. */
export function findInPlate(panel: Panel, connection: Connection, at: Point): Point {
  const frame = frameOf(panel, connection);
  return placeInPlate(frame, connection.origin_mm, connection.turn_deg, frame.toFace(at));
}

/** A plate that was moved, its loads where and as they were drawn. */
export function keepLoads(panel: Panel, drawn: Connection, moved: Connection): Connection {
  const left = leaveLoads(panel, drawn, moved);
  const back = drawn.turn_deg - moved.turn_deg;
  if (left.actions.kind !== 'loads' || back === 0) return left;
  const combinations = left.actions.combinations.map((load) => {
    const [Vx_kN, Vy_kN] = turnVector([load.Vx_kN, load.Vy_kN], back);
    const [Mx_kNm, My_kNm] = turnVector([load.Mx_kNm, load.My_kNm], back);
    return { ...load, Vx_kN, Vy_kN, Mx_kNm, My_kNm };
  });
  return { ...left, actions: { ...left.actions, combinations } };
}
