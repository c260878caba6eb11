import type { BodyOf } from '../../../../records/record.ts';

type Uncovered = BodyOf<'uncovered'>;

/** What is looked at when an insert is opened up. */
export type UncoverAnswer = keyof Pick<Uncovered, 'plateOff' | 'mortarOut' | 'thread' | 'capBack'>;

/** In the order of the work, each as it is called when it is not so. */
export const UNCOVER_ANSWERS: readonly {
  readonly which: UncoverAnswer;
  readonly wrong: string;
  readonly more: string;
}[] = [
  { which: 'plateOff', wrong: 'Plate still on', more: 'the fixing plate or former' },
  { which: 'mortarOut', wrong: 'Mortar in it', more: 'in the thread or at its bottom' },
  { which: 'thread', wrong: 'Bolt does not go in', more: 'by hand, a bolt of the final finish' },
  { which: 'capBack', wrong: 'No cap', more: 'none to put back in' },
];

/** All as it must be. */
export const ALL_OPEN: Uncovered = {
  plateOff: true,
  mortarOut: true,
  thread: true,
  turns: null,
  capBack: true,
  note: null,
};

/** What was said of an insert before, to be changed; of one that nobody named, all as it must be. */
export function startException(latest: Uncovered | null): Uncovered {
  return latest ?? ALL_OPEN;
}

/** How many plates came back, as keys and pad count them: never less than none. A count above what went out stands: it is what was counted. */
export function countBack(before: number | null, by: 1 | -1): number {
  return Math.max(0, (before ?? 0) + by);
}

/** Hours between the pour and the test of specimens, whole; null: not poured or tested before. */
export function findAgeHours(poured: string | null, now: number): number | null {
  if (poured === null) return null;
  const hours = Math.round((now - Date.parse(poured)) / 3_600_000);
  return hours > 0 ? hours : null;
}

/** Numbers as a test report writes them, set apart by spaces or semicolons; a comma is a point. Null: one of them is no strength. */
export function readValues(text: string): readonly number[] | null {
  const parts = text.trim().split(/[\s;]+/);
  const values = parts.map((part) => Number(part.replace(',', '.')));
  const isRead = parts[0] !== '' && values.length <= 20 && values.every((value) => value > 0 && value <= 250);
  return isRead ? values : null;
}
