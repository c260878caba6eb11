import type { Point } from '../../engine/geometry/point.ts';
import type { PanelSetOut, SetOutItem } from '../set-out/set-out.ts';
import { findBlindMirrors, tellMarks } from './blind-mirrors.ts';
import { findCounterpart, listMirrors, type Mirror, mirrorSide, mirrorTaped } from './mirrors.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { FoundPlace, Recognised } from './placing-answer.ts';

/** An item with what was taped of it. */
interface Taken {
  readonly item: SetOutItem;
  readonly x: number | null;
  readonly y: number | null;
}

/** Lengths that lie this close together [mm] are the same. */
const ROUNDING = 1e-6;

/** Whether what was taped of an item is what a place gives, within its tolerance; what was not taped speaks against nothing. */
function fits({ item, x, y }: Taken, [wantedX, wantedY]: Point): boolean {
  const isNear = (taken: number | null, wanted: number) =>
    taken === null || Math.abs(taken - wanted) <= item.tolerance + ROUNDING;
  return isNear(x, wantedX) && isNear(y, wantedY);
}

function isAsDesigned(taken: Taken): boolean {
  return fits(taken, taken.item.taped);
}

/**
 * What a person finds who looks for an item in a set that lies the other way round: the item itself, where he knows it by its kind; what lies in its
 * place; or of its group the one that he takes for it.
 */
function listFoundInstead(setOut: PanelSetOut, mirror: Mirror, item: SetOutItem): readonly SetOutItem[] {
  const twin = findCounterpart(setOut, mirror, item);
  const group = item.connection === null ? [] : setOut.items.filter(({ connection }) => connection === item.connection);
  return [item, ...(twin === null ? [] : [twin]), ...group];
}

function fitsMirror(setOut: PanelSetOut, mirror: Mirror, taken: Taken): boolean {
  return listFoundInstead(setOut, mirror, taken.item).some((one) => fits(taken, mirrorTaped(setOut, mirror, one)));
}

/** Whether an item was seen in a side form in which it would not be, had the set itself been laid the other way round. */
function isInItsSide(setOut: PanelSetOut, mirror: Mirror, seenInFace: ReadonlySet<string>): boolean {
  return setOut.items.some(
    (item) =>
      item.place === 'edge' &&
      seenInFace.has(item.castIn.key) &&
      mirrorSide(setOut, mirror, item) !== item.side &&
      // Else another would be seen there.
      findCounterpart(setOut, mirror, item) === null,
  );
}

/** Mirrors that explain everything that was taped. */
function findExplaining(setOut: PanelSetOut, taken: readonly Taken[]): readonly Mirror[] {
  return listMirrors(setOut).filter((mirror) => taken.every((one) => fitsMirror(setOut, mirror, one)));
}

function nameMirrored(
  setOut: PanelSetOut,
  mirrors: readonly Mirror[],
  partner: string | null,
  seenInFace: ReadonlySet<string>,
): Recognised {
  const [first] = mirrors as readonly [Mirror, ...Mirror[]]; // called with one or more
  const all = [...new Set(mirrors.map(({ words }) => words))].join(', or as if ');
  const look = `Stop, and ${tellMarks(setOut.datumWords, []).replace('Look', 'look')}`;
  const isReflection = first.name === 'other end' || first.name === 'other rail' || first.name === 'exchanged';
  if (mirrors.every((mirror) => isInItsSide(setOut, mirror, seenInFace)))
    return {
      kind: 'from another corner',
      words: `What was taped fits as if ${all}. Inserts were seen in the side forms that they belong in, so that it is the tape that was hooked in the wrong place. ${look}`,
    };
  if (isReflection && partner !== null)
    return {
      kind: 'handed partner',
      words: `What was taped fits as if ${all}: this may be ${partner}, the handed partner. ${look}`,
    };
  return {
    kind: isReflection ? 'mirrored' : 'turned',
    words: `What was taped fits as if ${all}. The set lies ${isReflection ? 'mirrored' : 'turned'}, or it was taped from the wrong corner. ${look}`,
  };
}

