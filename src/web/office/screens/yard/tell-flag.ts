import type { Flag } from '../../../../assess/yard/piece-report.ts';

/** A flag in one line: what it is, then what about it. */
export function tellFlag({ kind, words }: Pick<Flag, 'kind' | 'words'>): string {
  return words.startsWith(kind) ? words : `${kind}: ${words}`;
}
