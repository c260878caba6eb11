import type { Draft } from 'immer';
import type { CatalogueItem } from '../../../../job/documents/catalogue.ts';
import { changeItem } from '../../../../job/edit/commands/edit-library.ts';
import type { JobSession } from '../../state/session.ts';

/** Changes an insert in place. The answer: null, or why it may not be. */
export type EditItem = (what: string, change: (item: Draft<CatalogueItem>) => void) => string | null;

export interface ItemPartProps {
  readonly item: CatalogueItem;
  readonly edit: EditItem;
}

/** Edits of one insert, each told with its name. */
export function editItemOf(session: JobSession, item: CatalogueItem): EditItem {
  return (what, change) => session.commit(`Insert ${item.id}: ${what}`, changeItem(item.id, change));
}

/** For a field that must have a value: what is empty is refused, the rest goes on. */
export function needed(take: (value: number) => string | null): (value: number | null) => string | null {
  return (value) => (value === null ? 'expected a number' : take(value));
}
