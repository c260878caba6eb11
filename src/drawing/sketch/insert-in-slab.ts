import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Drawing } from '../drawing.ts';
import { drawArea, drawLine, rectangle } from '../marks.ts';
import { placeMarks } from '../place.ts';
import type { SectionFrame } from '../section/section-frame.ts';
import { drawInsertBody } from '../section/section-insert.ts';

/** Concrete shown on each side of the axis, and air above the face, where the axis goes on [mm]. */
const ASIDE = 55;
const ABOVE = 12;
/** Of the picture: 1 : scale. */
const SCALE = 5;

/**
 * An insert as it hangs in the concrete below its face: small, and to one scale for all, so that inserts can be compared by eye.
 * @param depth of the concrete below the face [mm]
 * @param isSlab the concrete ends there; else it goes on, as behind an edge
 */
export function drawInsertInSlab(item: CatalogueItem, depth: number, isSlab: boolean): Drawing {
  const frame: SectionFrame = { top: [0, depth], along: [0, -1], tilt: 0, axisHeight: depth, step: [0, depth] };
  const marks = [
    drawArea('section', null, 'light', rectangle(-ASIDE, 0, 2 * ASIDE, depth)),
    drawLine('outline', [-ASIDE, depth], [ASIDE, depth], 'medium'),
    ...(isSlab ? [drawLine('outline', [-ASIDE, 0], [ASIDE, 0], 'medium')] : []),
    ...drawInsertBody(frame, item),
  ];
  return {
    width: (2 * ASIDE) / SCALE,
    height: (depth + ABOVE) / SCALE,
    marks: placeMarks(marks, { scale: 1 / SCALE, move: [ASIDE / SCALE, 0] }),
  };
}
