import type { Point } from '../engine/geometry/point.ts';
import type { Mark } from './drawing.ts';
import { DrawingError } from './drawing-error.ts';
import { placeMarks } from './place.ts';

/** A piece of a page that is not broken: its marks hang below the origin, from y = 0 down to −height [mm]. */
export interface Block {
  /** What it is, for messages. */
  readonly name: string;
  readonly height: number;
  readonly marks: readonly Mark[];
  /** Stands above it again where it starts a page: the head of a table. */
  readonly head?: Block;
  /** Not the last of a page: the next block goes with it. */
  readonly staysWithNext?: boolean;
}

/** Heights add up in floating point [mm]. */
const ROUNDING = 1e-6;

/** A block on a page: `top` is how far its upper side lies below the upper side of the page's frame [mm]. */
export interface PlacedBlock {
  readonly block: Block;
  readonly top: number;
}

/**
 * Stacks blocks on pages, top to bottom, and starts a page where the next does not fit. Columns of one page count as pages: give their height.
 * Throws DrawingError when a block is higher than a page.
 *
 * @param height of the frame of each page [mm]
 * @param firstHeight of that of the first page, where it differs [mm]
 */
export function flowBlocks(
  blocks: readonly Block[],
  height: number,
  firstHeight: number = height,
): readonly (readonly PlacedBlock[])[] {
  const pages: PlacedBlock[][] = [[]];
  let used = 0;
  for (let i = 0; i < blocks.length; ) {
    const run = takeRun(blocks, i);
    i += run.length;
    const room = () => (pages.length === 1 ? firstHeight : height) + ROUNDING;
    let placed = withHead(run, pages.at(-1)!);
    // The first page, under a title, may be too short even for one run that a whole page holds.
    if (used + heightOf(placed) > room() && (used > 0 || pages.length === 1)) {
      pages.push([]);
      used = 0;
      placed = withHead(run, []);
    }
    if (heightOf(placed) > room())
      throw new DrawingError(
        `${run[0]!.name} is ${heightOf(placed).toFixed(1)} mm high with what stays with it; a page has ${height.toFixed(1)} mm; expected a larger sheet or less text`,
      );
    for (const block of placed) {
      pages.at(-1)!.push({ block, top: used });
      used += block.height;
    }
  }
  return pages;
}

/** The block at `from` with those that it must not be parted from. */
function takeRun(blocks: readonly Block[], from: number): readonly Block[] {
  let end = from;
  while (blocks[end]?.staysWithNext === true && end + 1 < blocks.length) end += 1;
  return blocks.slice(from, end + 1);
}

function heightOf(blocks: readonly Block[]): number {
  return blocks.reduce((sum, block) => sum + block.height, 0);
}

/** A run as it stands on a page: under its head where it starts it. */
function withHead(run: readonly Block[], page: readonly PlacedBlock[]): readonly Block[] {
  const head = run[0]?.head;
  return head === undefined || page.length > 0 ? run : [head, ...run];
}

/** The marks of one page of blocks, its frame's upper corner of least x at `at`. */
export function drawBlocks(page: readonly PlacedBlock[], [x, y]: Point): readonly Mark[] {
  return page.flatMap(({ block, top }) => placeMarks(block.marks, { move: [x, y - top] }));
}
