import type { Point } from '../../engine/geometry/point.ts';
import { distanceToBoundary, isInside, type Region } from '../../engine/geometry/region.ts';
import { isWithinRing } from '../../engine/geometry/rings.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { HoldingPart } from '../documents/holding-parts.ts';
import type { Layer, Panel } from '../documents/panel.ts';
import { panelSide } from '../face-frame.ts';
import type { DocumentFault } from '../fault.ts';
import { layerAtDepth, layersAt, stackLayers, totalThickness } from '../section.ts';
import type { Entry, Path, SiftedJob } from '../sift.ts';
import { widthBehindEdge } from '../width-behind-edge.ts';
import { prepareArea } from './check-panels.ts';
import { faultAt } from './fault-at.ts';

/** What an insert may be in its role: a brace or a lifter only by the maker's own rating. */
function checkRole({ path, value: castIn }: Entry<CastIn>, item: CatalogueItem | undefined): DocumentFault[] {
  const { role } = castIn;
  if (role === 'fixing' && castIn.item === null) {
    return [faultAt([...path, 'item'], null, 'a catalogue item', 'a fixing needs a type of the catalogue')];
  }
  if (castIn.item === null && castIn.description === null) {
    const text = `${role} ${castIn.id} has neither a type of the catalogue nor a description; expected one of them`;
    return [faultAt([...path, 'description'], null, 'a description', text)];
  }
  if ((role !== 'brace' && role !== 'lifting') || item === undefined) return [];
  if (item.ratedLoads.some((rated) => rated.role === role)) return [];
  const text = `${item.id} is a fixing insert and has no rated load for ${role} with the maker's document; expected an insert rated for ${role}`;
  return [faultAt([...path, 'role'], role, `an insert with a rated load for ${role} and its document`, text)];
}

function checkDepth(castIn: CastIn, item: CatalogueItem, panel: Panel, path: Path): DocumentFault[] {
  const at: Point = [castIn.x_mm, castIn.y_mm];
  if (castIn.face === 'edge') return [];
  const layers = layersAt(panel, at);
  const total = totalThickness(layers);
  const end = castIn.recess_mm + item.length_mm;
  const words = `${item.id}, ${item.length_mm} mm long${castIn.recess_mm > 0 ? ` in a recess of ${castIn.recess_mm} mm` : ''},`;
  if (end >= total) {
    const text = `${words} reaches through the panel, which is ${total} mm thick there; expected an insert shorter than ${total - castIn.recess_mm} mm`;
    return [faultAt([...path, 'item'], item.id, `shorter than ${total - castIn.recess_mm} mm`, text)];
  }
  const stack = stackLayers(layers, castIn.face);
  const bearing = layerAtDepth(stack, castIn.recess_mm + item.embedment_mm);
  const bottom = layerAtDepth(stack, end);
  const wrong = [bearing, bottom].find((layer) => layer?.kind !== 'structural');
  if (wrong === undefined && bearing === bottom) return [];
  const where = wrong === undefined ? 'across a joint of two layers' : `in the layer ${wrong.kind}`;
  const text = `the foot of ${words} stands ${where}; expected it within one structural layer`;
  return [faultAt([...path, 'item'], item.id, 'a foot within one structural layer', text)];
}

function checkOnLargeFace(castIn: CastIn, panel: Panel, region: Region, path: Path): DocumentFault[] {
  const [x, y]: Point = [castIn.x_mm, castIn.y_mm];
  if (castIn.edge !== null) {
    const text = `an insert on the ${castIn.face} face has no edge; expected face "edge", or no edge`;
    return [faultAt([...path, 'edge'], castIn.edge, 'no edge', text)];
  }
  if (isInside(region, x, y)) return [];
  const opening = region.openings.findIndex((ring) => isWithinRing(ring, x, y));
  const where = opening >= 0 ? `in opening ${opening + 1}` : 'outside the outline';
  const text = `position (${x}, ${y}) lies ${where} of panel ${panel.mark}; expected a place in the concrete`;
  return [faultAt([...path, 'x_mm'], `${x}, ${y}`, 'a place in the concrete', text)];
}

