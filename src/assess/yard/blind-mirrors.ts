import type { SetOutItem } from '../set-out/set-out.ts';
import { findCounterpart, listMirrors, type MirrorName } from './mirrors.ts';
import type { PiecePlan } from './piece-plan.ts';

/** A way of laying or taping everything wrongly that no taped length of this piece can show. */
export interface BlindMirror {
  readonly name: MirrorName;
  /** What to look at instead: sentences. */
  readonly words: string;
  /** Numbers of inserts in whose places others would be: by rim or stick they can be told. Empty: all alike. */
  readonly lookAlikes: readonly number[];
}

/** What a yard sees in an insert that stands in its place. */
function isOther(a: SetOutItem, b: SetOutItem): boolean {
  return a.castIn.item !== b.castIn.item || a.assembly !== b.assembly || a.castIn.role !== b.castIn.role;
}

/** What is looked at where measuring cannot tell: the corner that is painted, the panel's mark, and what tells inserts of like places apart. */
export function tellMarks(datumWords: string, lookAlikes: readonly number[]): string {
  const marks = `Look at the painted datum mark (${datumWords}) and at the mark on the form.`;
  if (lookAlikes.length === 0) return marks;
  return `${marks} Read the rim or try the depth with a stick at no. ${lookAlikes.join(', ')}: others would be in their places.`;
}

/**
 * The mirrors and turns under which the pattern of a piece is its own image within the tolerances: where every insert has another in its place, no
 * measuring shows that all lie the wrong way round.
 */
export function findBlindMirrors({ setOut }: PiecePlan): readonly BlindMirror[] {
  if (setOut.items.length === 0) return [];
  return listMirrors(setOut).flatMap((mirror): BlindMirror[] => {
    const pairs = setOut.items.map((item) => ({ item, twin: findCounterpart(setOut, mirror, item) }));
    if (pairs.some(({ twin }) => twin === null)) return [];
    const lookAlikes = pairs.flatMap(({ item, twin }) => (twin !== null && isOther(item, twin) ? [item.number] : []));
    const words = `Measuring cannot show it here as if ${mirror.words}. ${tellMarks(setOut.datumWords, lookAlikes)}`;
    return [{ name: mirror.name, words, lookAlikes }];
  });
}
