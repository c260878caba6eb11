import { PAGE_WIDTH } from './print/table.ts';

/** A terminal narrower than this is not followed: tables would be all breaks. */
const LEAST = 60;

/** Width of what is printed: that of the terminal, at most a page; a page into files and pipes. */
export function findPageWidth(): number {
  const { columns } = process.stdout;
  return columns === undefined ? PAGE_WIDTH : Math.min(PAGE_WIDTH, Math.max(LEAST, columns));
}
