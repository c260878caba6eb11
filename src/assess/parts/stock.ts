import { findNearestWord } from '../../job/nearest-word.ts';

/** What the yard has of one part: of a reusable one all that it owns, in use or not. Several lines of one part add up. */
export interface StockLine {
  readonly id: string;
  readonly inStock: number;
  readonly onOrder: number;
  /** Day on which what is on order comes, YYYY-MM-DD; null: not known. */
  readonly arrives: string | null;
}

/** Stock of one kind. */
export interface KindStock {
  readonly inStock: number;
  readonly onOrder: number;
  readonly deliveries: readonly { readonly count: number; readonly arrives: string | null }[];
  /** False: no line names it, which counts as none. */
  readonly isListed: boolean;
}

/** Adds up the lines of one part. */
export function sumStock(stock: readonly StockLine[], id: string): KindStock {
  const lines = stock.filter((line) => line.id === id);
  const add = (of: (line: StockLine) => number) => lines.reduce((sum, line) => sum + of(line), 0);
  return {
    inStock: add(({ inStock }) => inStock),
    onOrder: add(({ onOrder }) => onOrder),
    deliveries: lines.filter(({ onOrder }) => onOrder > 0).map(({ onOrder, arrives }) => ({ count: onOrder, arrives })),
    isListed: lines.length > 0,
  };
}

/**
 * What is at hand for a pour on a day: in stock, or on order and due before it, since the bench is laid the day before. What was due before today and is still on order counts as not coming: nobody
 * knows when it will.
 */
export function countAtHand({ inStock, deliveries }: KindStock, date: string, today: string): number {
  return deliveries.reduce(
    (sum, { count, arrives }) => (arrives !== null && arrives >= today && arrives < date ? sum + count : sum),
    inStock,
  );
}

/** What is on order and cannot be counted on for any pour. */
export function listUncertain(stock: readonly StockLine[], today: string): readonly string[] {
  return stock.flatMap(({ id, onOrder, arrives }) => {
    if (onOrder === 0) return [];
    if (arrives === null)
      return [`${id}: ${onOrder} on order without a day of arrival, counted for no pour; ask for it`];
    if (arrives >= today) return [];
    return [
      `${id}: ${onOrder} on order were due on ${arrives}, counted for no pour; book them in, or ask where they are`,
    ];
  });
}

/** Ids of a list that the job does not know but that look like one of its own: most likely mistyped. */
export function findMistyped(
  ids: readonly string[],
  known: ReadonlySet<string>,
): readonly { readonly id: string; readonly meant: string }[] {
  return [...new Set(ids)].flatMap((id) => {
    if (known.has(id)) return [];
    const meant = findNearestWord(id, [...known]);
    return meant === null ? [] : [{ id, meant }];
  });
}

/** Ids that two kinds share, such as an insert and a plate: a list by id cannot tell which is meant. */
export function findSharedIds(ids: readonly string[]): readonly string[] {
  return [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))];
}
