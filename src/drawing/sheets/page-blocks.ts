import type { Mark } from '../drawing.ts';
import { type Block, drawBlocks, flowBlocks } from '../flow.ts';
import { drawLine, drawTextLines } from '../marks.ts';
import { CAP_HEIGHT, LINE_STEP, wrapText } from '../text-size.ts';
import { layMarks, layTextBlock } from './text-block.ts';

/** Between columns of a page [mm]. */
export const GUTTER = 6;

/** A heading that stays with what follows. */
export function layHeading(words: string, size: number, width: number): Block {
  return layTextBlock(words, width, { size: size + 0.5, weight: 'bold', above: 2.2, below: 0.6, staysWithNext: true });
}

/** Height of blocks on each other [mm]. */
export function sumHeights(blocks: readonly Block[]): number {
  return blocks.reduce((sum, { height }) => sum + height, 0);
}

/** Blocks beside each other as one, each column from the same top. @param width of a column */
export function layBeside(columns: readonly (readonly Block[])[], width: number): Block {
  const heights = columns.map(sumHeights);
  const marks = columns.flatMap((blocks, i) => {
    const [page = []] = flowBlocks(blocks, heights[i]! + 1);
    return drawBlocks(page, [i * (width + GUTTER), 0]);
  });
  return layMarks('columns', Math.max(...heights), marks);
}

/** A list, each of its sentences after a dash. */
export function layList(items: readonly string[], size: number, width: number): readonly Block[] {
  return items.map((item): Block => {
    const lines = wrapText(item, size, 'plain', width - 3);
    const height = ((lines.length - 1) * LINE_STEP + CAP_HEIGHT) * size + 1.5;
    const marks = [
      ...drawTextLines([0, -0.5], ['–'], size, { baseline: 'top' }),
      ...drawTextLines([3, -0.5], lines, size, { baseline: 'top' }),
    ];
    return layMarks(`the point "${item.slice(0, 30)}"`, height, marks);
  });
}

/** A list in columns of about the same height, read down one and then the next. @param room width of all columns */
export function layInColumns(items: readonly string[], count: number, size: number, room: number): Block {
  const width = (room - (count - 1) * GUTTER) / count;
  const blocks = layList(items, size, width);
  const total = sumHeights(blocks);
  const columns: Block[][] = [[]];
  let used = 0;
  for (const block of blocks) {
    if (used >= (total * columns.length) / count && columns.length < count) columns.push([]);
    columns.at(-1)!.push(block);
    used += block.height;
  }
  return layBeside(columns, width);
}

/** Names and values in two columns. @param share of the width that the names take */
export function layValues(
  values: readonly (readonly [name: string, value: string])[],
  size: number,
  width: number,
  share: number,
): readonly Block[] {
  const half = width * share;
  return values.map(([name, value]): Block => {
    const names = wrapText(name, size, 'plain', half - 2);
    const written = wrapText(value, size, 'bold', width - half);
    const lines = Math.max(names.length, written.length);
    return layMarks(`the value of "${name}"`, ((lines - 1) * LINE_STEP + CAP_HEIGHT) * size + 2, [
      ...drawTextLines([0, -0.9], names, size, { baseline: 'top' }),
      ...drawTextLines([half, -0.9], written, size, { baseline: 'top', weight: 'bold' }),
    ]);
  });
}

/** Lines to write on with a pencil, their words below. */
export function layPencilLines(words: readonly string[], size: number, width: number): Block {
  const share = (width + GUTTER) / words.length;
  const marks = words.flatMap((label, i): Mark[] => [
    drawLine('frame', [i * share, -9.5], [(i + 1) * share - GUTTER, -9.5], 'thin'),
    ...drawTextLines([i * share, -10.6], [label], size, { baseline: 'top' }),
  ]);
  return layMarks(`the lines to write ${words[0]} on`, 14.5, marks);
}
