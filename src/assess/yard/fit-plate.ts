import type { Point } from '../../engine/geometry/point.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { turnVector } from '../../job/face-frame.ts';
import { findMisfit } from '../../job/hole-misfit.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { AsPlaced } from './placing-answer.ts';

/** A bolt in the plate's axes with its hole [mm]. */
export interface BoltInHole {
  readonly bolt: Point;
  readonly hole: Pick<FixtureHole, 'id' | 'at_mm' | 'diameter_mm' | 'slot_mm' | 'slotAngle_deg'>;
  readonly boltDiameter: number;
}

/** The shift of a plate that lets its worst bolt in best. */
export interface BestShift {
  readonly shift: Point;
  /** How far the worst bolt still lies outside what its hole lets it; below 0: that much room is left [mm]. */
  readonly lack: number;
  readonly hole: string;
}

/** Rounding of places that were turned and shifted [mm], as where a job is read. */
const ROUNDING = 1e-6;
/** Ratio of the golden section. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** The search ends when it knows the shift to this [mm]; the lack changes no faster than the shift. */
const KNOWN = 1e-4;
/** A plate that is turned by more [degrees] looks crooked, and its loads pull another way than they were designed: it does not go on. */
const MOST_TURN = 1;
/** A turn is known to this [degrees]: a bolt 500 mm away moves by 0.01 mm. */
const TURN_KNOWN = 0.001;

/** How far a bolt lies outside what its hole lets it when the plate is shifted; below 0: room that is left [mm]. */
function findLack({ bolt, hole, boltDiameter }: BoltInHole, [sx, sy]: Point): number {
  const offset: Point = [bolt[0] - hole.at_mm[0] - sx, bolt[1] - hole.at_mm[1] - sy];
  if (hole.slot_mm === 0) return Math.hypot(...offset) - (hole.diameter_mm - boltDiameter) / 2;
  const [along, across] = turnVector(offset, -hole.slotAngle_deg);
  const beyond = Math.max(0, Math.abs(along) - hole.slot_mm / 2);
  return Math.hypot(beyond, across) - (hole.diameter_mm - boltDiameter) / 2;
}

function findWorst(bolts: readonly BoltInHole[], shift: Point): { readonly lack: number; readonly hole: string } {
  const lacks = bolts.map((one) => ({ lack: findLack(one, shift), hole: one.hole.id }));
  return lacks.reduce((worst, one) => (one.lack > worst.lack ? one : worst));
}

/** Where a convex function is least between two ends, by the golden section. */
function findLeast(value: (at: number) => number, from: number, to: number, known = KNOWN): number {
  let [low, high] = [from, to];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [value(left), value(right)];
  while (high - low > known) {
    if (atLeft <= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = value(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = value(right);
    }
  }
  return (low + high) / 2;
}

/**
 * The shift of a plate, without turning it, that makes the greatest lack of its bolts least. Each lack is the distance to a straight piece less a
 * constant and so convex in the shift; the greatest of them is too, and its least over one coordinate is convex in the other: two nested searches
 * find it to 0.001 mm.
 * @param bolts one or more
 */
export function findBestShift(bolts: readonly BoltInHole[]): BestShift {
  const offsets = bolts.map(({ bolt, hole }): Point => [bolt[0] - hole.at_mm[0], bolt[1] - hole.at_mm[1]]);
  const slot = Math.max(...bolts.map(({ hole }) => hole.slot_mm)) / 2;
  const span = (axis: 0 | 1): readonly [number, number] => {
    const values = offsets.map((offset) => offset[axis]);
    return [Math.min(...values) - slot, Math.max(...values) + slot];
  };
  const [[fromX, toX], [fromY, toY]] = [span(0), span(1)];
  const lackAt = (x: number, y: number) => Math.max(...bolts.map((one) => findLack(one, [x, y])));
  const bestY = (x: number) => findLeast((y) => lackAt(x, y), fromY, toY);
  const x = findLeast((at) => lackAt(at, bestY(at)), fromX, toX);
  const shift: Point = [x, bestY(x)];
  return { shift, ...findWorst(bolts, shift) };
}

/** The shortest way toward a shift at which every bolt goes in [mm]: what lies between has them in from there on. */
function shorten(bolts: readonly BoltInHole[], [x, y]: Point): number {
  let [low, high] = [0, 1];
  while ((high - low) * Math.hypot(x, y) > KNOWN) {
    const share = (low + high) / 2;
    if (findWorst(bolts, [share * x, share * y]).lack <= 0) high = share;
    else low = share;
  }
  return high * Math.hypot(x, y);
}

/** The bolts as a plate sees them that is turned about the middle of its holes. */
function turnPlate(bolts: readonly BoltInHole[], turn_deg: number): readonly BoltInHole[] {
  const middle = (axis: 0 | 1) => bolts.reduce((sum, { hole }) => sum + hole.at_mm[axis], 0) / bolts.length;
  const [cx, cy] = [middle(0), middle(1)];
  return bolts.map((one) => {
    const [x, y] = turnVector([one.bolt[0] - cx, one.bolt[1] - cy], -turn_deg);
    return { ...one, bolt: [cx + x, cy + y] };
  });
}

/**
 * The least turn with which a plate goes on that no shift alone lets on; null: none up to the most that is tried. So small a turn bends the way of a bolt
 * by less than a hundredth of a mm, so that the greatest lack is all but convex in it, as it is in the shift.
 */
function findTurn(bolts: readonly BoltInHole[]): { readonly turn_deg: number; readonly shift: Point } | null {
  const at = (turn_deg: number) => ({ turn_deg, ...findBestShift(turnPlate(bolts, turn_deg)) });
  const best = at(findLeast((turn) => at(turn).lack, -MOST_TURN, MOST_TURN, TURN_KNOWN));
  if (best.lack > 0) return null;
  let [out, inside] = [0, best];
  while (Math.abs(inside.turn_deg - out) > TURN_KNOWN) {
    const between = at((out + inside.turn_deg) / 2);
    if (between.lack <= 0) inside = between;
    else out = between.turn_deg;
  }
  return inside;
}

/** Whether a plate goes onto bolts: where the drawing has it, shifted, turned too, or not; then how much its worst hole lacks at the best shift. */
export function fitPlate(bolts: readonly BoltInHole[]): AsPlaced['plate'] {
  if (bolts.length === 0) return { kind: 'no plate' };
  if (findWorst(bolts, [0, 0]).lack <= ROUNDING) return { kind: 'as designed' };
  const { shift, lack, hole } = findBestShift(bolts);
  if (lack <= 0) return { kind: 'shifted', by: shorten(bolts, shift) };
  const turned = findTurn(bolts);
  if (turned === null) return { kind: 'does not go on', lacks: lack, hole };
  return { kind: 'turned', by: Math.hypot(...turned.shift), turn_deg: Math.abs(turned.turn_deg) };
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
