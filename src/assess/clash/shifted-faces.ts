import type { Point } from '../../engine/geometry/point.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { panelSide } from '../../job/face-frame.ts';
import { sectionOfZone, surfaceDepth, zoneAt } from '../../job/section.ts';
import { findBarLayers } from './bar-layers.ts';

/** A face that lies this close to the panel's own [mm] is that: rounding of sums of layers. */
const SAME = 1e-6;

/** Where a cast-in item stands in the drawn face; on an edge a millimetre into the concrete. */
function findSpot(panel: Panel, { face, edge, x_mm, y_mm }: CastIn): Point {
  if (face !== 'edge' || edge === null) return [x_mm, y_mm];
  const { from, along, inward } = panelSide(panel, edge);
  return [from[0] + along[0] * x_mm + inward[0], from[1] + along[1] * x_mm + inward[1]];
}

/**
 * Inserts that stand where a face is not the panel's own, in words: in a rebate or a thicker part. A layer of bars lies below the panel's own
 * face; whether it follows a rebate or ends before it, the job does not say.
 */
export function tellShiftedFaces(panel: Panel, castIns: readonly CastIn[]): readonly string[] {
  const faces = [...new Set(findBarLayers(panel).map(({ bars }) => bars.face))];
  return castIns.flatMap((castIn) => {
    const zone = zoneAt(panel, findSpot(panel, castIn));
    if (zone === undefined) return [];
    const shifted = faces.filter((face) => Math.abs(surfaceDepth(panel, sectionOfZone(zone), face)) > SAME);
    if (shifted.length === 0) return [];
    return [
      `${castIn.item === null ? 'item' : 'insert'} ${castIn.id} stands in ${zone.name}: bars there were taken as below the panel's own ${shifted.join(' and ')} face`,
    ];
  });
}
