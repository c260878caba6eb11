import type { Drawing, Mark } from '../drawing.ts';
import { drawBox, drawLine, drawText } from '../marks.ts';
import type { PictureRoom } from './deviation-picture.ts';
import { findStep } from './scatter-picture.ts';

export interface HistogramContent {
  /** Found less designed, along one axis [mm]. */
  readonly values: readonly number[];
  readonly tolerances: readonly number[];
  /** What is counted, such as `along x`. */
  readonly words: string;
}

/** Under the columns for the numbers, over them for the words [mm of paper]. */
const FOOT = 5;
const HEAD = 9;
const MARGIN = 6;
/** Widths of a column [mm]. */
const WIDTHS = [0.5, 1, 2, 5, 10, 20, 50] as const;
/** Columns on each side of the middle, at most. */
const MOST_COLUMNS = 12;

/** How many values lie in each column; a value on a border counts to the column farther from the middle. */
export function countColumns(values: readonly number[], width: number): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const value of values) {
    const column = Math.sign(value) * Math.floor(Math.abs(value) / width + 0.5);
    counts.set(column === 0 ? 0 : column, (counts.get(column === 0 ? 0 : column) ?? 0) + 1);
  }
  return counts;
}

/**
 * How many inserts lie how far off along one axis, in columns about the designed place, with the tolerance as dashed lines; columns outside of the
 * narrowest tolerance are black.
 * @param write a length for people
 */
export function drawHistogram(
  { values, tolerances, words }: HistogramContent,
  room: PictureRoom,
  write: (mm: number) => string,
): Drawing {
  const reach = 1.1 * Math.max(1, ...tolerances, ...values.map(Math.abs));
  const width = WIDTHS.find((one) => reach / one <= MOST_COLUMNS) ?? WIDTHS.at(-1)!;
  const narrowest = Math.min(...tolerances);
  const counts = countColumns(values, width);
  const most = Math.max(1, ...counts.values());
  const half = room.width / 2 - MARGIN;
  const place = (value: number) => room.width / 2 + (value / reach) * half;
  const tall = room.height - FOOT - HEAD;
  const columns = [...counts].flatMap(([column, count]): readonly Mark[] => {
    const [from, to] = [(column - 0.5) * width, (column + 0.5) * width];
    const height = (count / most) * tall;
    const isOut = Math.abs(column) * width > narrowest;
    const at = Math.max(place(from), 0);
    return [
      drawBox('insert', [at, FOOT], Math.min(place(to), room.width) - at, height, 'thin', isOut ? 'black' : 'grey'),
      drawText([place(column * width), FOOT + height + 0.7], String(count), room.text, { align: 'middle' }),
    ];
  });
  const step = findStep(reach);
  const count = Math.floor(reach / step);
  const numbers = Array.from({ length: 2 * count + 1 }, (_, k) => (k - count) * step).map((value) =>
    drawText([place(value), FOOT - 1], write(value), room.text, { align: 'middle', baseline: 'top', tone: 'grey' }),
  );
  const limits = tolerances.flatMap((tolerance) =>
    [-tolerance, tolerance].map((at) =>
      drawLine('dimension', [place(at), FOOT], [place(at), FOOT + tall + 2], 'dashed'),
    ),
  );
  return {
    width: room.width,
    height: room.height,
    marks: [
      ...columns,
      drawLine('dimension', [MARGIN / 2, FOOT], [room.width - MARGIN / 2, FOOT], 'thin'),
      ...limits,
      ...numbers,
      drawText([1, room.height - 0.5], words, room.text, { baseline: 'top', weight: 'bold' }),
    ],
  };
}
