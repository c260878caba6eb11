import { findEdition } from '../../engine/standards/editions.ts';
import type { StandardName } from '../../engine/standards/standard-name.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';

/** Any year or form of a standard that the engine can check against: a test report that names one is for that one. */
const DESIGN_STANDARD = /\b(EN 1992-4|AS 5216|ACI 318M?)\b/;

/** Whether a test counts: it names this standard, or no design standard at all ("in-house", a standard of testing). */
function countsUnder(text: string, standard: StandardName): boolean {
  const named = text.split(/[,;]/).map((name) => name.trim());
  return (
    !named.some((name) => DESIGN_STANDARD.test(name)) ||
    named.some((name) => findEdition(standard).namePattern.test(name))
  );
}

/** An insert with those of its tests only that count under a standard, and a sentence for each that does not. */
export interface CountedTests {
  readonly item: CatalogueItem;
  readonly assumptions: readonly string[];
}

/** Leaves out the tests that are for another standard; the same item where all count. */
export function countTests(item: CatalogueItem, standard: StandardName): CountedTests {
  const others = item.tested.filter((test) => !countsUnder(test.standard, standard));
  if (others.length === 0) return { item, assumptions: [] };
  return {
    item: { ...item, tested: item.tested.filter((test) => !others.includes(test)) },
    assumptions: others.map(
      (test) =>
        `test report ${test.report} (${test.mode}) is for ${test.standard}, not for ${standard}: not counted, the formula is used`,
    ),
  };
}
