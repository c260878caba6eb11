import { distanceToBoundary, prepareRegion } from '../geometry/region.ts';
import {
  findMinimumDistancesOfAci318,
  findTooClose,
  type MinimumDistances,
  type TooClose,
} from '../hardware/minimum-distances.ts';
import type { AnchorageGroup } from './anchorage-group.ts';

function showLength(length: number): string {
  return `${Math.round(length * 10) / 10} mm`;
}

/** The worst of equal faults in a sentence, and how many there are. */
function sayTooClose(faults: readonly TooClose[]): string {
  const worst = faults.reduce((least, fault) => (fault.has < least.has ? fault : least));
  const { kind, inserts, has, needs, source } = worst;
  const asked = `below ${showLength(needs)} (${source})`;
  const more = faults.length > 1 ? `; ${faults.length - 1} more so` : '';
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
 * Where a group stands too near to an edge, to each other or in too thin concrete: by rules of its product's document, and by
 * ACI 318 the code's own, which keep splitting away.
 * @param isTorqued whether the inserts are tightened beyond snug
 * @returns a sentence for each kind of fault and rule, with the worst
 */
export function findLeastDistanceFaults(
  group: AnchorageGroup,
  isTorqued: boolean,
  ofProduct: readonly MinimumDistances[],
): readonly string[] {
  const { standard, insert, member, positions } = group;
  const ofCode = standard.startsWith('ACI')
    ? [findMinimumDistancesOfAci318(insert.shaftDiameter, isTorqued, null)]
    : [];
  const rules = [...ofProduct, ...ofCode];
  if (rules.length === 0) return [];
  const region = prepareRegion(member.outline, member.openings);
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
