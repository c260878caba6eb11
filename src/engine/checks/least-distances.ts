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

function sayTooClose({ kind, inserts, has, needs, source }: TooClose): string {
  const asked = `${showLength(needs)} (${source})`;
  switch (kind) {
    case 'edge':
      return `insert ${inserts[0]}: ${showLength(has)} from an edge, below ${asked}`;
    case 'spacing':
      return `inserts ${inserts.join(' and ')}: ${showLength(has)} apart, below ${asked}`;
    case 'thickness':
      return `concrete ${showLength(has)} thick, below ${asked}`;
  }
}

/**
 * Where a group stands too near to an edge, to each other or in too thin concrete: by rules of its product's document, and by
 * ACI 318 the code's own, which keep splitting away.
 * @param isTorqued whether the inserts are tightened beyond snug
 * @returns one sentence each
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
  return findTooClose(placed, member.thickness, rules).map(sayTooClose);
}
