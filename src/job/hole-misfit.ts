import type { Point } from '../engine/geometry/point.ts';
import type { Connection } from './documents/connection.ts';
import type { FixtureHole } from './documents/fixture.ts';
import type { Panel } from './documents/panel.ts';
import { frameOf, placeInPlate, turnVector } from './face-frame.ts';

/** Rounding of a position that was turned and shifted [mm]. */
const ROUNDING = 1e-6;

/**
 * Where a bolt is in the axes of the plate, and how far it lies outside what the hole lets it, moved along the slot [mm]; 0 when it goes in.
 * @param at place of the insert, as the documents give places on the connection's face
 */
export function findMisfit(
  panel: Panel,
  connection: Connection,
  hole: FixtureHole,
  at: Point,
  boltDiameter: number,
): { readonly bolt: Point; readonly misfit: number } {
  const frame = frameOf(panel, connection);
  const bolt = placeInPlate(frame, connection.origin_mm, connection.turn_deg, frame.toFace(at));
  const [along, across] = turnVector([bolt[0] - hole.at_mm[0], bolt[1] - hole.at_mm[1]], -hole.slotAngle_deg);
  const beyond = Math.max(0, Math.abs(along) - hole.slot_mm / 2);
  const misfit = Math.hypot(beyond, across) - (hole.diameter_mm - boltDiameter) / 2;
  return { bolt, misfit: misfit <= ROUNDING ? 0 : misfit };
}
