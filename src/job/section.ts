import type { Point } from '../engine/geometry/point.ts';
import { isWithinRing } from '../engine/geometry/rings.ts';
import type { Layer, Panel } from './documents/panel.ts';

/** A layer with its place in the section: depths below the face that one looks at [mm]. */
export interface PlacedLayer {
  readonly kind: Layer['kind'];
  readonly from: number;
  readonly to: number;
}

/** A section of the panel: its layers from outside to inside, and how far its outside surface lies behind the panel's [mm]. */
export interface Section {
  readonly layers: readonly Layer[];
  readonly behindOutside: number;
}

/** The panel's own section. */
export function nominalSection(panel: Panel): Section {
  const own: readonly Layer[] = [{ kind: 'structural', thickness_mm: panel.thickness_mm }];
  return { layers: panel.layers.length > 0 ? panel.layers : own, behindOutside: 0 };
}

/** A zone's section. */
export function sectionOfZone(zone: Panel['zones'][number]): Section {
  return { layers: zone.layers, behindOutside: zone.behindOutside_mm };
}

/** The zone at a point of the drawn face: the last one listed around it; undefined where the panel's own section is. */
export function zoneAt(panel: Panel, at: Point): Panel['zones'][number] | undefined {
  return panel.zones.findLast((candidate) => isWithinRing(candidate.outline_mm, at[0], at[1]));
}

/** The section at a point of the drawn face. */
export function sectionAt(panel: Panel, at: Point): Section {
  const zone = zoneAt(panel, at);
  return zone === undefined ? nominalSection(panel) : sectionOfZone(zone);
}

/** The layers at a point of the drawn face, from outside to inside. */
export function layersAt(panel: Panel, at: Point): readonly Layer[] {
  return sectionAt(panel, at).layers;
}

/** How far a section's surface lies behind the panel's own face [mm]; negative where it stands out. */
export function surfaceDepth(panel: Panel, section: Section, face: 'outside' | 'inside'): number {
  if (face === 'outside') return section.behindOutside;
  return panel.thickness_mm - section.behindOutside - totalThickness(section.layers);
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

/** A section's layers by their distance from the panel's own outside face, wherever the section's surface lies [mm]. */
export function placeFromOutside({ layers, behindOutside }: Section): readonly PlacedLayer[] {
  return stackLayers(layers, 'outside').map(({ kind, from, to }) => ({
    kind,
    from: behindOutside + from,
    to: behindOutside + to,
  }));
}

/** Thickness of all layers [mm]. */
export function totalThickness(layers: readonly Layer[]): number {
  return layers.reduce((sum, layer) => sum + layer.thickness_mm, 0);
}

/** The layer in which a depth lies (at a joint: the one above); undefined beyond the last. */
export function layerAtDepth(stack: readonly PlacedLayer[], depth: number): PlacedLayer | undefined {
  return stack.find((layer) => depth <= layer.to);
}
