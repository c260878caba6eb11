import type { Point } from '../../engine/geometry/point.ts';
import type { Region } from '../../engine/geometry/region.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { Panel } from '../documents/panel.ts';
import { frameOf, panelSide } from '../face-frame.ts';
import { layerAtDepth, placeFromOutside, sectionAt } from '../section.ts';
import { widthBehindEdge } from '../width-behind-edge.ts';
import { type LocalMember, showLength } from './local-member-type.ts';

/** Inserts in an edge: the edge is a face of its own, length × structural layer, with the width behind it as its thickness. */
export function memberOfEdge(
  connection: Connection,
  panel: Panel,
  castIns: readonly CastIn[],
  region: Region,
  edge: number,
): LocalMember {
  const frame = frameOf(panel, connection);
  const side = panelSide(panel, edge);
  let top = 0;
  let bottom = Number.POSITIVE_INFINITY;
  let width = Number.POSITIVE_INFINITY;
  for (const castIn of castIns) {
    const behind: Point = [
      side.from[0] + side.along[0] * castIn.x_mm + side.inward[0],
      side.from[1] + side.along[1] * castIn.x_mm + side.inward[1],
    ];
    const layer = layerAtDepth(placeFromOutside(sectionAt(panel, behind)), castIn.y_mm);
    if (layer === undefined || castIn.y_mm < layer.from || layer.kind !== 'structural') {
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
      `edge ${edge} is taken as a face of ${showLength(side.length)} × ${showLength(bottom - top)} with ${showLength(width)} of concrete behind the inserts`,
    ],
    notCovered:
      batter === 0 ? [] : [`edge ${edge} has a batter of ${batter}°: the inserts do not stand square to the edge`],
  };
}
