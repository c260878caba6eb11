import type { CastIn } from '../documents/cast-in.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { Panel } from '../documents/panel.ts';
import { layersAt, totalThickness } from '../section.ts';

/** Concrete left behind an insert's foot to the far face [mm]; null for an insert in an edge. */
export function findCoverBehind(panel: Panel, castIn: CastIn, item: CatalogueItem): number | null {
  if (castIn.face === 'edge') return null;
  return totalThickness(layersAt(panel, [castIn.x_mm, castIn.y_mm])) - castIn.recess_mm - item.length_mm;
}
