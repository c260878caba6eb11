import type { Point } from '../../engine/geometry/point.ts';
import { prepareRegion, type Region } from '../../engine/geometry/region.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { panelSide } from '../../job/face-frame.ts';
import {
  layerAtDepth,
  type PlacedLayer,
  type Section,
  sectionAt,
  stackLayers,
  surfaceDepth,
  totalThickness,
} from '../../job/section.ts';
import { widthBehindEdge } from '../../job/width-behind-edge.ts';
import type { AssemblyQuestion } from './assembly-question.ts';
import type { Assembly } from './assembly-type.ts';

const MOULD_FACE = 'the mould face';
const TROWELLED_FACE = 'the trowelled face';

/** Heights that lie this close together [mm] are one: sums of decimal lengths. */
const ROUNDING = 1e-6;

/** The concrete at an insert. Lengths mm. */
export interface HoldingSite {
  /** Layers there, from the lower surface upward. */
  readonly layers: readonly PlacedLayer[];
  readonly thickness: number;
  readonly surface: Assembly['surface'];
  /** Layers below the insert's own face; on an edge: from the outside face inward. */
  readonly below: readonly PlacedLayer[];
  /** The panel's outline with its openings, in the drawn face. */
  readonly region: Region;
  /** Where it stands in the drawn face; on an edge: where its axis leaves the concrete. */
  readonly at: Point;
  /** What the foot looks at: the face across from its own; on an edge what lies behind it. */
  readonly opposite: string;
  /** On an edge: its direction, the direction into the concrete, the concrete behind it, and the axis' height above the lower surface there. */
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

/** The panel's large face that is up as it lies. */
function faceUp({ faceDown }: Panel): 'outside' | 'inside' {
  return faceDown === 'outside' ? 'inside' : 'outside';
}

function findSurface(panel: Panel, section: Section): Assembly['surface'] {
  const depth = (face: 'outside' | 'inside') => {
    const found = surfaceDepth(panel, section, face);
    return Math.abs(found) < ROUNDING ? 0 : found;
  };
  return { mould: depth(panel.faceDown), trowelled: depth(faceUp(panel)) };
}

/**
 * Looks at the section of the panel where an insert stands.
 * @param region the panel's outline with its openings, where it is at hand
 */
export function findHoldingSite(
  { panel, castIn }: Pick<AssemblyQuestion, 'panel' | 'castIn'>,
  region: Region = prepareRegion(panel.outline_mm, panel.openings_mm),
): HoldingSite {
  if (castIn.face !== 'edge') {
    const at: Point = [castIn.x_mm, castIn.y_mm];
    const section = sectionAt(panel, at);
    const { layers } = section;
    return {
      layers: stackLayers(layers, panel.faceDown),
      thickness: totalThickness(layers),
      surface: findSurface(panel, section),
      below: stackLayers(layers, castIn.face),
      region,
      at,
      opposite: castIn.face === panel.faceDown ? TROWELLED_FACE : MOULD_FACE,
      edge: null,
      tilt: 0,
    };
  }
  if (castIn.edge === null)
    throw new Error(`insert ${castIn.id} of panel ${panel.mark}: on an edge without the number of its edge`);
  const { from, along, inward } = panelSide(panel, castIn.edge);
  const at: Point = [from[0] + along[0] * castIn.x_mm, from[1] + along[1] * castIn.x_mm];
  const section = sectionAt(panel, [at[0] + inward[0], at[1] + inward[1]]);
  const { layers } = section;
  const surface = findSurface(panel, section);
  const aboveForm = panel.faceDown === 'outside' ? castIn.y_mm : panel.thickness_mm - castIn.y_mm;
  return {
    layers: stackLayers(layers, panel.faceDown),
    thickness: totalThickness(layers),
    surface,
    below: stackLayers(layers, 'outside'),
    region,
    at,
    opposite: 'the side or opening behind it',
    edge: {
      along,
      inward,
      width: widthBehindEdge(panel, region, castIn.edge, castIn.x_mm),
      height: aboveForm - surface.mould,
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

function isLevel([a, b]: readonly [number, number]): boolean {
  return Math.abs(a - b) < ROUNDING;
}

/** What lies beyond a layer: a face of the panel as it lies, or another layer. `towardBed`: which way one looks. */
export function nameBeyond(layers: readonly PlacedLayer[], layer: PlacedLayer, towardBed: boolean): string {
  const next = layers.find(({ from, to }) => isLevel(towardBed ? [to, layer.from] : [from, layer.to]));
  if (next !== undefined) return `the ${nameLayer(next.kind)}`;
  return towardBed ? MOULD_FACE : TROWELLED_FACE;
}

/** The layer that the axis of an edge insert lies in; undefined where it lies below or above the concrete there. */
export function findEdgeLayer(
  { layers }: Pick<HoldingSite, 'layers'>,
  { height }: Pick<NonNullable<HoldingSite['edge']>, 'height'>,
): PlacedLayer | undefined {
  return height < 0 ? undefined : layerAtDepth(layers, height);
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
  { below, opposite }: Pick<HoldingSite, 'below' | 'opposite'>,
  bearing: number,
  end: number,
): { readonly layer: PlacedLayer } | { readonly layer: null; readonly where: string } {
  const upper = layerAtDepth(below, bearing);
  const lower = layerAtDepth(below, end);
  if (upper === undefined || lower === undefined) return { layer: null, where: `comes out of ${opposite}` };
  const other = [upper, lower].find(({ kind }) => kind !== 'structural');
  if (other !== undefined) return { layer: null, where: `stands in the ${nameLayer(other.kind)}` };
  return upper === lower ? { layer: lower } : { layer: null, where: 'stands across a joint of two layers' };
}
