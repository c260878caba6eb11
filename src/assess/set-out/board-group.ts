import type { HoldingWay } from '../../job/documents/holding-parts.ts';

/**
 * Whether the inserts of a connection are set by one template board: two or more, every one by the same way of holding, and that a board.
 * A group of which only some are on a board is taped one by one.
 */
export function isBoardGroup(ways: readonly (HoldingWay | null)[]): boolean {
  const [first] = ways;
  if (first === undefined || first === null || ways.length < 2 || first.method !== 'template board') return false;
  return ways.every((way) => way?.id === first.id);
}
