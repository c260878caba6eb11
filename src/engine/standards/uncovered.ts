import type { AnchorageGroup, InsertProperties } from '../checks/anchorage-group.ts';
import { writeMessage } from '../checks/messages.ts';

/** Why no document covers a group: a foot that is not a full head without a test, and uses that no rule here is for. */
export function findUncoveredAnywhere({ concrete, insert, uncoveredUses }: AnchorageGroup): readonly string[] {
  const reasons: string[] = [];
  const hasPullOutTest = insert.tested.some(
    (test) => test.mode === 'pull-out' && test.fromStrength <= concrete.strength,
  );
  if (!insert.isFullHead && !hasPullOutTest) reasons.push(writeMessage('partial-head'));
  for (const use of uncoveredUses) reasons.push(writeMessage('uncovered-use', { use }));
  return reasons;
}

/**
 * Whether an insert's qualification document is for a standard. Its `standard` may name several, set apart by commas or
 * semicolons.
 * @param isMeant whether one of those names means the standard
 */
export function isQualifiedFor({ qualification }: InsertProperties, isMeant: (name: string) => boolean): boolean {
  if (qualification === null) return false;
  return qualification.standard.split(/[,;]/).some((name) => isMeant(name.trim()));
}
