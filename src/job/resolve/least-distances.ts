import type { AnchorageGroup } from '../../engine/checks/anchorage-group.ts';
import { findLeastDistanceFaults } from '../../engine/checks/least-distances.ts';
import { distanceToBoundary, prepareRegion } from '../../engine/geometry/region.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';

/** What a place has, whichever insert stands there [mm]; Infinity where nothing is near. */
export interface RoomAround {
  /** From an insert to the nearest edge of the face. */
  readonly edge: number;
  /** Between two inserts. */
  readonly spacing: number;
}

/** Measures what the places of inserts have around them. */
export function measureRoomAround(
  member: AnchorageGroup['member'],
  positions: AnchorageGroup['positions'],
): RoomAround {
  const region = prepareRegion(member.outline, member.openings);
  return {
    edge: Math.min(...positions.map(({ x, y }) => distanceToBoundary(region, x, y))),
    spacing: Math.min(
      Number.POSITIVE_INFINITY,
      ...positions.flatMap((a, i) => positions.slice(0, i).map((b) => Math.hypot(a.x - b.x, a.y - b.y))),
    ),
  };
}

/**
 * Why a group stands nearer to an edge or each other, or in thinner concrete, than its product document allows; such a group
 * never passes. Rules of the standard's own are the engine's.
 */
export function findLeastDistanceReasons(
  group: AnchorageGroup,
  item: CatalogueItem,
  findRoom: () => RoomAround,
): readonly string[] {
  const { leastEdge_mm: edge, leastSpacing_mm: spacing, leastThickness_mm: thickness } = item;
  const isBroken =
    (thickness ?? 0) > group.member.thickness ||
    (edge !== null && edge > findRoom().edge) ||
    (spacing !== null && spacing > findRoom().spacing);
  const ofProduct = isBroken ? [{ edge, spacing, thickness, source: `the document of ${item.id}` }] : [];
  return ofProduct.length === 0
    ? []
    : findLeastDistanceFaults(group, prepareRegion(group.member.outline, group.member.openings), ofProduct);
}
