import type { ConnectionAnswer } from '../assess/connection-answer.ts';
import { nameMode } from './words.ts';

/** Inserts by name, shortened when there are many. */
export function listInserts(inserts: readonly string[]): string {
  return inserts.length > 6 ? `${inserts.slice(0, 5).join(' ')} … ${inserts.length} in all` : inserts.join(' ');
}

/** What decides an answer, with its combination; where nothing could be computed, why. */
export function governingOf({ governing, reasons, state }: ConnectionAnswer): string {
  if (state === 'cannot be computed' || governing === null) return reasons[0] ?? '';
  return `${nameMode(governing.mode)} (${governing.combination})`;
}

/** Adds a connection to those of a text. */
export function note(where: Map<string, string[]>, text: string, mark: string): void {
  const marks = where.get(text);
  if (marks === undefined) where.set(text, [mark]);
  else marks.push(mark);
}

/** Texts of connections, each once with the marks that it is for. */
export function gatherTexts(
  answers: readonly ConnectionAnswer[],
  textsOf: (answer: ConnectionAnswer) => readonly string[],
): readonly (readonly [text: string, marks: readonly string[]])[] {
  const where = new Map<string, string[]>();
  for (const answer of answers) for (const text of new Set(textsOf(answer))) note(where, text, answer.mark);
  return [...where];
}

/** Why an answer is no pass, where the state alone does not say it. */
export function reasonsOf({ reasons, state }: ConnectionAnswer): readonly string[] {
  // That no action is given stands in the table already.
  return state === 'strength not checked' && reasons.length <= 1 ? [] : reasons;
}

/** Marks by name, shortened when there are many. */
export function shortenMarks(marks: readonly string[]): string {
  return marks.length > 5 ? `${marks.slice(0, 4).join(', ')} and ${marks.length - 4} more` : marks.join(', ');
}
