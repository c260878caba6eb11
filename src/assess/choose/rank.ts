import { type Cost, countChanges, type Delivery, type PassingInsert } from './choice.ts';

/** When an insert can be had, as far as the pour is known. What is not known does not count as in time. */
export function findDelivery(leadTime_days: number | null, daysToPour: number | null): Delivery {
  if (daysToPour === null) return { kind: 'not asked' };
  if (leadTime_days === null) return { kind: 'not known' };
  if (leadTime_days <= daysToPour) return { kind: 'in time', leadTime_days };
  return { kind: 'late', leadTime_days, by_days: leadTime_days - daysToPour };
}

/** Whether prices can be compared: all that are given are in one currency. */
export function haveOneCurrency(inserts: readonly { readonly cost: Cost | null }[]): boolean {
  return new Set(inserts.flatMap(({ cost }) => cost?.currency ?? [])).size <= 1;
}

/** 0: others of its kind are in the panel; 1: in the job; 2: a new kind. */
function placeOfUse({ inPanel, inJob }: PassingInsert): number {
  if (inPanel > 0) return 0;
  return inJob > 0 ? 1 : 2;
}

function isObtainable({ delivery: { kind } }: PassingInsert): boolean {
  return kind === 'in time' || kind === 'not asked';
}

/** What the order rests on, the first first; of each the smaller number is better. */
function listKeys(insert: PassingInsert, comparesCost: boolean): readonly number[] {
  return [
    insert.isAsDesigned ? 0 : 1,
    countChanges(insert.changes),
    placeOfUse(insert),
    isObtainable(insert) ? 0 : 1,
    insert.lookAlikes.length === 0 ? 0 : 1,
    insert.cost === null ? 1 : 0,
    comparesCost ? (insert.cost?.amount ?? 0) : 0,
    insert.ratio,
  ];
}

/**
 * Inserts with which a connection passes, best first: as it stands, then by the fewest changes besides the insert; already used in the panel,
 * then in the job; obtainable by the pour; no look-alike in the panel; cost, where one currency makes it comparable, no price
 * last; then the smaller ratio, then the name.
 */
export function rankInserts(inserts: readonly PassingInsert[]): readonly PassingInsert[] {
  const comparesCost = haveOneCurrency(inserts);
  return inserts
    .map((insert) => ({ insert, keys: listKeys(insert, comparesCost) }))
    .sort((a, b) => {
      for (let i = 0; i < a.keys.length; i++) if (a.keys[i] !== b.keys[i]) return a.keys[i]! - b.keys[i]!;
      return a.insert.item.id < b.insert.item.id ? -1 : 1;
    })
    .map(({ insert }) => insert);
}
