import type { AnchorageGroup } from '../../engine/checks/anchorage-group.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { isInside, prepareRegion, type Region } from '../../engine/geometry/region.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { Layer, Panel } from '../documents/panel.ts';
import { frameOf, panelSide } from '../face-frame.ts';
import {
  layerAtDepth,
  layersAt,
  nominalSection,
  type PlacedLayer,
  type Section,
  sectionAt,
  sectionOfZone,
  stackLayers,
  surfaceDepth,
  zoneAt,
} from '../section.ts';
import { widthBehindEdge } from '../width-behind-edge.ts';

/** The concrete around a connection as the engine takes it, or why it cannot be given. */
export type LocalMember =
  | {
      readonly ok: true;
      readonly member: AnchorageGroup['member'];
      readonly assumptions: readonly string[];
      readonly notCovered: readonly string[];
    }
  | { readonly ok: false; readonly reasons: readonly string[] };

/** Surfaces nearer than this [mm] are one level. */
const LEVEL = 1e-6;

const mm = (length: number): string => `${Math.round(length * 10) / 10} mm`;

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
function sectionsBeside(panel: Panel, face: Region, at: Point, reach: number): readonly Section[] {
  const own = zoneAt(panel, at);
  const near = panel.zones.filter((zone) => isBorderNear(prepareRegion(zone.outline_mm, []), face, at, reach));
  const others = near.filter((zone) => zone !== own).map(sectionOfZone);
  return own !== undefined && near.includes(own) ? [...others, nominalSection(panel)] : others;
}

/** The structural layer at the face that one looks at; undefined where another layer lies on top. */
function layerAtFace(layers: readonly Layer[], face: 'outside' | 'inside'): PlacedLayer | undefined {
  const top = stackLayers(layers, face)[0];
  return top?.kind === 'structural' ? top : undefined;
}

function memberOfLargeFace(
  connection: Connection,
  panel: Panel,
  castIns: readonly CastIn[],
  face: 'outside' | 'inside',
  embedment: number,
): LocalMember {
  const frame = frameOf(panel, connection);
  const recess = Math.max(...castIns.map((c) => c.recess_mm));
  const reach = 1.5 * embedment;
  const region = prepareRegion(panel.outline_mm, panel.openings_mm);
  const notCovered: string[] = [];
  let thickness = Number.POSITIVE_INFINITY;
  for (const castIn of castIns) {
    const at: Point = [castIn.x_mm, castIn.y_mm];
    const here = sectionAt(panel, at);
    const beside = sectionsBeside(panel, region, at, reach);
    for (const { layers } of [here, ...beside]) {
      const layer = layerAtFace(layers, face);
      if (layer === undefined) {
        const kind = stackLayers(layers, face)[0]?.kind;
        return {
          ok: false,
          reasons: [
            `insert ${castIn.id}: the ${face} face is of the layer ${kind} there, so the insert does not start in structural concrete`,
          ],
        };
      }
      thickness = Math.min(thickness, layer.to);
    }
    const level = surfaceDepth(panel, here, face);
    const deepest = Math.max(level, ...beside.map((section) => surfaceDepth(panel, section, face)));
    if (deepest > level + LEVEL) {
      notCovered.push(
        `insert ${castIn.id}: the ${face} face steps back by ${mm(deepest - level)} within 1.5 h_ef = ${mm(reach)}, a free edge that the outline does not have`,
      );
    }
  }
  const assumptions: string[] = [];
  if (thickness < panel.thickness_mm) {
    assumptions.push(
      `thickness ${mm(thickness)}: the least structural layer at the inserts and within 1.5 h_ef = ${mm(reach)} of them (panel ${mm(panel.thickness_mm)})`,
    );
  }
  if (recess > 0) {
    assumptions.push(
      `recess of ${mm(recess)}: embedment counts from the insert's top and the thickness is taken less by the recess`,
    );
  }
  return {
    ok: true,
    member: {
      thickness: thickness - recess,
      outline: panel.outline_mm.map(frame.toFace),
      openings: panel.openings_mm.map((opening) => opening.map(frame.toFace)),
    },
    assumptions,
    notCovered,
  };
}

function memberOfEdge(connection: Connection, panel: Panel, castIns: readonly CastIn[], edge: number): LocalMember {
  const frame = frameOf(panel, connection);
  const side = panelSide(panel, edge);
  const region = prepareRegion(panel.outline_mm, panel.openings_mm);
  let top = 0;
  let bottom = Number.POSITIVE_INFINITY;
  let width = Number.POSITIVE_INFINITY;
  for (const castIn of castIns) {
    const behind: Point = [
      side.from[0] + side.along[0] * castIn.x_mm + side.inward[0],
      side.from[1] + side.along[1] * castIn.x_mm + side.inward[1],
    ];
    const layer = layerAtDepth(stackLayers(layersAt(panel, behind), 'outside'), castIn.y_mm);
    if (layer === undefined || layer.kind !== 'structural') {
      return {
        ok: false,
        reasons: [
          `insert ${castIn.id} stands in the layer ${layer?.kind ?? '(none)'} of edge ${edge}, not in structural concrete`,
        ],
      };
    }
    top = Math.max(top, layer.from);
    bottom = Math.min(bottom, layer.to);
    width = Math.min(width, widthBehindEdge(panel, region, edge, castIn.x_mm) - castIn.recess_mm);
  }
  if (castIns.some((c) => c.y_mm <= top || c.y_mm >= bottom)) {
    return { ok: false, reasons: [`the inserts of edge ${edge} stand in different layers of the section`] };
  }
  const corners: readonly Point[] = [
    [0, top],
    [side.length, top],
    [side.length, bottom],
    [0, bottom],
  ];
  const batter = panel.edges.find((e) => e.edge === edge)?.batter_deg ?? 0;
  return {
    ok: true,
    member: { thickness: width, outline: corners.map(frame.toFace), openings: [] },
    assumptions: [
      `edge ${edge} is taken as a face of ${mm(side.length)} × ${mm(bottom - top)} with ${mm(width)} of concrete behind the inserts`,
    ],
    notCovered:
      batter === 0 ? [] : [`edge ${edge} has a batter of ${batter}°: the inserts do not stand square to the edge`],
  };
}

/**
 * The concrete that a connection's inserts stand in, in coordinates of their face [mm].
 *
 * Large faces: the panel's outline and openings; the thickness is the least structural layer at the inserts and in zones within
 * 1.5 h_ef of them. Edges: the edge is a face of its own, length × structural layer, and what lies behind it is its thickness.
 */
export function localMember(
  connection: Connection,
  panel: Panel,
  castIns: readonly CastIn[],
  embedment: number,
): LocalMember {
  if (connection.face !== 'edge') return memberOfLargeFace(connection, panel, castIns, connection.face, embedment);
  if (connection.edge === null)
    throw new Error(`connection ${connection.mark}: an edge face without the number of its edge`);
  return memberOfEdge(connection, panel, castIns, connection.edge);
}
