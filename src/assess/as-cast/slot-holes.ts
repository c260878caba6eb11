import type { Point } from '../../engine/geometry/point.ts';
import { findEn1090Kind } from '../../engine/hardware/clearance-holes.ts';
import type { Thread } from '../../engine/hardware/threads.ts';
import { findHoleFit } from '../../engine/tolerance/hole-fit.ts';
import { findMiddle, type PlateMove } from '../../engine/tolerance/plate-search.ts';
import type { FixtureHole } from '../../job/documents/fixture.ts';
import { turnVector } from '../../job/face-frame.ts';
import { type BoltInHole, MOST_TURN_RAD, readHole } from '../yard/fit-plate.ts';
import {
  type ChangedPlate,
  doesGoOn,
  listChoices,
  type PlateChange,
  type PlateQuestion,
  sortByNeed,
  tryPlate,
  withShear,
} from './changed-plate.ts';
import { findNoRoom } from './plate-room.ts';

/** Which way slots run: along an axis of the plate, or each straight toward its bolt. */
export type SlotDirection = 'along x' | 'along y' | 'toward the bolt';
export const SLOT_DIRECTIONS = ['along x', 'along y', 'toward the bolt'] as const satisfies readonly SlotDirection[];

/** Directions of the plate's axes [degrees]. */
const AXES = { 'along x': 0, 'along y': 90 } as const;
/** A slot is made whole millimetres longer, in a direction of whole degrees. */
const STEP = 1;
/** What a direction of whole degrees and a length of whole mm may leave out, tried again longer [mm]. */
const MOST_MORE = 3;

/**
 * The smallest slots of a direction that let a plate go on: the fewest holes, then the least longest slot. A slot goes from the hole, one way, in whole mm: it keeps
 * the hole's width and its other end. No slot becomes longer than the long slots of EN 1090-2, Table 11 (2.5 d over all), nor wider than its normal
 * holes; a hole that is a slot already stays as it is. The bolt of a slot takes shear across it only.
 */
export function slotHoles(question: PlateQuestion, direction: SlotDirection): PlateChange {
  const { thread, fixture, bolts } = question;
  const most: MostSlots = new Map(bolts.map(({ hole }) => [hole.id, hole.slot_mm === 0 ? mostSlot(thread, hole) : 0]));
  const inOrder = sortByNeed(question).filter(({ id }) => most.get(id)! >= STEP);
  if (inOrder.length === 0)
    return no(`EN 1090-2, Table 11 has no slot for ${thread.name} in holes as wide as these, or all are slots already`);
  if (!mayGoOn(question, inOrder, direction, most)) return no(never(direction));
  let crowded: string | null = null;
  let best: ChangedPlate | null = null;
  for (const choice of listChoices(inOrder)) {
    if (best !== null && choice.length > best.changed.length) break;
    const found = slotThese(question, choice, direction, most);
    if (found === null) continue;
    const noRoom = findNoRoom(
      fixture,
      found.holes.filter(({ id }) => found.changed.includes(id)),
      found.holes.filter(({ id }) => !found.changed.includes(id)),
    );
    crowded ??= noRoom;
    if (noRoom === null && (best === null || longest(found) < longest(best))) best = found;
  }
  if (best !== null) return { kind: 'goes on', plate: best };
  return no(crowded ?? never(direction));
}

const no = (why: string): PlateChange => ({ kind: 'not this way', why });

const never = (direction: SlotDirection) =>
  `slots ${direction}, up to the long slots of EN 1090-2, Table 11, do not let it on`;

/** Whether a plate goes on with all slots as long as may be: if not, no choice of them does. Slots toward the bolts are only known once they are cut. */
function mayGoOn(
  question: PlateQuestion,
  holes: readonly FixtureHole[],
  direction: SlotDirection,
  most: MostSlots,
): boolean {
  if (direction === 'toward the bolt') return true;
  return doesGoOn(
    question,
    cutBothWays(holes, direction, (hole) => most.get(hole.id)!),
  );
}

/** Slots along an axis of the plate, from the middle as far both ways. */
function cutBothWays(
  holes: readonly FixtureHole[],
  direction: Exclude<SlotDirection, 'toward the bolt'>,
  slotOf: (hole: FixtureHole) => number,
): readonly FixtureHole[] {
  return holes.map((hole) => ({ ...hole, slot_mm: 2 * slotOf(hole), slotAngle_deg: AXES[direction] }));
}

function longest({ holes, changed }: ChangedPlate): number {
  return Math.max(...holes.filter(({ id }) => changed.includes(id)).map(({ slot_mm }) => slot_mm));
}

