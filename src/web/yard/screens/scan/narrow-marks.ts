/** What is left of the marks after some signs, and what may come next. */
export interface NarrowedMarks {
  readonly found: readonly string[];
  /** Signs that lead on: with what all that is left have in common already put to each. */
  readonly next: readonly string[];
}

const inOrder = (a: string, b: string) => a.localeCompare(b, 'en', { numeric: true });

/** The marks that begin so, and the signs that come next in any of them: `P1` → `P10`, `P11` …; a sign that all share is not asked for by itself. */
export function narrowMarks(marks: readonly string[], typed: string): NarrowedMarks {
  const found = [...new Set(marks)].filter((mark) => mark.startsWith(typed)).sort(inOrder);
  const longest = Math.max(0, ...found.map(({ length }) => length));
  let shared = typed.length;
  while (shared < longest && found.every((mark) => mark[shared] === found[0]![shared])) shared += 1;
  const next = found.map((mark) => mark.slice(typed.length, shared + 1)).filter((signs) => signs !== '');
  return { found, next: [...new Set(next)].sort(inOrder) };
}

export function countMarks(count: number): string {
  if (count === 0) return 'No mark of this job begins so.';
  return count === 1 ? '1 mark' : `${count} marks`;
}
