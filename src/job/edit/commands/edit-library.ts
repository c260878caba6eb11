import type { Draft } from 'immer';
import type { CatalogueItem } from '../../documents/catalogue.ts';
import type { Concrete } from '../../documents/concrete.ts';
import type { JobFile } from '../../documents/job-file.ts';
import type { Rules } from '../../documents/rules.ts';
import type { Bed } from '../../documents/yard.ts';
import type { Recipe } from '../edit-job.ts';

type DraftOf<T> = Draft<T>;

/** The next free name made from another: `F16-75 copy`, `F16-75 copy 2`. */
export function copyName(name: string, taken: readonly string[]): string {
  for (let count = 1; ; count += 1) {
    const made = `${name} copy${count === 1 ? '' : ` ${count}`}`;
    if (!taken.includes(made)) return made;
  }
}

/** Changes the rules in place. */
export function changeRules(change: (rules: DraftOf<Rules>) => void): Recipe {
  return ({ library }) => change(library.rules);
}

/** Changes one insert of the catalogue in place; where it gets another name, all that use it follow. */
export function changeItem(id: string, change: (item: DraftOf<CatalogueItem>) => void): Recipe {
  return ({ job, library }) => {
    const item = library.catalogue.items.find((one) => one.id === id);
    if (item === undefined) return;
    change(item);
    if (item.id === id) return;
    for (const castIn of job.castIns) if (castIn.item === id) castIn.item = item.id;
    for (const detail of library.details.details) if (detail.item === id) detail.item = item.id;
  };
}

/** Puts an insert behind another of the catalogue, or at its end. */
export function addItem(item: CatalogueItem, after: string | null): Recipe {
  return ({ library }) => {
    const { items } = library.catalogue;
    const at = items.findIndex(({ id }) => id === after);
    items.splice(at < 0 ? items.length : at + 1, 0, item as DraftOf<CatalogueItem>);
  };
}

export function removeItem(id: string): Recipe {
  return ({ library }) => {
    library.catalogue.items = library.catalogue.items.filter((one) => one.id !== id);
  };
}

/** Takes inserts into the catalogue: those of a name that it has take the place of the old, the others go to the end; or they are all that it has. */
export function takeItems(items: readonly CatalogueItem[], how: 'add' | 'replace'): Recipe {
  return ({ library }) => {
    const { catalogue } = library;
    catalogue.items = mergeItems(catalogue.items, items, how) as DraftOf<CatalogueItem>[];
  };
}

/** The catalogue's inserts with others taken in, in its own order. */
export function mergeItems(
  own: readonly CatalogueItem[],
  taken: readonly CatalogueItem[],
  how: 'add' | 'replace',
): readonly CatalogueItem[] {
  if (how === 'replace') return taken;
  const byId = new Map(taken.map((item) => [item.id, item]));
  const known = new Set(own.map(({ id }) => id));
  return [...own.map((item) => byId.get(item.id) ?? item), ...taken.filter(({ id }) => !known.has(id))];
}

/** Names the catalogue and its edition; the job's pin goes with it. */
export function nameCatalogue(change: Partial<Pick<JobFile['library']['catalogue'], 'name' | 'edition'>>): Recipe {
  return ({ job, library }) => {
    Object.assign(library.catalogue, change);
    job.pins.catalogue = { id: library.catalogue.id, edition: library.catalogue.edition };
  };
}

/** Names the rules and their edition; the job's pin goes with it. */
export function nameRules(change: Partial<Pick<Rules, 'name' | 'edition'>>): Recipe {
  return ({ job, library }) => {
    Object.assign(library.rules, change);
    job.pins.rules = { id: library.rules.id, edition: library.rules.edition };
  };
}

/** Changes a mix in place; panels follow where it gets another name. */
export function changeConcrete(id: string, change: (concrete: DraftOf<Concrete>) => void): Recipe {
  return ({ job }) => {
    const concrete = job.concretes.find((one) => one.id === id);
    if (concrete === undefined) return;
    change(concrete);
    if (concrete.id === id) return;
    for (const panel of job.panels) if (panel.concrete === id) panel.concrete = concrete.id;
  };
}

/** Changes a bed in place; pours follow where it gets another name. */
export function changeBed(id: string, change: (bed: DraftOf<Bed>) => void): Recipe {
  return ({ job, library }) => {
    const bed = library.yard.beds.find((one) => one.id === id);
    if (bed === undefined) return;
    change(bed);
    if (bed.id === id) return;
    for (const pour of job.pours) if (pour.bed === id) pour.bed = bed.id;
  };
}
