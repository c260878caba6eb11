import type { Mark } from '../drawing.ts';
import { DrawingError } from '../drawing-error.ts';
import { placeMarks } from '../place.ts';
import { findFrame, type Paper } from './paper.ts';
import type { Sheet, SheetHead } from './sheet-frame.ts';

/** A picture that fits into any room that is large enough; its marks from its lower corner of least x. */
export interface Picture {
  readonly draw: (
    width: number,
    height: number,
  ) => { readonly marks: readonly Mark[]; readonly width: number; readonly height: number };
}

/** Pictures beside and above each other on a sheet. */
const GRID: Readonly<Record<Paper['name'], { readonly across: number; readonly down: number }>> = {
  A3: { across: 3, down: 2 },
  A4: { across: 2, down: 1 },
};
const GAP = 6;

/**
 * Pictures in columns, down one and then down the next, on as many sheets as they need. Each is drawn for a cell of the grid; one that comes out
 * lower leaves room for the next.
 * Throws DrawingError when a picture is higher than a sheet.
 */
export function drawPictureSheets(pictures: readonly Picture[], head: SheetHead, paper: Paper): readonly Sheet[] {
  const frame = findFrame(paper);
  const { across, down } = GRID[paper.name];
  const width = (frame.width - (across - 1) * GAP) / across;
  const full = frame.height - 3;
  const height = (full - (down - 1) * GAP) / down;
  const pages: Mark[][] = [];
  let column = across;
  let used = 0;
  for (const picture of pictures) {
    const drawn = picture.draw(width, height);
    if (drawn.height > full + 1e-9)
      throw new DrawingError(
        `a picture of ${drawn.height.toFixed(0)} mm does not go onto a sheet ${paper.name} with ${full.toFixed(0)} mm; expected A3`,
      );
    if (column < across && used + drawn.height > full + 1e-9) {
      column += 1;
      used = 0;
    }
    if (column >= across) {
      pages.push([]);
      column = 0;
      used = 0;
    }
    const x = frame.x + column * (width + GAP) + (width - drawn.width) / 2;
    pages.at(-1)!.push(...placeMarks(drawn.marks, { move: [x, frame.y + full - used - drawn.height] }));
    used += drawn.height + GAP;
  }
  return pages.map((marks, i) => ({ head: i === 0 ? head : { ...head, title: `${head.title} (${i + 1})` }, marks }));
}
