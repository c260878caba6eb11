import type { CatalogueItem } from '../job/documents/catalogue.ts';

/** Surfaces of steel in words. */
export const FINISH_WORDS: Readonly<Record<CatalogueItem['finish'], string>> = {
  plain: 'plain steel',
  zinc: 'electroplated zinc',
  galvanised: 'hot-dip galvanised',
  stainless: 'stainless steel',
};

/** Classes of internal threads in words. */
export const THREAD_CLASS_WORDS: Readonly<Record<CatalogueItem['threadClass'], string>> = {
  '6H': '6H, for bolts as they are or with thin zinc',
  '6AZ': '6AZ, oversize for hot-dip galvanised bolts',
  '6AX': '6AX, more oversize for hot-dip galvanised bolts',
};

/** What a test of an insert was of. */
export const TEST_WORDS: Readonly<Record<CatalogueItem['tested'][number]['mode'], string>> = {
  'steel-tension': 'steel in tension',
  'steel-shear': 'steel in shear',
  thread: 'thread',
  'pull-out': 'pull-out of the foot',
};

/** Roles that only a maker's rating allows. */
export const ROLE_WORDS: Readonly<Record<CatalogueItem['ratedLoads'][number]['role'], string>> = {
  brace: 'brace',
  lifting: 'lifting',
};
