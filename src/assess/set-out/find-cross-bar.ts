import { showLength } from '../../job/resolve/local-member-type.ts';
import type { AssemblyQuestion, Finding } from './assembly-question.ts';
import type { Assembly } from './assembly-type.ts';

/** The bar through the cross hole, what is wrong with it, and what the sheet says of it. */
export interface FoundCrossBar {
  readonly bar: Assembly['crossBar'];
  readonly findings: readonly Finding[];
  readonly words: string;
}

function fault(text: string): Finding[] {
  return [{ severity: 'error', kind: 'cross bar', text }];
}

/**
 * The cross bar that the maker or the designer asks for: the designer's size before the maker's. Whether one is needed is theirs to say; it adds
 * nothing to any resistance here.
 */
export function findCrossBar({ castIn, item }: Pick<AssemblyQuestion, 'castIn' | 'item'>): FoundCrossBar {
  if (castIn.crossBar === null && item.crossBar === null)
    return { bar: null, findings: [], words: "Cross bar: none asked for by the supplier's data." };
  const asks = castIn.crossBar === null ? 'the maker' : 'the designer';
  const diameter = castIn.crossBar?.diameter_mm ?? item.crossBar?.diameter_mm;
  const length = castIn.crossBar?.length_mm ?? item.crossBar?.length_mm;
  const unknown = `Cross bar: asked for by ${asks}, not settled; see the findings.`;
  if (item.crossHole === null)
    return {
      bar: null,
      findings: fault(
        `${asks} asks for a cross bar, and ${item.id} has no cross hole: take an insert with one, or leave the bar out if ${asks} agrees`,
      ),
      words: unknown,
    };
  if (diameter === undefined || length === undefined)
    return {
      bar: null,
      findings: fault(
        `a cross bar is asked for without its ${diameter === undefined ? 'diameter' : 'length'}, which the catalogue does not give for ${item.id}: ask the designer`,
      ),
      words: unknown,
    };
  const hole = item.crossHole.diameter_mm;
  const size = `${showLength(diameter)} × ${showLength(length)}`;
  return {
    bar: { diameter, length, fromFoot: item.crossHole.fromFoot_mm },
    findings:
      diameter > hole
        ? fault(
            `a cross bar of ${showLength(diameter)} does not go through the hole of ${showLength(hole)} of ${item.id}: take a bar of at most ${showLength(hole)}`,
          )
        : [],
    words: `Cross bar ${size} is through the hole, in the middle, and tied to the cage; it holds in place only and adds no computed resistance (asked for by ${asks}).`,
  };
}