/** Two items each taped where the other belongs, everything else in its place. */
function findSwapped(taken: readonly Taken[]): Recognised | null {
  const off = taken.filter((one) => !isAsDesigned(one));
  const [a, b] = off;
  if (off.length !== 2 || a === undefined || b === undefined || a.item.place !== b.item.place) return null;
  if (a.item.side !== b.item.side || !fits(a, b.item.taped) || !fits(b, a.item.taped)) return null;
  const numbers = [a.item.number, b.item.number] as const;
  const isLookAlike = a.item.castIn.item === b.item.castIn.item && a.item.assembly === b.item.assembly;
  const why = isLookAlike
    ? 'They are alike: most likely each was typed at the number of the other. Tape them once more.'
    : 'They are not alike: read the rim or try the depth with a stick, and see which is where.';
  return { kind: 'swapped', numbers, words: `No. ${numbers[0]} and ${numbers[1]} lie in each other's places. ${why}` };
}

/** Whether nothing but its number tells an insert from another of its group. */
function isAlike(a: SetOutItem, b: SetOutItem): boolean {
  return (
    a !== b &&
    a.connection !== null &&
    a.connection === b.connection &&
    a.castIn.item === b.castIn.item &&
    a.assembly === b.assembly &&
    a.place === b.place &&
    a.side === b.side
  );
}

/**
 * Everything that is out of place was taped where another of its group belongs, and the two are alike: then the set is as designed, and no mirror is
 * needed to explain what was taped.
 */
function findTakenForOther(setOut: PanelSetOut, taken: readonly Taken[]): Recognised | null {
  const off = taken.filter((one) => !isAsDesigned(one));
  const pairs = off.flatMap((one) => {
    const other = setOut.items.find((item) => isAlike(item, one.item) && fits(one, item.taped));
    return other === undefined ? [] : [[one.item.number, other.number] as const];
  });
  const [first] = pairs;
  if (first === undefined || pairs.length < off.length) return null;
  const said = pairs.map(([one, other]) => `no. ${one} was taped where no. ${other} belongs`).join(', and ');
  return {
    kind: 'swapped',
    numbers: first,
    words: `${said.charAt(0).toUpperCase()}${said.slice(1)}. They are alike: most likely the wrong one of the group was taped. Look at its number on the sheet and tape it once more.`,
  };
}

/** A group that lies mirrored or turned about its own middle, everything else in its place. */
function findTurnedGroup(setOut: PanelSetOut, taken: readonly Taken[]): Recognised | null {
  const off = taken.filter((one) => !isAsDesigned(one));
  const connection = off[0]?.item.connection ?? null;
  if (connection === null || off.some(({ item }) => item.connection !== connection)) return null;
  const members = setOut.items.filter((item) => item.connection === connection);
  const middle = (axis: 0 | 1) => {
    const values = members.map(({ taped }) => taped[axis]);
    return (Math.min(...values) + Math.max(...values)) / 2;
  };
  const [cx, cy] = [middle(0), middle(1)];
  const ways: readonly (readonly ['mirrored' | 'turned', (at: Point) => Point])[] = [
    ['mirrored', ([x, y]) => [2 * cx - x, y]],
    ['mirrored', ([x, y]) => [x, 2 * cy - y]],
    ['turned', ([x, y]) => [2 * cx - x, 2 * cy - y]],
  ];
  const ofGroup = taken.filter(({ item }) => item.connection === connection);
  const way = ways.find(([, map]) => ofGroup.every((one) => fits(one, map(one.item.taped))));
  if (way === undefined) return null;
  const what = way[0] === 'mirrored' ? 'mirrored about its own middle' : 'turned half round about its own middle';
  return {
    kind: way[0],
    words: `The group ${connection} lies ${what}. Look which side of its board or pattern is up, and at which end its mark is.`,
  };
}

