import type { Box } from '../boxes.ts';

/** Sheets that the folder is made for, lying on their long side [mm]. */
export interface Paper {
  readonly name: 'A3' | 'A4';
  readonly width: number;
  readonly height: number;
  readonly margin: number;
  /** Height of the head and the foot of every sheet. */
  readonly head: number;
  readonly foot: number;
}

/** ISO 216. */
export const PAPERS: Readonly<Record<Paper['name'], Paper>> = {
  A3: { name: 'A3', width: 420, height: 297, margin: 12, head: 29, foot: 12 },
  A4: { name: 'A4', width: 297, height: 210, margin: 9, head: 28, foot: 11 },
};

/** Font sizes [mm]: nothing smaller than `small`, which a wet grey copy still shows. */
export const TYPE = { small: 2.6, body: 3.1, large: 3.8, heading: 4.4, title: 6, mark: 9 } as const;

/** Free room of a sheet between head and foot. */
export function findFrame({ width, height, margin, head, foot }: Paper): Box {
  return { x: margin, y: margin + foot, width: width - 2 * margin, height: height - 2 * margin - head - foot };
}

/** Scales 1 : n that a rule has, or that are easily reckoned. */
const SCALES = [1, 2, 2.5, 5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200, 250, 500] as const;

/** The largest scale 1 : n at which lengths [mm] fit into room on paper [mm]; null where none does. */
export function findScale(lengths: readonly (readonly [length: number, room: number])[]): number | null {
  return SCALES.find((n) => lengths.every(([length, room]) => length / n <= room)) ?? null;
}
