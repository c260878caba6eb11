import type { Point } from '../../engine/geometry/point.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import { findHoleFit } from '../../engine/tolerance/hole-fit.ts';
import { findLeastMove } from '../../engine/tolerance/least-move.ts';
import type { PlateHole } from '../../engine/tolerance/plate-hole.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { findMisfit } from '../../job/hole-misfit.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { AsPlaced } from './placing-answer.ts';

/** A bolt in the plate's axes with its hole [mm]. */
export interface BoltInHole {
  readonly bolt: Point;
  readonly hole: Pick<FixtureHole, 'id' | 'at_mm' | 'diameter_mm' | 'slot_mm' | 'slotAngle_deg'>;
  readonly boltDiameter: number;
}

/** A plate that is turned by more [degrees] looks crooked, and its loads pull another way than they were designed: it does not go on. Common practice. */
export const MOST_TURN = 1;
export const MOST_TURN_RAD = (MOST_TURN * Math.PI) / 180;

/** What a hole leaves its bolt. */
export function readHole({ hole, boltDiameter }: BoltInHole): PlateHole {
  return {
    at: hole.at_mm,
    slack: (hole.diameter_mm - boltDiameter) / 2,
    slot: hole.slot_mm,
    angle: (hole.slotAngle_deg * Math.PI) / 180,
  };
}

/**
 * Whether a plate goes onto bolts: where the drawing has it; shifted, by the least that does; turned too, by the least; or not: then how much its worst
 * hole lacks in the best movement within the turn that is allowed.
 */
export function fitPlate(bolts: readonly BoltInHole[]): AsPlaced['plate'] {
  if (bolts.length === 0) return { kind: 'no plate' };
  const holes = bolts.map(readHole);
  const places = bolts.map(({ bolt }) => bolt);
  const move = findLeastMove(holes, places, MOST_TURN_RAD);
  if (move !== null) {
    const by = Math.hypot(...move.shift);
    if (move.turn !== 0) return { kind: 'turned', by, turn_deg: (Math.abs(move.turn) * 180) / Math.PI };
    return by === 0 ? { kind: 'as designed' } : { kind: 'shifted', by };
  }
  const { margin, clearances } = findHoleFit(holes, places, MOST_TURN_RAD);
  return { kind: 'does not go on', lacks: -margin, hole: bolts[clearances.indexOf(Math.min(...clearances))]!.hole.id };
}

/**
 * The bolts of a connection in the axes of its plate, where its inserts are held; none where it has no plate.
 * @param castIns in the connection's order
 */
export function listBolts(
  index: JobIndex,
  panel: Panel,
  connection: Connection,
  castIns: readonly CastIn[],
): readonly BoltInHole[] {
  const fixture: Fixture | null = index.fixtureOf(connection);
  return connection.inserts.flatMap(({ hole: wanted }, i) => {
    const castIn = castIns[i]!;
    const item = castIn.item === null ? undefined : index.items.get(castIn.item);
    const hole = fixture?.holes.find(({ id }) => id === wanted);
    if (item === undefined || hole === undefined) return [];
    const boltDiameter = findThread(connection.boltThread ?? item.thread).diameter;
    const { bolt } = findMisfit(panel, connection, hole, [castIn.x_mm, castIn.y_mm], boltDiameter);
    return [{ bolt, hole, boltDiameter }];
  });
}
