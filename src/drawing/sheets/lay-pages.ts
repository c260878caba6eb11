import { type Block, drawBlocks, flowBlocks } from '../flow.ts';
import { findFrame, type Paper } from './paper.ts';
import type { Sheet, SheetHead } from './sheet-frame.ts';

/** Free room below the head of a sheet [mm]. */
const BELOW_HEAD = 3;

/** Blocks over the full width, on as many sheets as they need. Later sheets say that they go on. */
export function layPages(head: SheetHead, blocks: readonly Block[], paper: Paper): readonly Sheet[] {
  const frame = findFrame(paper);
  const pages = flowBlocks(blocks, frame.height - BELOW_HEAD);
  return pages.map((page, i) => ({
    head: i === 0 ? head : { ...head, title: `${head.title} (${i + 1})` },
    marks: drawBlocks(page, [frame.x, frame.y + frame.height - BELOW_HEAD]),
  }));
}

/** Room that a page of full width has [mm]. */
export function findPageWidth(paper: Paper): number {
  return findFrame(paper).width;
}
