import type { Revision } from './documents/pour.ts';

/**
 * The revision to work by, of those that were issued. Looked at from the last one back: one for construction is in force; a void one takes all before
 * it out of force; one that is preliminary or for approval changes nothing, so that the one before it counts.
 * @param issued in the order of issue, the earliest first
 * @returns null where nothing may be worked by
 */
export function findRevisionInForce<Issued extends Pick<Revision, 'status'>>(issued: readonly Issued[]): Issued | null {
  const last = issued.findLast(({ status }) => status === 'for construction' || status === 'void');
  return last?.status === 'for construction' ? last : null;
}
