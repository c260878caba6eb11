import type { PartKind, PartLine } from '../assess/parts/part-kind.ts';

/** A kind in words, with what tells it from another. */
export function describeKind({ group, words, thread, size, finish }: PartKind): string {
  switch (group) {
    case 'inserts':
      return `${words}: ${thread} x ${size}, ${finish}`;
    case 'chairs':
      return size === null ? words : `${words}: ${size} mm high`;
    case 'caps':
    case 'holding':
      return thread === null || words.includes(thread) ? words : `${words}: ${thread}`;
    case 'cross bars':
    case 'other cast-ins':
    case 'bolts and washers':
      return words;
  }
}

/** A number of something: "1 insert", "3 inserts". */
export function countOf(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

/** Kinds with their counts, for a label: "8 F16, 16 nail". */
export function listCounts(lines: readonly PartLine[]): string {
  return lines.map(({ kind, count }) => `${count} ${kind.id}`).join(', ');
}
