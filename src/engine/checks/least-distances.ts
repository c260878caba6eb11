import { distanceToBoundary, type Region } from '../geometry/region.ts';
import { findTooClose, type MinimumDistances, type TooClose } from '../hardware/minimum-distances.ts';
import type { AnchorageGroup } from './anchorage-group.ts';

function showLength(length: number): string {
  return `${Math.round(length * 10) / 10} mm`;
}

/** The worst of equal faults in a sentence, and how many there are. */
function sayTooClose(faults: readonly TooClose[]): string {
  const worst = faults.reduce((least, fault) => (fault.has < least.has ? fault : least));
  const { kind, inserts, has, needs, source } = worst;
  const asked = `below ${showLength(needs)} (${source})`;
  const more = faults.length > 1 ? `; ${faults.length - 1} more as well` : '';
  switch (kind) {
    case 'edge':
      return `insert ${inserts[0]}: ${showLength(has)} from an edge, ${asked}${more}`;
    case 'spacing':
      return `inserts ${inserts.join(' and ')}: ${showLength(has)} apart, ${asked}${more}`;
    case 'thickness':
      return `concrete ${showLength(has)} thick, ${asked}`;
  }
}

/**
 * Where a group stands too near to an edge, to each other or in too thin concrete, by rules that keep splitting away.
 * @param region the group's face
 * @returns a sentence for each kind of fault and rule, with the worst
 */
export function findLeastDistanceFaults(
  { member, positions }: Pick<AnchorageGroup, 'member' | 'positions'>,
  region: Region,
  rules: readonly MinimumDistances[],
): readonly string[] {
  const placed = positions.map(({ id, x, y }) => ({
    id,
    at: [x, y] as const,
    edgeDistance: region.sides.length === 0 ? null : distanceToBoundary(region, x, y),
  }));
  const faults = new Map<string, TooClose[]>();
  for (const fault of findTooClose(placed, member.thickness, rules)) {
    const kind = `${fault.kind} ${fault.source}`;
    faults.set(kind, [...(faults.get(kind) ?? []), fault]);
  }
  return [...faults.values()].map(sayTooClose);
}
