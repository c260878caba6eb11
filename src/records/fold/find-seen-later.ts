import type { OrderedRecords } from './order-records.ts';

/** Groups that one pass carries, as the bits of a number. */
const BITS = 32;

/**
 * Of records in groups those that another one of their group has seen, be it through others of the piece. One pass from the last record to the first
 * for each 32 groups: long chains need no recursion, large pieces no table of all with all.
 * @param groups places of the records of each group; a record is in one group at most
 * @returns by place: 1 where one of its group has seen it
 */
export function findSeenLater({ records, seen }: OrderedRecords, groups: Iterable<readonly number[]>): Uint8Array {
  const isSeenLater = new Uint8Array(records.length);
  const several = [...groups].filter((group) => group.length > 1);
  for (let first = 0; first < several.length; first += BITS) {
    const own = new Int32Array(records.length);
    for (const [bit, group] of several.slice(first, first + BITS).entries())
      for (const place of group) own[place] = 1 << bit;
    /** Groups of which a later record has seen this one. */
    const later = new Int32Array(records.length);
    for (let place = records.length - 1; place >= 0; place -= 1) {
      if ((own[place]! & later[place]!) !== 0) isSeenLater[place] = 1;
      const carried = own[place]! | later[place]!;
      if (carried !== 0) for (const earlier of seen[place]!) later[earlier] = later[earlier]! | carried;
    }
  }
  return isSeenLater;
}

/** All that a record has seen, be it through others: 1 by place. */
export function findSeenBy({ records, seen }: OrderedRecords, place: number): Uint8Array {
  const isSeen = new Uint8Array(records.length);
  const rest = [...seen[place]!];
  for (let next = rest.pop(); next !== undefined; next = rest.pop()) {
    if (isSeen[next] === 1) continue;
    isSeen[next] = 1;
    rest.push(...seen[next]!);
  }
  return isSeen;
}
