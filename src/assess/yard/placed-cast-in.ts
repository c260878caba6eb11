import { placeOnEdge } from '../../engine/form/edge-place.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import { panelSide } from '../../job/face-frame.ts';
import { describeSide } from '../set-out/describe-side.ts';
import { viewPanel } from '../set-out/panel-view.ts';
import type { PanelSetOut, SetOutItem } from '../set-out/set-out.ts';
import type { FoundPlace } from './placing-answer.ts';

/** How far an insert was found from its place along its two taped lengths [mm]; what was not taken counts as it should be. */
function findOffsets({ taped }: SetOutItem, { x, y }: FoundPlace): readonly [number, number] {
  return [x === null ? 0 : x - taped[0], y === null ? 0 : y - taped[1]];
}

/** Whether the tape along a side runs the way of the drawing, from the side's first corner: 1, or against it: -1. */
function findTapeSense({ panel, words }: PanelSetOut, edge: number): 1 | -1 {
  const view = viewPanel(panel);
  const { length } = panelSide(panel, edge);
  const [near, far] = [0.25, 0.75].map((share) => {
    const at = placeOnEdge(view, { edge, along: share * length, fromOutside: 0 }, panel.thickness_mm);
    return describeSide(view, at, edge, words).along;
  }) as [number, number]; // two shares
  return far > near ? 1 : -1;
}

/**
 * A cast-in item where it was found, as the job would give it: the inverse of how the set-out brings it into the form. Its recess is the level that
 * was found; a top above the face counts as flush here, and is told by itself.
 */
export function placeCastIn(setOut: PanelSetOut, item: SetOutItem, found: FoundPlace): CastIn {
  const { panel } = setOut;
  const { castIn } = item;
  const [dx, dy] = findOffsets(item, found);
  const recess_mm = found.level === null ? castIn.recess_mm : Math.max(0, found.level);
  if (castIn.face === 'edge' && castIn.edge !== null) {
    const up = panel.faceDown === 'outside' ? 1 : -1;
    return {
      ...castIn,
      x_mm: castIn.x_mm + findTapeSense(setOut, castIn.edge) * dx,
      y_mm: castIn.y_mm + up * dy,
      recess_mm,
    };
  }
  const { toDrawing } = viewPanel(panel);
  const [fromX, fromY] = toDrawing(item.taped);
  const [toX, toY] = toDrawing([item.taped[0] + dx, item.taped[1] + dy]);
  // By the way that it moved, so that what did not move has the very numbers of the job.
  return { ...castIn, x_mm: castIn.x_mm + (toX - fromX), y_mm: castIn.y_mm + (toY - fromY), recess_mm };
}
