import { placeOnEdge } from '../../engine/form/edge-place.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Bed } from '../../job/documents/yard.ts';
import { panelSide } from '../../job/face-frame.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { findTop } from '../clash/find-top.ts';
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

/** Where an insert was measured, by which job and on which bed (null: none is named). */
export interface SeatQuestion {
  readonly index: JobIndex;
  readonly bed: Bed | null;
  readonly setOut: PanelSetOut;
  readonly item: SetOutItem;
  readonly found: FoundPlace;
}

/** How much deeper below its face the top was found than its assembly aims at [mm]; null: not taken. */
export function findLevelOff({ index, bed, setOut: { panel }, item, found }: SeatQuestion): number | null {
  return found.level === null ? null : found.level - findTop(index, panel, item.castIn, bed);
}

/** The recess to compute with: a level within its tolerance is that of the design; a top above the face counts as flush, and is told by itself. */
function findRecess(question: SeatQuestion): number {
  const { recess_mm } = question.item.castIn;
  const off = findLevelOff(question) ?? 0;
  return Math.abs(off) <= question.index.file.library.rules.tolerances.level_mm
    ? recess_mm
    : Math.max(0, recess_mm + off);
}

/** A cast-in item where it was found, as the job would give it: the inverse of how the set-out brings it into the form. */
export function placeCastIn(question: SeatQuestion): CastIn {
  const { setOut, item, found } = question;
  const { panel } = setOut;
  const { castIn } = item;
  const [dx, dy] = findOffsets(item, found);
  const recess_mm = findRecess(question);
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
