import type { BodyOf, FactRecord, RecordKind } from '../records/record.ts';
import type { QuantityWriter } from './quantities.ts';

/** Names for what records know by id or key only. */
export interface RecordNames {
  /** Name of a person; null: unknown on this device, or erased. */
  readonly person: (id: string) => string | null;
  /** Number of a cast-in item on the sheet; null: it is in no plan that is known. */
  readonly number: (item: string) => number | null;
  /** Another piece as its mark and serial; null: not known. */
  readonly piece: (id: string) => string | null;
  /** Another record of the piece, for what a correction or a decision points at; null: it has not arrived. */
  readonly record: (id: string) => FactRecord | null;
  readonly write: Pick<QuantityWriter, 'length' | 'strength'>;
}

/** What several records that say the same have in common: the first stands for all, `items` are the inserts that they are of. */
export interface Told {
  readonly names: RecordNames;
  /** `insert 4`, `inserts 4–7`, `the piece`. */
  readonly what: string;
  readonly isOfInsert: boolean;
}

export type Teller<Kind extends RecordKind> = (body: BodyOf<Kind>, told: Told) => string;

/** What was looked at: what is wrong first, its words in capitals. Each as [is right, words where it is, words where it is not]. */
export function tellSights(sights: readonly (readonly [boolean, string, string])[]): string {
  const wrong = sights.filter(([isRight]) => !isRight).map(([, , words]) => words);
  const right = sights.filter(([isRight]) => isRight).map(([, words]) => words);
  return [...wrong, ...right].join(', ');
}

/** What was written beside, with what joins it; nothing where nothing was. */
export const add = (text: string | null, before = '; ') => (text === null ? '' : `${before}${text}`);

/** How an insert stands to the face of the concrete: `2 mm below the face`, `3 mm proud`, `flush`. */
export function tellLevel(level_mm: number, write: Pick<QuantityWriter, 'length'>): string {
  if (level_mm === 0) return 'flush with the face';
  return level_mm > 0 ? `${write.length(level_mm)} below the face` : `${write.length(-level_mm)} proud of the face`;
}
