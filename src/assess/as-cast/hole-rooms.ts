import type { Point } from '../../engine/geometry/point.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { FixtureHole } from '../../job/documents/fixture.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { turnVector } from '../../job/face-frame.ts';
import { findMisfit } from '../../job/hole-misfit.ts';
import type { AsCastInsert } from './as-cast-report.ts';

/** A bolt in its hole, the plate lying where a connection has it. Lengths mm, in the plate's own axes. */
export interface HoleRoom {
  readonly member: AsCastInsert;
  readonly hole: FixtureHole;
  readonly bolt: Point;
  readonly boltDiameter: number;
  /** Radial room that is left; below 0: so much is missing, and the bolt does not go in. */
  readonly room: number;
}

/** Where an insert is, as the documents give places: as surveyed, else as designed. */
export function placeAsCast({ item: { castIn }, place }: AsCastInsert): Point {
  return place === null ? [castIn.x_mm, castIn.y_mm] : [place.x, place.y];
}

/** Diameter of the bolt of an insert [mm]; null: neither the connection nor its type says one. */
export function findBoltDiameter(connection: Connection, { item: { item } }: AsCastInsert): number | null {
  const thread = connection.boltThread ?? item?.thread ?? null;
  return thread === null ? null : findThread(thread).diameter;
}

/**
 * The room of each bolt in its hole. Moved along a slot as far as it goes; no bolt is moved with the plate: where the plate lies is the connection's.
 * @param holes of the plate as it will be fixed, by which the connection names them
 */
export function findHoleRooms(
  panel: Panel,
  connection: Connection,
  holes: readonly FixtureHole[],
  members: readonly AsCastInsert[],
): readonly HoleRoom[] {
  return connection.inserts.flatMap(({ insert, hole: wanted }) => {
    const member = members.find(({ item }) => item.castIn.id === insert);
    const hole = holes.find(({ id }) => id === wanted);
    const boltDiameter = member === undefined ? null : findBoltDiameter(connection, member);
    if (member === undefined || hole === undefined || boltDiameter === null) return [];
    const { bolt } = findMisfit(panel, connection, hole, placeAsCast(member), boltDiameter);
    const [along, across] = turnVector([bolt[0] - hole.at_mm[0], bolt[1] - hole.at_mm[1]], -hole.slotAngle_deg);
    const beyond = Math.max(0, Math.abs(along) - hole.slot_mm / 2);
    const room = (hole.diameter_mm - boltDiameter) / 2 - Math.hypot(beyond, across);
    return [{ member, hole, bolt, boltDiameter, room }];
  });
}

/** The hole with the least room; null: no plate. */
export function findTightest(rooms: readonly HoleRoom[]): HoleRoom | null {
  return rooms.reduce<HoleRoom | null>((least, one) => (least === null || one.room < least.room ? one : least), null);
}
