import type { Remedy } from './as-cast-report.ts';

const RANK: Readonly<Record<Remedy['verdict'], number>> = { works: 0, 'not known': 1, 'does not work': 2 };

/** Of some remedies the one that works with the least used; else the one that speaks least against itself; none of none. */
export function pickBest(remedies: readonly Remedy[]): Remedy | undefined {
  const used = ({ ratio }: Remedy) => ratio ?? Number.POSITIVE_INFINITY;
  const isComputed = ({ clearance }: Remedy) => (clearance === null ? 1 : 0);
  return [...remedies].sort(
    (a, b) =>
      RANK[a.verdict] - RANK[b.verdict] ||
      isComputed(a) - isComputed(b) ||
      a.why.length - b.why.length ||
      Number(used(a) > used(b)) - Number(used(a) < used(b)),
  )[0];
}
