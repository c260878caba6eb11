import type { AnchorageGroup } from '../../engine/checks/anchorage-group.ts';
import { findLeastDistanceFaults } from '../../engine/checks/least-distances.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';

/** Why a group stands too near to an edge, to each other or in too thin concrete; such a group never passes. */
export function findLeastDistanceReasons(group: AnchorageGroup, item: CatalogueItem): readonly string[] {
  const { leastEdge_mm: edge, leastSpacing_mm: spacing, leastThickness_mm: thickness } = item;
  const isGiven = edge !== null || spacing !== null || thickness !== null;
  const ofProduct = isGiven ? [{ edge, spacing, thickness, source: `the document of ${item.id}` }] : [];
  // An insert with a tightening torque of its own will be torqued; without one its bolt is brought to snug only.
  return findLeastDistanceFaults(group, item.maxTorque_Nm !== null, ofProduct);
}
