/** What holds for any picture: its texts do not lie on each other, and nothing of it lies outside. */

import { type Box, boxAround, boxOfMarks, doBoxesOverlap, growBox, textCorners } from '../../src/drawing/boxes.ts';
import type { Mark, TextMark } from '../../src/drawing/drawing.ts';
import { expandSymbols } from '../../src/drawing/place.ts';

export function listTexts(marks: readonly Mark[]): readonly TextMark[] {
  return expandSymbols(marks).filter((mark) => mark.kind === 'text');
}

/** Pairs of texts that share paper; texts here are level or upright, so that their boxes are themselves. */
export function findOverlaps(marks: readonly Mark[]): readonly string[] {
  const texts = listTexts(marks).map((mark) => ({ mark, box: growBox(boxAround(textCorners(mark)), -0.01) }));
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => doBoxesOverlap(a.box, b.box))
      .map((b) => `"${a.mark.text}" on "${b.mark.text}"`),
  );
}

/** How far marks reach out of a sheet from 0, 0 [mm]; 0: not at all. */
export function findOverhang(marks: readonly Mark[], { width, height }: Pick<Box, 'width' | 'height'>): number {
  const box = boxOfMarks(marks);
  if (box === null) throw new Error('a picture without marks');
  const out = Math.max(-box.x, -box.y, box.x + box.width - width, box.y + box.height - height);
  return Math.max(0, Number(out.toFixed(6)));
}

export function textOf(marks: readonly Mark[]): string {
  return listTexts(marks)
    .map(({ text }) => text)
    .join('\n');
}