/** The section just behind an edge where an insert stands. */
function layersBehindEdge(castIn: CastIn, edge: number, panel: Panel): readonly Layer[] {
  const { from, along, inward } = panelSide(panel, edge);
  return layersAt(panel, [from[0] + along[0] * castIn.x_mm + inward[0], from[1] + along[1] * castIn.x_mm + inward[1]]);
}

function checkOnEdge(
  castIn: CastIn,
  item: CatalogueItem | undefined,
  panel: Panel,
  region: Region,
  path: Path,
): DocumentFault[] {
  const last = panel.outline_mm.length - 1;
  if (castIn.edge === null || castIn.edge > last) {
    const text = `an insert on an edge needs the number of the edge, 0 to ${last}`;
    return [faultAt([...path, 'edge'], castIn.edge, `0 to ${last}`, text)];
  }
  const side = panelSide(panel, castIn.edge);
  if (castIn.x_mm <= 0 || castIn.x_mm >= side.length) {
    const text = `${castIn.x_mm} mm along edge ${castIn.edge} lies beyond its ends; expected between 0 and ${side.length} mm`;
    return [faultAt([...path, 'x_mm'], castIn.x_mm, `between 0 and ${side.length} mm`, text)];
  }
  const layers = layersBehindEdge(castIn, castIn.edge, panel);
  const total = totalThickness(layers);
  if (castIn.y_mm <= 0 || castIn.y_mm >= total) {
    const text = `${castIn.y_mm} mm from the outside face lies off an edge ${total} mm thick; expected between 0 and ${total} mm`;
    return [faultAt([...path, 'y_mm'], castIn.y_mm, `between 0 and ${total} mm`, text)];
  }
  if (castIn.item === null || item === undefined) return [];
  const layer = layerAtDepth(stackLayers(layers, 'outside'), castIn.y_mm);
  if (layer?.kind !== 'structural') {
    const text = `the insert stands in the layer ${layer?.kind} of the edge; expected a structural layer`;
    return [faultAt([...path, 'y_mm'], castIn.y_mm, 'a structural layer', text)];
  }
  const width = widthBehindEdge(panel, region, castIn.edge, castIn.x_mm);
  const end = castIn.recess_mm + item.length_mm;
  if (end < width) return [];
  const text = `${item.id} needs ${end} mm behind edge ${castIn.edge}, where the concrete is ${width} mm deep; expected a shorter insert`;
  return [faultAt([...path, 'item'], item.id, `shorter than ${width - castIn.recess_mm} mm`, text)];
}

/** Half the width of what must be within the concrete: the foot where it is round, else the body [mm]. */
function halfWidth(item: CatalogueItem): number {
  return (item.foot.kind === 'diameter' ? item.foot.diameter_mm : item.bodyDiameter_mm) / 2;
}

/** An insert whose foot or body would stick out of the side of the concrete. */
function checkSides(castIn: CastIn, item: CatalogueItem, panel: Panel, region: Region, path: Path): DocumentFault[] {
  const needed = halfWidth(item);
  let left = distanceToBoundary(region, castIn.x_mm, castIn.y_mm);
  if (castIn.face === 'edge') {
    if (castIn.edge === null) return [];
    const { length } = panelSide(panel, castIn.edge);
    const layer = layerAtDepth(stackLayers(layersBehindEdge(castIn, castIn.edge, panel), 'outside'), castIn.y_mm);
    if (layer === undefined) return [];
    left = Math.min(castIn.x_mm, length - castIn.x_mm, castIn.y_mm - layer.from, layer.to - castIn.y_mm);
  }
  if (left >= needed) return [];
  const text = `${item.id} is ${2 * needed} mm wide and would stick out: its axis has ${left} mm to the nearest side; expected at least ${needed} mm`;
  return [faultAt([...path, 'x_mm'], left, `at least ${needed} mm to the nearest side`, text)];
}