/** The longest straight part that each hole may get [mm], by its name. */
type MostSlots = ReadonlyMap<string, number>;

/** The longest straight part, in whole mm, that a hole of this width may get; 0: none. */
function mostSlot(thread: Thread, { diameter_mm }: Pick<FixtureHole, 'diameter_mm'>): number {
  const isAllowed = (slot: number) => {
    const kind = findEn1090Kind(thread, { diameter: diameter_mm, slot });
    return kind === 'short slot' || kind === 'long slot';
  };
  let slot = 0;
  while (isAllowed(slot + STEP)) slot += STEP;
  return slot;
}

/** The least slots of chosen holes with which a plate goes on; null: none do. */
function slotThese(
  question: PlateQuestion,
  choice: readonly FixtureHole[],
  direction: SlotDirection,
  most: MostSlots,
): ChangedPlate | null {
  const { bolts } = question;
  const rest = bolts.filter(({ hole }) => !choice.some(({ id }) => id === hole.id));
  if (direction === 'toward the bolt') {
    const held = rest.length === 0 ? bolts : rest;
    return cutToward(question, choice, moveAtBest(held), null, most);
  }
  const reach = Math.min(...choice.map(({ id }) => most.get(id)!));
  // Cut as far both ways, the plate may come to lie either side of its bolts; which way each slot goes follows from where it does.
  const bothWays = (slot: number) => cutBothWays(choice, direction, () => slot);
  if (!doesGoOn(question, bothWays(reach))) return null;
  let slot = STEP;
  while (!doesGoOn(question, bothWays(slot))) slot += STEP;
  const cut = bothWays(slot);
  const seated = bolts.map((one) => ({ ...one, hole: cut.find(({ id }) => id === one.hole.id) ?? one.hole }));
  return cutToward(question, choice, moveAtBest(seated), AXES[direction], most);
}

/** A plate at its best over some bolts. */
interface Moved {
  readonly move: PlateMove;
  readonly about: Point;
}

function moveAtBest(bolts: readonly BoltInHole[]): Moved {
  const holes = bolts.map(readHole);
  const { move } = findHoleFit(
    holes,
    bolts.map(({ bolt }) => bolt),
    MOST_TURN_RAD,
  );
  return { move, about: findMiddle(holes) };
}

/** Where a bolt stands from its hole, in the axes of a plate that was moved. */
function offsetOf({ bolt, hole }: BoltInHole, { move, about }: Moved): Point {
  const degrees = (move.turn * 180) / Math.PI;
  const [bx, by] = [bolt[0] - about[0] - move.shift[0], bolt[1] - about[1] - move.shift[1]];
  const [x, y] = turnVector([bx, by], -degrees);
  return [x + about[0] - hole.at_mm[0], y + about[1] - hole.at_mm[1]];
}

/**
 * Cuts slots from chosen holes to their bolts, where these stand with the plate moved.
 * @param angle direction of the slots [degrees]; null: of each toward its bolt
 */
function cutToward(
  question: PlateQuestion,
  choice: readonly FixtureHole[],
  moved: Moved,
  angle: number | null,
  most: MostSlots,
): ChangedPlate | null {
  const { bolts, thread } = question;
  for (let more = 0; more <= MOST_MORE; more += STEP) {
    const cut = choice.map((hole) => {
      const one = bolts.find((each) => each.hole.id === hole.id)!; // the choice is of holes that are used
      return cutSlot(hole, offsetOf(one, moved), (hole.diameter_mm - one.boltDiameter) / 2, angle, more);
    });
    if (cut.some((hole) => hole.slot_mm < STEP || hole.slot_mm > most.get(hole.id)!)) return null;
    if (doesGoOn(question, cut))
      return tryPlate(
        question,
        cut.map((hole) => withShear(hole, thread)),
      );
  }
  return null;
}

/** A slot from a hole toward a bolt: as long as lets it in, and some whole mm more. */
function cutSlot(hole: FixtureHole, [x, y]: Point, slack: number, angle: number | null, more: number): FixtureHole {
  const toward = angle === null ? Math.round((Math.atan2(y, x) * 180) / Math.PI) : angle;
  const [along, across] = turnVector([x, y], -toward);
  const rest = Math.sqrt(Math.max(0, slack ** 2 - across ** 2));
  const slot = Math.max(0, Math.ceil((Math.abs(along) - rest) / STEP - 1e-6) * STEP + more);
  const [sx, sy] = turnVector([(Math.sign(along) * slot) / 2, 0], toward);
  return {
    ...hole,
    at_mm: [hole.at_mm[0] + sx, hole.at_mm[1] + sy],
    slot_mm: slot,
    slotAngle_deg: toward,
  };
}
