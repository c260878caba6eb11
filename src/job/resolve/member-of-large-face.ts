import type { Point } from '../../engine/geometry/point.ts';
import { distanceToBoundary, isInside, prepareRegion, type Region } from '../../engine/geometry/region.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { Layer, Panel } from '../documents/panel.ts';
import { frameOf } from '../face-frame.ts';
import {
  nominalSection,
  type PlacedLayer,
  type Section,
  sectionAt,
  sectionOfZone,
  stackLayers,
  surfaceDepth,
  zoneAt,
} from '../section.ts';
import { type LocalMember, showLength } from './local-member-type.ts';

/** Surfaces nearer than this [mm] are one level. */
const LEVEL = 1e-6;

/** Whether a border between sections runs through the panel nearer to a position than `reach`. */
function isBorderNear(border: Region, face: Region, at: Point, reach: number): boolean {
  return border.sides.some((side) => {
    const along = (at[0] - side.fromX) * side.ux + (at[1] - side.fromY) * side.uy;
    const place = Math.min(side.length, Math.max(0, along));
    const x = side.fromX + side.ux * place;
    const y = side.fromY + side.uy * place;
    return Math.hypot(at[0] - x, at[1] - y) < reach && isInside(face, x, y);
  });
}

/** Sections beside the one at a position, where the border between them comes nearer than `reach`. */
function sectionsBeside(
  panel: Panel,
  borders: readonly Region[],
  face: Region,
  at: Point,
  reach: number,
): readonly Section[] {
  const own = zoneAt(panel, at);
  const near = panel.zones.filter((_, i) => isBorderNear(borders[i]!, face, at, reach));
  const others = near.filter((zone) => zone !== own).map(sectionOfZone);
  return own !== undefined && near.includes(own) ? [...others, nominalSection(panel)] : others;
}

/** The structural layer at the face that one looks at; undefined where another layer lies on top. */
function layerAtFace(layers: readonly Layer[], face: 'outside' | 'inside'): PlacedLayer | undefined {
  const top = stackLayers(layers, face)[0];
  return top?.kind === 'structural' ? top : undefined;
}

/** What is found at one insert: the thickness there and near it, or why there is none. */
type Finding =
  | { readonly thickness: number; readonly reach: number; readonly notCovered: readonly string[] }
  | { readonly reason: string };

/** Looks at the sections at one insert, and near it as far as an embedment asks. */
function surveyPlace(
  panel: Panel,
  castIn: CastIn,
  face: 'outside' | 'inside',
  region: Region,
  borders: readonly Region[],
): (embedment: number) => Finding {
  const at: Point = [castIn.x_mm, castIn.y_mm];
  const nearestEdge = distanceToBoundary(region, at[0], at[1]);
  const here = sectionAt(panel, at);
  const level = surfaceDepth(panel, here, face);
  return (embedment) => {
    // The cone reaches 1.5 h_ef; the body of an edge failure toward the nearest edge 1.5 c1.
    const reach = 1.5 * Math.max(embedment, nearestEdge);
    let thickness = Number.POSITIVE_INFINITY;
    for (const { layers } of [here, ...sectionsBeside(panel, borders, region, at, reach)]) {
      const layer = layerAtFace(layers, face);
      if (layer === undefined) {
        const kind = stackLayers(layers, face)[0]?.kind;
        return {
          reason: `insert ${castIn.id}: the ${face} face is of the layer ${kind} there, so the insert does not start in structural concrete`,
        };
      }
      thickness = Math.min(thickness, layer.to);
    }
    // A step of the face acts as an edge: within the cone, or nearer than the nearest edge that is counted.
    const stepReach = Math.max(1.5 * embedment, nearestEdge);
    const steps = sectionsBeside(panel, borders, region, at, stepReach);
    const deepest = Math.max(level, ...steps.map((section) => surfaceDepth(panel, section, face)));
    if (deepest <= level + LEVEL) return { thickness, reach, notCovered: [] };
    const text = `insert ${castIn.id}: the ${face} face steps back by ${showLength(deepest - level)} within ${showLength(stepReach)}, a free edge that the outline does not have`;
    return { thickness, reach, notCovered: [text] };
  };
}

/** What was taken about the section, in words. */
function describeSection(panel: Panel, thickness: number, farthest: number, recess: number): string[] {
  const assumptions: string[] = [];
  if (thickness < panel.thickness_mm) {
    assumptions.push(
      `thickness ${showLength(thickness)}: the least structural layer at the inserts and within ${showLength(farthest)} of them (panel ${showLength(panel.thickness_mm)})`,
    );
  }
  if (panel.zones.length > 0) {
    assumptions.push(
      `sections farther than ${showLength(farthest)} from the inserts (1.5 h_ef, and 1.5 times the distance to the nearest edge) are not counted: shear toward an edge beyond them needs a look`,
    );
  }
  if (recess > 0) {
    assumptions.push(
      `recess of ${showLength(recess)}: embedment counts from the insert's top and the thickness is taken less by the recess`,
    );
  }
  return assumptions;
}

/** Inserts in the outside or inside face: the panel's outline, and the least structural layer near them, for any embedment. */
export function surveyLargeFace(
  connection: Connection,
  panel: Panel,
  castIns: readonly CastIn[],
  region: Region,
  face: 'outside' | 'inside',
): (embedment: number) => LocalMember {
  const frame = frameOf(panel, connection);
  const recess = Math.max(...castIns.map((c) => c.recess_mm));
  const borders = panel.zones.map((zone) => prepareRegion(zone.outline_mm, []));
  const places = castIns.map((castIn) => surveyPlace(panel, castIn, face, region, borders));
  const outline = panel.outline_mm.map(frame.toFace);
  const openings = panel.openings_mm.map((opening) => opening.map(frame.toFace));
  const survey = (embedment: number): LocalMember => {
    const notCovered: string[] = [];
    let thickness = Number.POSITIVE_INFINITY;
    let farthest = 0;
    for (const findAt of places) {
      const found = findAt(embedment);
      if ('reason' in found) return { ok: false, reasons: [found.reason] };
      thickness = Math.min(thickness, found.thickness);
      farthest = Math.max(farthest, found.reach);
      notCovered.push(...found.notCovered);
    }
    return {
      ok: true,
      member: { thickness: thickness - recess, outline, openings },
      assumptions: describeSection(panel, thickness, farthest, recess),
      notCovered,
    };
  };
  // One section and one layer: no embedment sees another, so that it is found once.
  if (panel.zones.length > 0 || panel.layers.length > 1) return survey;
  const member = survey(0);
  return () => member;
}
