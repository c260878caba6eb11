import type { Assembly } from './assembly-type.ts';
import type { AssemblyDraft } from './find-assembly.ts';

/** Places of a mm that tell heights apart: beyond, sums of decimal lengths differ by their order. */
const PLACES = 6;

/** What makes two assemblies one on the sheet: everything that the setter builds or fetches and the section shows, not which insert it is. */
function identify({
  item,
  way,
  place,
  thickness,
  surface,
  layers,
  recess,
  stack,
  chair,
  tilt_deg,
  crossBar,
  stage,
}: AssemblyDraft): string {
  return JSON.stringify([
    item.id,
    way.id,
    place,
    thickness,
    surface,
    layers.map(({ kind, from, to }) => [kind, from, to]),
    recess,
    stack.map(({ kind, words, height }) => [kind, words, Number(height.toFixed(PLACES))]),
    chair?.part.id ?? null,
    tilt_deg,
    crossBar,
    stage,
  ]);
}

/** A, B, … Z, AA, AB, … */
export function writeLetter(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : writeLetter(Math.floor(index / 26) - 1) + last;
}

/**
 * Gives each distinct assembly a letter, in the order of the walk. Covers and problems of the one with the least cover are shown, the worst that
 * the setter can meet.
 * @param drafts of item 1, 2, … of the walk; null where an item has none
 */
export function letterAssemblies(drafts: readonly (AssemblyDraft | null)[]): {
  readonly assemblies: readonly Assembly[];
  readonly letters: readonly (string | null)[];
} {
  const found = new Map<string, { letter: string; draft: AssemblyDraft; numbers: number[] }>();
  const letters = drafts.map((draft, i) => {
    if (draft === null) return null;
    const name = identify(draft);
    const known = found.get(name);
    if (known === undefined) {
      const letter = writeLetter(found.size);
      found.set(name, { letter, draft, numbers: [i + 1] });
      return letter;
    }
    known.numbers.push(i + 1);
    if (leastSpare(draft) < leastSpare(known.draft)) known.draft = draft;
    return known.letter;
  });
  const assemblies = [...found.values()].map(({ letter, draft, numbers }) => ({ ...draft, letter, numbers }));
  return { assemblies, letters };
}

/** How much more cover there is than wanted, at the worst part [mm]. */
function leastSpare({ covers }: AssemblyDraft): number {
  return Math.min(...covers.map(({ cover, wanted }) => cover - wanted));
}
