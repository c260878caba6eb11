import { findEn1090Kind } from '../../engine/hardware/clearance-holes.ts';
import type { Thread } from '../../engine/hardware/threads.ts';
import type { FixtureHole } from '../../job/documents/fixture.ts';
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

/** Holes are drilled to whole millimetres. */
const STEP = 1;

/** The widest oversize round hole of a thread in whole mm; null: EN 1090-2, Table 11 does not have the size. */
function findWidestOversize(thread: Thread): number | null {
  const isOversize = (diameter: number) => {
    const kind = findEn1090Kind(thread, { diameter, slot: 0 });
    return kind === 'normal' || kind === 'oversize';
  };
  let diameter = Math.ceil(thread.diameter);
  if (!isOversize(diameter)) return null;
  while (isOversize(diameter + STEP)) diameter += STEP;
  return diameter;
}

/**
 * The smallest holes that let a plate go on: the fewest that are enlarged, then the least largest diameter, then each as small as the others allow; whole mm,
 * round. No hole becomes wider than the oversize holes of EN 1090-2, Table 11. A bolt in a hole wider than those over which bolts share a shear
 * takes none (EN 1992-4, Table 6.1): a washer that is welded on is not counted.
 */
export function enlargeHoles(question: PlateQuestion): PlateChange {
  const { thread, fixture } = question;
  const widest = findWidestOversize(thread);
  if (widest === null)
    return no(
      `EN 1090-2, Table 11 gives no oversize hole for ${thread.name}; a wider one is a case for the steel's designer`,
    );
  const larger = sortByNeed(question).filter(({ slot_mm, diameter_mm }) => slot_mm === 0 && diameter_mm < widest);
  if (larger.length === 0) return no(`no round hole may become larger than ${widest} mm (EN 1090-2, Table 11)`);
  const never = `holes of ${widest} mm, the widest that EN 1090-2, Table 11 has for ${thread.name}, do not let it on`;
  if (
    !doesGoOn(
      question,
      larger.map((hole) => ({ ...hole, diameter_mm: widest })),
    )
  )
    return no(never);
  let crowded: string | null = null;
  let best: ChangedPlate | null = null;
  for (const choice of listChoices(larger)) {
    if (best !== null && choice.length > best.changed.length) break;
    const found = enlargeThese(question, choice, widest);
    if (found === null) continue;
    const noRoom = findNoRoom(
      fixture,
      found.holes.filter(({ id }) => found.changed.includes(id)),
      found.holes.filter(({ id }) => !found.changed.includes(id)),
    );
    crowded ??= noRoom;
    if (noRoom === null && (best === null || compare(found, best) < 0)) best = found;
  }
  if (best !== null) return { kind: 'goes on', plate: best };
  return no(crowded ?? never);
}

const no = (why: string): PlateChange => ({ kind: 'not this way', why });

/** The least diameters of chosen holes with which a plate goes on; null: not even the widest do. */
function enlargeThese(question: PlateQuestion, choice: readonly FixtureHole[], widest: number): ChangedPlate | null {
  const make = (sizes: readonly number[]) =>
    choice.map((hole, i) => withShear({ ...hole, diameter_mm: sizes[i]! }, question.thread));
  const does = (sizes: readonly number[]) => doesGoOn(question, make(sizes));
  const least = choice.map(({ diameter_mm }) => Math.floor(diameter_mm) + STEP);
  let sizes: readonly number[] = choice.map(() => widest);
  if (!does(sizes)) return null;
  for (let size = widest - STEP; size >= Math.min(...least); size -= STEP) {
    const smaller = least.map((floor) => Math.max(floor, size));
    if (!does(smaller)) break;
    sizes = smaller;
  }
  for (let i = 0; i < choice.length; i++)
    for (let size = sizes[i]! - STEP; size >= least[i]!; size -= STEP) {
      const smaller = sizes.map((other, j) => (j === i ? size : other));
      if (!does(smaller)) break;
      sizes = smaller;
    }
  return tryPlate(question, make(sizes));
}

/** Of plates with as many changed holes: the least largest diameter, then the least of all together. */
function compare(one: ChangedPlate, other: ChangedPlate): number {
  const sizes = ({ holes, changed }: ChangedPlate) =>
    holes.filter(({ id }) => changed.includes(id)).map(({ diameter_mm }) => diameter_mm);
  const [a, b] = [sizes(one), sizes(other)];
  const sum = (all: readonly number[]) => all.reduce((total, size) => total + size, 0);
  return Math.max(...a) - Math.max(...b) || sum(a) - sum(b);
}
