import type { Point } from '../../engine/geometry/point.ts';
import { findWidestHole } from '../../engine/hardware/clearance-holes.ts';
import type { Thread } from '../../engine/hardware/threads.ts';
import { chooseWasher, type WasherChoice } from '../../engine/hardware/washer-choice.ts';
import { findHoleFit, prepareHoles } from '../../engine/tolerance/hole-fit.ts';
import { findLeastMove } from '../../engine/tolerance/least-move.ts';
import { findMiddle, type PlateMove } from '../../engine/tolerance/plate-search.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import { type BoltInHole, MOST_TURN_RAD, readHole } from '../yard/fit-plate.ts';

/** A plate and the bolts it should go over, both in its own axes where it was drawn. */
export interface PlateQuestion {
  readonly fixture: Fixture;
  /** One a hole that is used; the connection's bolts, all of one thread. */
  readonly bolts: readonly BoltInHole[];
  readonly thread: Thread;
}

/** A plate that goes on, and what it takes. Lengths mm. */
export interface ChangedPlate {
  /** Every hole of the plate as it is to be. */
  readonly holes: readonly FixtureHole[];
  /** Names of those that are changed. */
  readonly changed: readonly string[];
  /** The least movement with which it goes on: turned about `about`, the middle of the holes that are used, then shifted. */
  readonly move: PlateMove;
  readonly about: Point;
  /** Radial clearance at the tightest hole, the plate moved at its best, and how much better any other movement could be. */
  readonly margin: number;
  readonly provenWithin: number;
  /** What goes under the head at each hole that is changed. */
  readonly washers: readonly { readonly hole: string; readonly washer: WasherChoice }[];
  /** Holes whose bolt takes shear across its slot only, or none. */
  readonly acrossOnly: readonly string[];
  readonly noShear: readonly string[];
}

/** What a way of changing a plate comes to. */
export type PlateChange =
  | { readonly kind: 'goes on'; readonly plate: ChangedPlate }
  | { readonly kind: 'not this way'; readonly why: string };

/** The bolts of a plate whose holes are changed. */
function putIntoHoles(bolts: readonly BoltInHole[], holes: readonly FixtureHole[]): readonly BoltInHole[] {
  return bolts.map((one) => ({ ...one, hole: holes.find(({ id }) => id === one.hole.id)! })); // a changed hole keeps its name
}

/** Which way the bolt of a hole takes shear, made to measure: none in a hole wider than bolts share a shear in (EN 1992-4, Table 6.1, recalled). */
export function withShear(hole: FixtureHole, thread: Thread): FixtureHole {
  return { ...hole, takesShear: hole.takesShear && hole.diameter_mm <= findWidestHole(thread) };
}

/** A plate with some holes changed, if it goes on within the turn that is allowed; else null. */
export function tryPlate(
  { fixture, bolts, thread }: PlateQuestion,
  changed: readonly FixtureHole[],
): ChangedPlate | null {
  const holes = fixture.holes.map((hole) => changed.find(({ id }) => id === hole.id) ?? hole);
  const seated = putIntoHoles(bolts, holes);
  const plate = seated.map(readHole);
  const places = seated.map(({ bolt }) => bolt);
  const move = findLeastMove(plate, places, MOST_TURN_RAD);
  if (move === null) return null;
  const { margin, provenWithin } = findHoleFit(plate, places, MOST_TURN_RAD);
  const used = holes.filter(({ id }) => bolts.some(({ hole }) => hole.id === id));
  return {
    holes,
    changed: changed.map(({ id }) => id),
    move,
    about: findMiddle(plate),
    margin,
    provenWithin,
    washers: changed.map(({ id, diameter_mm, slot_mm }) => ({
      hole: id,
      washer: chooseWasher(thread, { diameter: diameter_mm, slot: slot_mm }),
    })),
    acrossOnly: used.filter(({ takesShear, slot_mm }) => takesShear && slot_mm > 0).map(({ id }) => id),
    noShear: used.filter(({ takesShear }) => !takesShear).map(({ id }) => id),
  };
}

/** Whether a plate with some holes changed goes on, within the turn that is allowed. */
export function doesGoOn({ bolts }: PlateQuestion, changed: readonly FixtureHole[]): boolean {
  const seated = bolts.map((one) => ({ ...one, hole: changed.find(({ id }) => id === one.hole.id) ?? one.hole }));
  const places = Float64Array.from(seated.flatMap(({ bolt }) => bolt));
  return prepareHoles(seated.map(readHole), MOST_TURN_RAD).decide(places);
}

/** Most holes of a plate of which every choice is tried. */
const ALL_CHOICES = 10;

/**
 * Choices of things, the fewest first. Of more than ten the first, the first two and so on only: they come in the order of need.
 * @param inOrder of need
 */
export function listChoices<T>(inOrder: readonly T[]): readonly (readonly T[])[] {
  if (inOrder.length > ALL_CHOICES) return inOrder.map((_, i) => inOrder.slice(0, i + 1));
  const all = Array.from({ length: 2 ** inOrder.length - 1 }, (_, bits) =>
    inOrder.filter((_one, i) => (((bits + 1) >> i) & 1) === 1),
  );
  return all.sort((a, b) => a.length - b.length);
}

/** The holes that are used, the one that lacks most first, the plate moved at its best. */
export function sortByNeed({ fixture, bolts }: PlateQuestion): readonly FixtureHole[] {
  const { clearances } = findHoleFit(
    bolts.map(readHole),
    bolts.map(({ bolt }) => bolt),
    MOST_TURN_RAD,
  );
  return bolts
    .map(({ hole }, i) => ({ hole: fixture.holes.find(({ id }) => id === hole.id)!, clearance: clearances[i]! }))
    .sort((a, b) => a.clearance - b.clearance)
    .map(({ hole }) => hole);
}