/** An insert of the catalogue in its place: within the concrete, its foot in one structural layer, nothing sticking out of a side. */
export function checkPlace(
  castIn: CastIn,
  item: CatalogueItem | undefined,
  panel: Panel,
  region: Region,
  path: Path,
): DocumentFault[] {
  const faults =
    castIn.face === 'edge'
      ? checkOnEdge(castIn, item, panel, region, path)
      : checkOnLargeFace(castIn, panel, region, path);
  if (faults.length > 0 || item === undefined) return faults;
  return [...checkDepth(castIn, item, panel, path), ...checkSides(castIn, item, panel, region, path)];
}

/** The recess that a holding part leaves must be the insert's. */
function checkHolding({ path, value: castIn }: Entry<CastIn>, part: HoldingPart | undefined): DocumentFault[] {
  if (part === undefined || part.recess_mm === castIn.recess_mm) return [];
  const text = `${part.id} keeps the top ${part.recess_mm} mm below the face, the recess says ${castIn.recess_mm} mm; expected ${part.recess_mm} mm`;
  return [faultAt([...path, 'recess_mm'], castIn.recess_mm, `${part.recess_mm} mm`, text)];
}

/** Whether the bodies of two inserts of one face, with their diameters [mm], stand in each other. */
export function standInEachOther(a: CastIn, bodyOfA: number, b: CastIn, bodyOfB: number): boolean {
  return Math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) < (bodyOfA + bodyOfB) / 2;
}

/** Inserts of one face that stand in each other. */
function checkApart(job: SiftedJob, items: ReadonlyMap<string, CatalogueItem>): DocumentFault[] {
  const faces = new Map<string, { readonly castIn: CastIn; readonly body: number }[]>();
  return job.castIns.flatMap(({ path, value: castIn }) => {
    const body = castIn.item === null ? undefined : items.get(castIn.item)?.bodyDiameter_mm;
    if (body === undefined) return [];
    const face = JSON.stringify([castIn.panel, castIn.face, castIn.edge]);
    const others = faces.get(face) ?? [];
    faces.set(face, others);
    const near = others.find((other) => standInEachOther(other.castIn, other.body, castIn, body));
    others.push({ castIn, body });
    if (near === undefined) return [];
    const text = `insert ${castIn.id} stands in insert ${near.castIn.id} of panel ${castIn.panel}; expected them apart`;
    return [faultAt([...path, 'x_mm'], `${castIn.x_mm}, ${castIn.y_mm}`, 'a place of its own', text)];
  });
}

/** Cast-in items: role, place in the concrete, foot within the panel and in a structural layer. */
export function checkCastIns(job: SiftedJob): DocumentFault[] {
  const items = new Map(job.items.map(({ value }) => [value.id, value]));
  const panels = new Map(
    // Of two with one mark, which is a fault by itself, the first counts.
    [...job.panels].reverse().flatMap(({ path, value }) => {
      const area = prepareArea(path, 'outline_mm', value.outline_mm, value.openings_mm);
      return 'region' in area ? [[value.mark, { panel: value, region: area.region }] as const] : [];
    }),
  );
  const single = job.castIns.flatMap((entry) => {
    const { path, value: castIn } = entry;
    const item = castIn.item === null ? undefined : items.get(castIn.item);
    const faults = checkRole(entry, item);
    const place = panels.get(castIn.panel);
    if (place === undefined) return faults;
    const part = job.parts.find(({ value }) => value.id === castIn.holding)?.value;
    return [...faults, ...checkPlace(castIn, item, place.panel, place.region, path), ...checkHolding(entry, part)];
  });
  return [...single, ...checkApart(job, items)];
}
