import type { Point } from '../engine/geometry/point.ts';
import { isWithinRing } from '../engine/geometry/rings.ts';
import type { Layer, Panel } from './documents/panel.ts';

/** A layer with its place in the section: depths below the face that one looks at [mm]. */
export interface PlacedLayer {
  readonly kind: Layer['kind'];
  readonly from: number;
  readonly to: number;
}

/** The panel's own layers, from outside to inside. */
function nominalLayers(panel: Panel): readonly Layer[] {
  return panel.layers.length > 0 ? panel.layers : [{ kind: 'structural', thickness_mm: panel.thickness_mm }];
}

/** The layers at a point of the drawn face, from outside to inside: those of the last zone around it, else the panel's own. */
export function layersAt(panel: Panel, at: Point): readonly Layer[] {
  const zone = panel.zones.findLast((candidate) => isWithinRing(candidate.outline_mm, at[0], at[1]));
  return zone === undefined ? nominalLayers(panel) : zone.layers;
}

/** Stacks layers (given from outside to inside) below the face that one looks at. */
export function stackLayers(layers: readonly Layer[], face: 'outside' | 'inside'): readonly PlacedLayer[] {
  const ordered = face === 'outside' ? layers : [...layers].reverse();
  let depth = 0;
  return ordered.map(({ kind, thickness_mm }) => {
    const placed = { kind, from: depth, to: depth + thickness_mm };
    depth = placed.to;
    return placed;
  });
}

/** Thickness of all layers [mm]. */
export function totalThickness(layers: readonly Layer[]): number {
  return layers.reduce((sum, layer) => sum + layer.thickness_mm, 0);
}

/** The layer in which a depth lies (at a joint: the one above); undefined below the far face. */
export function layerAtDepth(stack: readonly PlacedLayer[], depth: number): PlacedLayer | undefined {
  return stack.find((layer) => depth <= layer.to);
}
