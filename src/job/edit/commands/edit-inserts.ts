import { castDraft, current } from 'immer';
import { giveType } from '../../details/give-type.ts';
import type { JobFile } from '../../documents/job-file.ts';
import type { Recipe } from '../edit-job.ts';

/**
 * Gives inserts of a panel another type of the catalogue. A way of holding for another thread is taken off, to be chosen anew.
 * @throws Error when the catalogue has no such type
 */
export function setType(panel: string, ids: ReadonlySet<string>, itemId: string): Recipe {
  return ({ job, library }) => {
    const { catalogue, holding } = current(library) as JobFile['library'];
    const item = catalogue.items.find(({ id }) => id === itemId);
    if (item === undefined) throw new Error(`insert ${itemId} is not in the catalogue`);
    for (const castIn of job.castIns) {
      if (castIn.panel !== panel || !ids.has(castIn.id)) continue;
      const { item: type, holding: way } = giveType(castIn, item, holding.ways);
      Object.assign(castIn, castDraft({ item: type, holding: way }));
    }
  };
}

/**
 * Gives inserts of a panel a way of holding, with the recess that it leaves; null: not decided, the recess stays.
 * @throws Error when the library has no such way
 */
export function setHolding(panel: string, ids: ReadonlySet<string>, wayId: string | null): Recipe {
  return ({ job, library }) => {
    const way = library.holding.ways.find(({ id }) => id === wayId);
    if (wayId !== null && way === undefined) throw new Error(`way of holding ${wayId} is not in the library`);
    for (const castIn of job.castIns) {
      if (castIn.panel !== panel || !ids.has(castIn.id)) continue;
      castIn.holding = wayId;
      if (way !== undefined) castIn.recess_mm = way.recess_mm;
    }
  };
}
