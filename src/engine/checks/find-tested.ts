import type { AnchorageGroup, TestedResistance } from './anchorage-group.ts';

/** The test report that replaces a formula: of those of a mode that hold at the group's concrete strength, the least. */
export function findTested(
  { insert, concrete }: Pick<AnchorageGroup, 'insert' | 'concrete'>,
  mode: TestedResistance['mode'],
): TestedResistance | null {
  let least: TestedResistance | null = null;
  for (const test of insert.tested) {
    if (test.mode !== mode || test.fromStrength > concrete.strength) continue;
    if (least === null || test.characteristic < least.characteristic) least = test;
  }
  return least;
}