/** An item that would show which way round the set lies: the one that a mirror brings farthest from what is in its place. */
function findTelling(setOut: PanelSetOut, mirror: Mirror): SetOutItem | null {
  const items = setOut.items.filter((item) => findCounterpart(setOut, mirror, item) === null);
  const awayOf = (item: SetOutItem) => {
    const at = mirrorTaped(setOut, mirror, item);
    return Math.hypot(at[0] - item.taped[0], at[1] - item.taped[1]);
  };
  const best = items.reduce<SetOutItem | null>(
    (most, item) => (most === null || awayOf(item) > awayOf(most) ? item : most),
    null,
  );
  return best !== null && awayOf(best) > 2 * best.tolerance ? best : null;
}

/** All in its place, and so it would be the other way round: what was taped cannot tell. */
function tellBlind(plan: PiecePlan, mirrors: readonly Mirror[]): Recognised {
  const { setOut } = plan;
  const blind = findBlindMirrors(plan);
  const never = blind.filter(({ name }) => mirrors.some((mirror) => mirror.name === name));
  if (never.length > 0) return { kind: 'cannot be told', words: never.map(({ words }) => words).join(' ') };
  const telling = mirrors
    .map((mirror) => findTelling(setOut, mirror)?.number ?? null)
    .filter((number) => number !== null);
  const measure = telling.length === 0 ? '' : ` Tape no. ${[...new Set(telling)].join(' and ')} too.`;
  const words = `What was taped so far fits both as designed and as if ${mirrors.map((mirror) => mirror.words).join(', or as if ')}.${measure}`;
  return { kind: 'cannot be told', words: `${words} ${tellMarks(setOut.datumWords, [])}` };
}

/**
 * What the measured places of a piece look like beside the designed ones. Something is named only where it explains everything that was taped within
 * the tolerances while the design does not; of what nobody taped nothing is said. Handed partners and panels turned in the form show as mirrors.
 * @param found by the permanent keys of the items; keys of other items are passed over
 * @param partner mark of the panel's handed partner; null: it has none
 * @param seenInFace permanent keys of the items that somebody saw in the face or side form that they belong in
 */
export function recognise(
  plan: PiecePlan,
  found: ReadonlyMap<string, FoundPlace>,
  partner: string | null = plan.setOut.panel.handedOf,
  seenInFace: ReadonlySet<string> = new Set(),
): Recognised {
  const { setOut } = plan;
  if (setOut.items.length === 0) return { kind: 'as designed' };
  const taken = setOut.items.flatMap((item): Taken[] => {
    const place = found.get(item.castIn.key);
    return place === undefined || (place.x === null && place.y === null) ? [] : [{ item, x: place.x, y: place.y }];
  });
  if (taken.length === 0)
    return { kind: 'cannot be told', words: `Nothing is taped yet. ${tellMarks(setOut.datumWords, [])}` };
  const mirrors = findExplaining(setOut, taken);
  if (taken.every(isAsDesigned)) return mirrors.length === 0 ? { kind: 'as designed' } : tellBlind(plan, mirrors);
  const other = findTakenForOther(setOut, taken);
  if (other !== null) return findSwapped(taken) ?? other;
  const swapped = findSwapped(taken) ?? findTurnedGroup(setOut, taken);
  // Of two readings alone it is likelier that the two were exchanged than that all lie the wrong way round.
  if (mirrors.length > 0 && (swapped === null || taken.length > 2))
    return nameMirrored(setOut, mirrors, partner, seenInFace);
  if (swapped !== null) return swapped;
  const numbers = taken.filter((one) => !isAsDesigned(one)).map(({ item }) => item.number);
  return {
    kind: 'off',
    words: `Out of place: no. ${numbers.join(', ')}. No mirror image and no turn of the set explains it.`,
  };
}
