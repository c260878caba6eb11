import type { CastIn } from './documents/cast-in.ts';
import type { CatalogueItem } from './documents/catalogue.ts';

/**
 * Whether another insert of the catalogue may be offered in place of one: same thread, and rated by its maker for the role where only a rating
 * lets it be used. One that is rated for braces or lifting is not offered as a fixing.
 */
export function mayReplace({ role }: Pick<CastIn, 'role'>, item: CatalogueItem, other: CatalogueItem): boolean {
  if (other.thread !== item.thread) return false;
  if (role === 'brace' || role === 'lifting') return other.ratedLoads.some((rated) => rated.role === role);
  return other.ratedLoads.length === 0;
}

/** Inserts by their lengths, the shortest first, as a sentence lists them. */
export function listLengths(items: readonly CatalogueItem[]): string {
  return [...items]
    .sort((a, b) => a.length_mm - b.length_mm || (a.id < b.id ? -1 : 1))
    .map(({ id, length_mm }) => `${length_mm} mm (${id})`)
    .join(', ');
}
