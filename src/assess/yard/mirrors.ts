import type { Point } from '../../engine/geometry/point.ts';
import { findDatumSides } from '../set-out/form-words.ts';
import type { PanelSetOut, SetOutItem } from '../set-out/set-out.ts';

/** Ways in which a whole set may be laid or taped wrongly, seen in its taped lengths. */
export const MIRRORS = [
  'other end',
  'other rail',
  'half turn',
  'exchanged',
  'quarter turn',
  'quarter turn back',
] as const;

export type MirrorName = (typeof MIRRORS)[number];

/** A whole set laid or taped another way than designed. */
export interface Mirror {
  readonly name: MirrorName;
  /** The other place in the form of a place, both from the datum corner [mm]. */
  readonly map: (at: Point) => Point;
  /** Which pairs of sides of the form change places by it. */
  readonly swaps: { readonly ends: boolean; readonly rails: boolean };
  /** In the yard's words, behind "as if". */
  readonly words: string;
}

/** Lengths that differ by less [mm] make a square. */
const SQUARE = 1;

/** The mirrors of a panel's extent; those that exchange its axes only where it is square. */
export function listMirrors(setOut: PanelSetOut): readonly Mirror[] {
  const { length, width, words, datum } = setOut;
  const { end, otherEnd, rail, otherRail } = findDatumSides(words, datum);
  const both = { ends: true, rails: true };
  const always: readonly Mirror[] = [
    {
      name: 'other end',
      map: ([x, y]) => [length - x, y],
      swaps: { ends: true, rails: false },
      words: `the lengths along the form ran from ${otherEnd} and not from ${end}`,
    },
    {
      name: 'other rail',
      map: ([x, y]) => [x, width - y],
      swaps: { ends: false, rails: true },
      words: `the lengths across the form ran from ${otherRail} and not from ${rail}`,
    },
    {
      name: 'half turn',
      map: ([x, y]) => [length - x, width - y],
      swaps: both,
      words: `everything was turned half round: taped from ${otherEnd} / ${otherRail} and not from ${end} / ${rail}`,
    },
  ];
  if (Math.abs(length - width) > SQUARE) return always;
  return [
    ...always,
    {
      name: 'exchanged',
      map: ([x, y]) => [y, x],
      swaps: both,
      words: 'the lengths along the form and across it were exchanged',
    },
    {
      name: 'quarter turn',
      map: ([x, y]) => [width - y, x],
      swaps: both,
      words: 'everything was turned by a quarter',
    },
    {
      name: 'quarter turn back',
      map: ([x, y]) => [y, length - x],
      swaps: both,
      words: 'everything was turned by a quarter',
    },
  ];
}

/** Along what an edge item is taped. */
function findTapedAlong({ words }: PanelSetOut, { side }: SetOutItem): 'rail' | 'end' | 'own side' {
  if (side === words.railA || side === words.railB) return 'rail';
  return side === words.start || side === words.finish ? 'end' : 'own side';
}

/** Whether a mirror changes the axes of the form for each other. */
function isExchange({ name }: Mirror): boolean {
  return name === 'exchanged' || name === 'quarter turn' || name === 'quarter turn back';
}

/**
 * The two lengths that an item has where a mirror brings it. Heights above the bed stay, and so does what is taped from a corner of a side form of
 * its own, or along one where axes change places: it says nothing of the set.
 */
export function mirrorTaped(setOut: PanelSetOut, mirror: Mirror, item: SetOutItem): Point {
  const mapped = mirror.map(item.at);
  if (item.place !== 'edge') return mapped;
  const along = findTapedAlong(setOut, item);
  if (along === 'own side' || isExchange(mirror)) return item.taped;
  return [mapped[along === 'rail' ? 0 : 1], item.taped[1]];
}

/** The side of the form that an edge item lies in once a mirror has moved it; of the large faces, and of sides of their own, its own. */
export function mirrorSide(setOut: PanelSetOut, { swaps }: Mirror, item: SetOutItem): string | null {
  const { words } = setOut;
  const pairs: readonly (readonly [boolean, string, string])[] = [
    [swaps.ends, words.start, words.finish],
    [swaps.rails, words.railA, words.railB],
  ];
  for (const [isSwapped, one, other] of pairs) {
    if (isSwapped && item.side === one) return other;
    if (isSwapped && item.side === other) return one;
  }
  return item.side;
}

/** Whether two taped places are the same within what an item may be off. */
function isSamePlace(a: Point, b: Point, tolerance: number): boolean {
  return Math.abs(a[0] - b[0]) <= tolerance + 1e-6 && Math.abs(a[1] - b[1]) <= tolerance + 1e-6;
}

/**
 * The item that lies, once a mirror has moved all, where this one should be: who looks for this one finds that. None in a side form of its own, which
 * has no other like it, nor in an edge where axes change places.
 */
export function findCounterpart(setOut: PanelSetOut, mirror: Mirror, item: SetOutItem): SetOutItem | null {
  if (item.place === 'edge' && (isExchange(mirror) || findTapedAlong(setOut, item) === 'own side')) return null;
  const found = setOut.items.find(
    (other) =>
      other.place === item.place &&
      mirrorSide(setOut, mirror, other) === item.side &&
      isSamePlace(mirrorTaped(setOut, mirror, other), item.taped, item.tolerance),
  );
  return found ?? null;
}
