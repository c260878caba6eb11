import type { CastIn } from '../documents/cast-in.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { HoldingWay } from '../documents/holding-parts.ts';

/** A cast-in item of another type: a way of holding for another thread is taken off, to be chosen anew. */
export function giveType(castIn: CastIn, item: CatalogueItem, ways: readonly HoldingWay[]): CastIn {
  const way = ways.find(({ id }) => id === castIn.holding);
  const isUnfit = way !== undefined && way.thread !== null && way.thread !== item.thread;
  return { ...castIn, item: item.id, holding: isUnfit ? null : castIn.holding };
}
