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
  const left = new Set(members);
  const chains: { members: number[]; longestLink: number }[] = [];
  for (const first of members) {
    if (!left.delete(first)) continue;
    // Prim's algorithm: the nearest point outside is taken in until none is near enough.
    const chain = [first];
    const nearest = new Map<number, number>();
    let longestLink = 0;
    let newest = first;
    for (;;) {
      let next = -1;
      let least = limit;
      for (const i of left) {
        const d = Math.min(
          nearest.get(i) ?? Number.POSITIVE_INFINITY,
          Math.hypot(xs[i]! - xs[newest]!, ys[i]! - ys[newest]!),
        );
        nearest.set(i, d);
        if (d < least) {
          least = d;
          next = i;
        }
      }
      if (next < 0) break;
      left.delete(next);
      chain.push(next);
      longestLink = Math.max(longestLink, least);
      newest = next;
    }
    chains.push({ members: chain.sort((a, b) => a - b), longestLink });
  }
  return chains;
}
