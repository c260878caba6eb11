import type { FaceAxes } from '../../engine/survey/insert-axis.ts';
import { dot, minus, plus, times, type Vector } from '../../engine/survey/vector.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { panelSide } from '../../job/face-frame.ts';
import { sectionAt, surfaceDepth } from '../../job/section.ts';

/**
 * The face that an item stands in, in the panel's frame: the drawing's x and y, z out of the drawn face. `right` and `up` are the axes in which the job
 * gives the item's x and y, so that on the face that is not drawn they run as in the drawing, not as one sees them. Zones of the section count; the
 * batter of an edge does not.
 */
export function faceOfItem(panel: Panel, { face, edge, x_mm, y_mm }: CastIn): FaceAxes {
  const toOutside = panel.drawnFace === 'outside' ? 1 : -1;
  if (face === 'edge' && edge !== null) {
    const { from, along, inward } = panelSide(panel, edge);
    return {
      through: [...from, panel.drawnFace === 'outside' ? 0 : 0 - panel.thickness_mm],
      right: [...along, 0],
      up: [0, 0, 0 - toOutside],
      out: [0 - inward[0], 0 - inward[1], 0],
    };
  }
  const large = face === 'edge' ? panel.drawnFace : face;
  const behind = surfaceDepth(panel, sectionAt(panel, [x_mm, y_mm]), large);
  const isDrawn = large === panel.drawnFace;
  return {
    through: [0, 0, isDrawn ? 0 - behind : behind - panel.thickness_mm],
    right: [1, 0, 0],
    up: [0, 1, 0],
    out: [0, 0, isDrawn ? 1 : -1],
  };
}

/** Where the middle of an item's top is designed, in the panel's frame. */
export function topOfItem(panel: Panel, castIn: CastIn): Vector {
  const { through, right, up, out } = faceOfItem(panel, castIn);
  const onFace = plus(plus(through, times(right, castIn.x_mm)), times(up, castIn.y_mm));
  return minus(onFace, times(out, castIn.recess_mm));
}

/** A place of the panel's frame in the axes in which the job gives items of a face. */
export function placeOnItemFace({ through, right, up }: FaceAxes, at: Vector): readonly [x: number, y: number] {
  const arm = minus(at, through);
  return [dot(arm, right), dot(arm, up)];
}
