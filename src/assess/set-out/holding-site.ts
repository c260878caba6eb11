import type { Point } from '../../engine/geometry/point.ts';
import { prepareRegion, type Region } from '../../engine/geometry/region.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { panelSide } from '../../job/face-frame.ts';
import { layerAtDepth, layersAt, type PlacedLayer, stackLayers, totalThickness } from '../../job/section.ts';
import { widthBehindEdge } from '../../job/width-behind-edge.ts';
import type { AssemblyQuestion } from './assembly-question.ts';

/** The concrete at an insert. Lengths mm. */
export interface HoldingSite {
  /** Layers there, from the lower surface upward. */
  readonly layers: readonly PlacedLayer[];
  readonly thickness: number;
  /** Layers below the insert's own face; on an edge: from the outside face inward. */
  readonly below: readonly PlacedLayer[];
  /** The panel's outline with its openings, in the drawn face. */
  readonly region: Region;
  /** Where it stands in the drawn face; on an edge: where its axis leaves the concrete. */
  readonly at: Point;
  /** On an edge: its direction, the direction into the concrete, the concrete behind it, and the axis' height above the lower surface. */
  readonly edge: {
    readonly along: Point;
    readonly inward: Point;
    readonly width: number;
    readonly height: number;
  } | null;
  /** Axis off square to the face, from a battered side form [rad]. */
  readonly tilt: number;
}

function findBatter(panel: Panel, edge: number): number {
  const batter = panel.edges.find((side) => side.edge === edge)?.batter_deg ?? 0;
  return (batter * Math.PI) / 180;
}

/** Looks at the section of the panel where an insert stands. */
export function findHoldingSite({ panel, castIn }: Pick<AssemblyQuestion, 'panel' | 'castIn'>): HoldingSite {
  const region = prepareRegion(panel.outline_mm, panel.openings_mm);
  if (castIn.face !== 'edge') {
    const at: Point = [castIn.x_mm, castIn.y_mm];
    const layers = layersAt(panel, at);
    return {
      layers: stackLayers(layers, panel.faceDown),
      thickness: totalThickness(layers),
      below: stackLayers(layers, castIn.face),
      region,
      at,
      edge: null,
      tilt: 0,
    };
  }
  if (castIn.edge === null)
    throw new Error(`insert ${castIn.id} of panel ${panel.mark}: on an edge without the number of its edge`);
  const { from, along, inward } = panelSide(panel, castIn.edge);
  const at: Point = [from[0] + along[0] * castIn.x_mm, from[1] + along[1] * castIn.x_mm];
  const layers = layersAt(panel, [at[0] + inward[0], at[1] + inward[1]]);
  const thickness = totalThickness(layers);
  return {
    layers: stackLayers(layers, panel.faceDown),
    thickness,
    below: stackLayers(layers, 'outside'),
    region,
    at,
    edge: {
      along,
      inward,
      width: widthBehindEdge(panel, region, castIn.edge, castIn.x_mm),
      height: panel.faceDown === 'outside' ? castIn.y_mm : thickness - castIn.y_mm,
    },
    tilt: findBatter(panel, castIn.edge),
  };
}

/** How a layer is called on a sheet. */
export function nameLayer(kind: PlacedLayer['kind']): string {
  return kind === 'structural' ? 'concrete' : kind;
}

/** What a cover line says that it looks at where it is no face and no layer. */
export const NEAREST_SIDE = 'the nearest side or opening';

/** Heights that lie this close together [mm] are one: sums of decimal lengths. */
const ROUNDING = 1e-6;

function isLevel([a, b]: readonly [number, number]): boolean {
  return Math.abs(a - b) < ROUNDING;
}

/** What lies beyond a layer: a face of the panel as it lies, or another layer. `towardBed`: which way one looks. */
export function nameBeyond(layers: readonly PlacedLayer[], layer: PlacedLayer, towardBed: boolean): string {
  const next = layers.find(({ from, to }) => isLevel(towardBed ? [to, layer.from] : [from, layer.to]));
  if (next !== undefined) return `the ${nameLayer(next.kind)}`;
  return towardBed ? 'the mould face' : 'the trowelled face';
}

/** The layer seen from the lower surface upward, in which a depth below the insert's face lies. */
export function fromBedUp(
  site: Pick<HoldingSite, 'thickness'>,
  { place }: Pick<AssemblyQuestion, 'place'>,
  layer: PlacedLayer,
): PlacedLayer {
  if (place === 'mould face') return layer;
  return { ...layer, from: site.thickness - layer.to, to: site.thickness - layer.from };
}

/** The structural layer that the foot of an insert stands in, bearing side and end; or why there is none. */
export function findFootLayer(
  { below }: Pick<HoldingSite, 'below'>,
  bearing: number,
  end: number,
): { readonly layer: PlacedLayer } | { readonly layer: null; readonly where: string } {
  const upper = layerAtDepth(below, bearing);
  const lower = layerAtDepth(below, end);
  if (upper === undefined || lower === undefined) return { layer: null, where: 'comes out of the far side' };
  const other = [upper, lower].find(({ kind }) => kind !== 'structural');
  if (other !== undefined) return { layer: null, where: `stands in the ${nameLayer(other.kind)}` };
  return upper === lower ? { layer: lower } : { layer: null, where: 'stands across a joint of two layers' };
}
