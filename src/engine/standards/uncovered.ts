import type { AnchorageGroup, InsertProperties } from '../checks/anchorage-group.ts';
import { findTested } from '../checks/find-tested.ts';
import { writeMessage } from '../checks/messages.ts';

/** Why no document covers a group: a foot that is not a full head without a test, and uses that no rule here is for. */
export function findUncoveredAnywhere(group: AnchorageGroup): readonly string[] {
  const reasons: string[] = [];
  const { insert, uncoveredUses } = group;
  if (!insert.isFullHead && findTested(group, 'pull-out') === null) reasons.push(writeMessage('partial-head'));
  for (const use of uncoveredUses) reasons.push(writeMessage('uncovered-use', { use }));
  return reasons;
}

/**
 * Why an insert's qualification document is not for a standard; empty where it is. Its `standard` may name several, set apart by
 * commas or semicolons; another year of a standard is another document.
 * @param isMeant the names that mean the standard
 */
export function findQualificationFault(
  { qualification }: InsertProperties,
  document: string,
  isMeant: RegExp,
): readonly string[] {
  if (qualification === null) return [writeMessage('no-qualification', { document })];
  const { standard } = qualification;
  if (standard.split(/[,;]/).some((name) => isMeant.test(name.trim()))) return [];
  return [writeMessage('other-qualification', { document, standard })];
}
