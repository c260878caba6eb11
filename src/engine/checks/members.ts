import { justBelow } from './rounding.ts';

/** Which inserts of a group take part, as a key: a bit mask up to 30 inserts, else their indices joined. */
export type MemberSet = number | string;

/** Key of a set of inserts; `members` ascending. */
export function keyMembers(members: readonly number[], count: number): MemberSet {
  if (count > 30) return members.join(',');
  let mask = 0;
  for (const i of members) mask |= 1 << i;
  return mask;
}

/**
 * Sets of points chained by distances below `limit` (single linkage), each with the longest link of its minimum spanning
 * tree. O(n²).
 * @param members indices into xs and ys
 * @param limit two points nearer than this belong together [mm]
 * @returns sets in order of their first member; members ascending
 */
export function chainByDistance(
  members: readonly number[],
  xs: Float64Array,
  ys: Float64Array,
  limit: number,
): { readonly members: readonly number[]; readonly longestLink: number }[] {
  const left = [...members];
  const chains: { members: number[]; longestLink: number }[] = [];
  while (left.length > 0) {
    // Prim's algorithm: the nearest point outside is taken in until none is near enough.
    let newest = left.shift()!;
    const chain = [newest];
    const nearest = left.map(() => Number.POSITIVE_INFINITY);
    let longestLink = 0;
    for (;;) {
      let next = -1;
      let least = justBelow(limit);
      for (let k = 0; k < left.length; k++) {
        const dx = xs[left[k]!]! - xs[newest]!;
        const dy = ys[left[k]!]! - ys[newest]!;
        const distance = Math.min(nearest[k]!, Math.sqrt(dx * dx + dy * dy));
        nearest[k] = distance;
        if (distance >= least) continue;
        least = distance;
        next = k;
      }
      if (next < 0) break;
      newest = left[next]!;
      left.splice(next, 1);
      nearest.splice(next, 1);
      chain.push(newest);
      longestLink = Math.max(longestLink, least);
    }
    chains.push({ members: chain.sort((a, b) => a - b), longestLink });
  }
  return chains;
}
