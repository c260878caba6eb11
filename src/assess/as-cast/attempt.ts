import type { Point } from '../../engine/geometry/point.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { HoleFit } from '../../engine/tolerance/hole-fit.ts';
import { findHoleFit } from '../../engine/tolerance/hole-fit.ts';
import type { PlateHole } from '../../engine/tolerance/plate-hole.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import { turnVector } from '../../job/face-frame.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { assessConnection } from '../assess-connection.ts';
import type { ConnectionAnswer } from '../connection-answer.ts';
import { assessMoved, worseOf } from '../yard/assess-moved.ts';
import type { Remedy } from './as-cast-report.ts';
import {
  type CastMember,
  type CastPanel,
  findOutside,
  listFindings,
  membersOf,
  overlayEmbedment,
} from './cast-panel.ts';
import { findInPlate, keepLoads } from './plate-place.ts';

/** A connection of a hard panel that something is to be done about. */
export interface RemedyQuestion {
  readonly cast: CastPanel;
  readonly connection: Connection;
  /** The plate as designed; null: none is drawn. */
  readonly fixture: Fixture | null;
  readonly members: readonly CastMember[];
  readonly before: ConnectionAnswer;
}

export function askRemedies(cast: CastPanel, connection: Connection): RemedyQuestion {
  return {
    cast,
    connection,
    fixture: cast.index.fixtureOf(connection),
    members: membersOf(cast, connection),
    before: assessConnection(resolveConnection(cast.index, connection)),
  };
}

/** A bolt as it stands at its plate: in the axes of the plate where a connection has it. Lengths mm. */
export interface StandingBolt {
  readonly member: CastMember;
  readonly hole: FixtureHole;
  readonly bolt: Point;
  /** Of the bolt, wider where it leans: what it takes of a hole from one side of the plate to the other. */
  readonly diameter: number;
}

/** How far a bolt goes aside, out of its face, for each mm. */
function leanOf({ insert }: CastMember): Point {
  const tilt = insert.place?.tilt ?? null;
  if (tilt === null) return [0, 0];
  return [Math.tan((tilt.x * Math.PI) / 180), Math.tan((tilt.y * Math.PI) / 180)];
}

/**
 * The bolts of a connection at the middle of its plate's thickness, in the axes of the plate. A leaning bolt goes aside up to there, and takes more of the hole.
 * @param placed where the plate lies, on which packers, with which inserts
 */
export function standBolts(
  { cast, fixture }: Pick<RemedyQuestion, 'cast' | 'fixture'>,
  placed: Connection,
  holes: readonly FixtureHole[],
): readonly StandingBolt[] {
  const thickness = fixture?.thickness_mm ?? 0;
  return placed.inserts.flatMap(({ insert, hole: wanted }) => {
    const member = cast.members.get(insert);
    const hole = holes.find(({ id }) => id === wanted);
    if (member === undefined || hole === undefined) return [];
    const thread = placed.boltThread ?? member.insert.item.item?.thread;
    if (thread === undefined) return [];
    const [leanX, leanY] = leanOf(member);
    const height = placed.packers_mm + thickness / 2;
    const { x_mm, y_mm } = member.castIn;
    return [
      {
        member,
        hole,
        bolt: findInPlate(cast.panel, placed, [x_mm + leanX * height, y_mm + leanY * height]),
        diameter: findThread(thread).diameter + Math.hypot(leanX, leanY) * thickness,
      },
    ];
  });
}

/** What a hole leaves its bolt. */
function roomIn({ hole, diameter }: StandingBolt): PlateHole {
  return {
    at: hole.at_mm,
    slack: (hole.diameter_mm - diameter) / 2,
    slot: hole.slot_mm,
    angle: (hole.slotAngle_deg * Math.PI) / 180,
  };
}

/** The radial clearance of a bolt in its hole, the plate lying where it is; below 0: it does not go in. */
function findRoom({ hole, bolt, diameter }: StandingBolt): number {
  const [along, across] = turnVector([bolt[0] - hole.at_mm[0], bolt[1] - hole.at_mm[1]], -hole.slotAngle_deg);
  const beyond = Math.max(0, Math.abs(along) - hole.slot_mm / 2);
  return (hole.diameter_mm - diameter) / 2 - Math.hypot(beyond, across);
}

/** What is decided may leave nothing over. */
const NO_BOLT = 'no insert of it gets a bolt';

/** The best movement of the plate. @param mostTurn either way [degrees] */
export function fitBolts(bolts: readonly StandingBolt[], mostTurn: number): HoleFit {
  return findHoleFit(
    bolts.map(roomIn),
    bolts.map(({ bolt }) => bolt),
    (mostTurn * Math.PI) / 180,
  );
}

/** Bolts bent or not: what is left of a place [mm] is nothing. */
const ROUNDING = 1e-6;

/** The hole with the least room; null: no plate. */
export function findTightest(bolts: readonly StandingBolt[]): { readonly room: number; readonly hole: string } | null {
  return bolts.reduce<{ readonly room: number; readonly hole: string } | null>((least, one) => {
    const room = findRoom(one);
    const own = { room: Math.abs(room) < ROUNDING ? 0 : room, hole: one.hole.id };
    return least === null || own.room < least.room ? own : least;
  }, null);
}

/**
 * Strength with the inserts where they are and the plate where a remedy puts it: the loads go with the plate, or stay where they were drawn; the worse counts. A
 * plate that is not moved may lie anywhere in its clearances: it is computed where it is drawn, and where its inserts are in the mean.
 */
export function assessPlaced({ cast, connection, before }: RemedyQuestion, placed: Connection): ConnectionAnswer {
  const { index, panel } = cast;
  const members = membersOf(cast, placed);
  const out = members.length === 0 ? NO_BOLT : findOutside(cast, members);
  if (out !== null) return { ...before, state: 'cannot be computed', ratio: null, governing: null, reasons: [out] };
  const moved = overlayEmbedment(cast.moved, members);
  const along = assessConnection(resolveConnection(moved, placed));
  const isMoved = placed.origin_mm !== connection.origin_mm || placed.turn_deg !== connection.turn_deg;
  if (!isMoved) {
    const castIns = members.map(({ castIn }) => castIn);
    return worseOf(along, assessMoved({ index, moved, panel, connection: placed, members: castIns }));
  }
  if (members.length < 2 || placed.actions.kind !== 'loads') return along;
  return worseOf(along, assessConnection(resolveConnection(moved, keepLoads(panel, connection, placed))));
}

/** What speaks against the inserts of a connection themselves, whatever is done to the plate. In words. */
export function listPlaceFindings({ cast }: RemedyQuestion, placed: Connection): readonly string[] {
  return membersOf(cast, placed).flatMap((member) => listFindings(cast, member));
}

export type Change = Remedy['change'];

export const NO_CHANGE: Change = { move: null, holes: [], washer_mm: null, unused: [], packers_mm: null };
