import { PAGE_WIDTH } from './print/table.ts';

/** A terminal narrower than this is not followed: tables would be all breaks. */
const LEAST = 60;

/** What the environment says of the width, for files and pipes; a page where it says nothing, or no whole number. */
function readColumns(): number {
  const text = process.env.COLUMNS ?? '';
  return /^[1-9]\d*$/.test(text) ? Number(text) : PAGE_WIDTH;
}

/** Width of what is printed: that of the terminal, else of the environment (COLUMNS); at most a page. */
export function findPageWidth(): number {
  return Math.min(PAGE_WIDTH, Math.max(LEAST, process.stdout.columns ?? readColumns()));
}
