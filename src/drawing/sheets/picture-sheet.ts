import type { Mark } from '../drawing.ts';
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

/** Pictures in a grid, on as many sheets as they need; the first in the upper corner. */
export function drawPictureSheets(pictures: readonly Picture[], head: SheetHead, paper: Paper): readonly Sheet[] {
  const frame = findFrame(paper);
  const { across, down } = GRID[paper.name];
  const width = (frame.width - (across - 1) * GAP) / across;
  const height = (frame.height - 3 - (down - 1) * GAP) / down;
  const sheets: Sheet[] = [];
  for (let from = 0; from < pictures.length; from += across * down) {
    const marks = pictures.slice(from, from + across * down).flatMap((picture, i) => {
      const drawn = picture.draw(width, height);
      const x = frame.x + (i % across) * (width + GAP);
      const top = frame.y + frame.height - 3 - Math.floor(i / across) * (height + GAP);
      return placeMarks(drawn.marks, { move: [x + (width - drawn.width) / 2, top - drawn.height] });
    });
    sheets.push({ head: from === 0 ? head : { ...head, title: `${head.title} (${sheets.length + 1})` }, marks });
  }
  return sheets;
}
