import type { Point } from '../../engine/geometry/point.ts';
import { distanceToBoundary, isInside, type Region } from '../../engine/geometry/region.ts';
import { isWithinRing } from '../../engine/geometry/rings.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { Panel } from '../documents/panel.ts';
import { panelSide } from '../face-frame.ts';
import type { DocumentFault } from '../fault.ts';
import {
  layerAtDepth,
  layersAt,
  type PlacedLayer,
  placeFromOutside,
  sectionAt,
  stackLayers,
  totalThickness,
} from '../section.ts';
import type { Path } from '../sift.ts';
import { widthBehindEdge } from '../width-behind-edge.ts';
import { faultAt } from './fault-at.ts';

/** What a place in a panel has for an insert, whichever it is; lengths mm. */
export interface Place {
  readonly castIn: CastIn;
  readonly path: Path;
  /** Why nothing can be there at all. */
  readonly fault: DocumentFault | null;
  /** Why no insert can be there, though another thing could. */
  readonly faultOfInsert: DocumentFault | null;
  /** Concrete and other layers below a large face; none behind an edge. */
  readonly layers: readonly PlacedLayer[];
  /** Thickness of all layers, or width behind the edge. */
  readonly depth: number;
  /** From the axis to the nearest side of the concrete. */
  readonly side: number;
}

const nowhere = { faultOfInsert: null, layers: [], depth: 0, side: 0 };

function findOnLargeFace(castIn: CastIn, face: 'outside' | 'inside', panel: Panel, region: Region, path: Path): Place {
  const [x, y]: Point = [castIn.x_mm, castIn.y_mm];
  const refuse = (fault: DocumentFault): Place => ({ castIn, path, fault, ...nowhere });
  if (castIn.edge !== null) {
    const text = `an insert on the ${castIn.face} face has no edge; expected face "edge", or no edge`;
    return refuse(faultAt([...path, 'edge'], castIn.edge, 'no edge', text));
  }
  if (!isInside(region, x, y)) {
    const opening = region.openings.findIndex((ring) => isWithinRing(ring, x, y));
    const where = opening >= 0 ? `in opening ${opening + 1}` : 'outside the outline';
    const text = `position (${x}, ${y}) lies ${where} of panel ${panel.mark}; expected a place in the concrete`;
    return refuse(faultAt([...path, 'x_mm'], `${x}, ${y}`, 'a place in the concrete', text));
  }
  const layers = layersAt(panel, [x, y]);
  return {
    castIn,
    path,
    fault: null,
    faultOfInsert: null,
    layers: stackLayers(layers, face),
    depth: totalThickness(layers),
    side: distanceToBoundary(region, x, y),
  };
}

function findOnEdge(castIn: CastIn, panel: Panel, region: Region, path: Path): Place {
  const refuse = (key: string, found: unknown, expected: string, text: string): Place => ({
    castIn,
    path,
    fault: faultAt([...path, key], found, expected, text),
    ...nowhere,
  });
  const last = panel.outline_mm.length - 1;
  if (castIn.edge === null || castIn.edge > last)
    return refuse(
      'edge',
      castIn.edge,
      `0 to ${last}`,
      `an insert on an edge needs the number of the edge, 0 to ${last}`,
    );
  const { from, along, inward, length } = panelSide(panel, castIn.edge);
  if (castIn.x_mm <= 0 || castIn.x_mm >= length) {
    const text = `${castIn.x_mm} mm along edge ${castIn.edge} lies beyond its ends; expected between 0 and ${length} mm`;
    return refuse('x_mm', castIn.x_mm, `between 0 and ${length} mm`, text);
  }
  const behind: Point = [from[0] + along[0] * castIn.x_mm + inward[0], from[1] + along[1] * castIn.x_mm + inward[1]];
  const layers = placeFromOutside(sectionAt(panel, behind));
  const [least, most] = [layers[0]!.from, layers.at(-1)!.to];
  if (castIn.y_mm <= least || castIn.y_mm >= most) {
    const text = `${castIn.y_mm} mm from the outside face lies off an edge ${most - least} mm thick; expected between ${least} and ${most} mm`;
    return refuse('y_mm', castIn.y_mm, `between ${least} and ${most} mm`, text);
  }
  // Within the layers, so one of them is there.
  const layer = layerAtDepth(layers, castIn.y_mm)!;
  const text = `the insert stands in the layer ${layer.kind} of the edge; expected a structural layer`;
  return {
    castIn,
    path,
    fault: null,
    faultOfInsert:
      layer.kind === 'structural' ? null : faultAt([...path, 'y_mm'], castIn.y_mm, 'a structural layer', text),
    layers: [],
    depth: widthBehindEdge(panel, region, castIn.edge, castIn.x_mm),
    side: Math.min(castIn.x_mm, length - castIn.x_mm, castIn.y_mm - layer.from, layer.to - castIn.y_mm),
  };
}

/** What a place has for an insert: found once, for every insert that is to stand there. */
export function findPlace(castIn: CastIn, panel: Panel, region: Region, path: Path): Place {
  return castIn.face === 'edge'
    ? findOnEdge(castIn, panel, region, path)
    : findOnLargeFace(castIn, castIn.face, panel, region, path);
}

/** An edge insert that is longer than the concrete behind it. */
function checkBehindEdge({ castIn, depth, path }: Place, item: CatalogueItem): DocumentFault[] {
  const end = castIn.recess_mm + item.length_mm;
  if (end < depth) return [];
  const text = `${item.id} needs ${end} mm behind edge ${castIn.edge}, where the concrete is ${depth} mm deep; expected a shorter insert`;
  return [faultAt([...path, 'item'], item.id, `shorter than ${depth - castIn.recess_mm} mm`, text)];
}

/** An insert that reaches through, or whose foot does not stand within one structural layer. */
function checkDepth({ castIn, layers, depth, path }: Place, item: CatalogueItem): DocumentFault[] {
  const end = castIn.recess_mm + item.length_mm;
  const nameIt = () =>
    `${item.id}, ${item.length_mm} mm long${castIn.recess_mm > 0 ? ` in a recess of ${castIn.recess_mm} mm` : ''},`;
  if (end >= depth) {
    const most = depth - castIn.recess_mm;
    const text = `${nameIt()} reaches through the panel, which is ${depth} mm thick there; expected an insert shorter than ${most} mm`;
    return [faultAt([...path, 'item'], item.id, `shorter than ${most} mm`, text)];
  }
  const bearing = layerAtDepth(layers, castIn.recess_mm + item.embedment_mm);
  const bottom = layerAtDepth(layers, end);
  if (bearing === bottom && bottom?.kind === 'structural') return [];
  const wrong = [bearing, bottom].find((layer) => layer?.kind !== 'structural');
  const where = wrong === undefined ? 'across a joint of two layers' : `in the layer ${wrong.kind}`;
  const text = `the foot of ${nameIt()} stands ${where}; expected it within one structural layer`;
  return [faultAt([...path, 'item'], item.id, 'a foot within one structural layer', text)];
}

/** Half the width of what must be within the concrete: the foot where it is round, else the body [mm]. */
function halfWidth(item: CatalogueItem): number {
  return (item.foot.kind === 'diameter' ? item.foot.diameter_mm : item.bodyDiameter_mm) / 2;
}

/** An insert whose foot or body would stick out of the side of the concrete. */
function checkSides({ side, path }: Place, item: CatalogueItem): DocumentFault[] {
  const needed = halfWidth(item);
  if (side >= needed) return [];
  const text = `${item.id} is ${2 * needed} mm wide and would stick out: its axis has ${side} mm to the nearest side; expected at least ${needed} mm`;
  return [faultAt([...path, 'x_mm'], side, `at least ${needed} mm to the nearest side`, text)];
}

/** An insert in its place: within the concrete, its foot in one structural layer, nothing sticking out of a side. */
export function checkInPlace(place: Place, item: CatalogueItem | undefined): DocumentFault[] {
  if (place.fault !== null) return [place.fault];
  if (item === undefined) return [];
  if (place.faultOfInsert !== null) return [place.faultOfInsert];
  if (place.castIn.face !== 'edge') return [...checkDepth(place, item), ...checkSides(place, item)];
  const behind = checkBehindEdge(place, item);
  return behind.length > 0 ? behind : checkSides(place, item);
}
