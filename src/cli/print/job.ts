import type { JobAnswer } from '../../assess/assess-job.ts';
import type { ConnectionAnswer } from '../../assess/connection-answer.ts';
import { showRatio } from './numbers.ts';
import { layPoint, layTable, layText } from './table.ts';
import { nameCounts, nameMode, STATE_WORDS } from './words.ts';

/** Inserts by name, shortened when there are many. */
function listInserts(inserts: readonly string[]): string {
  return inserts.length > 6 ? `${inserts.slice(0, 5).join(' ')} … ${inserts.length} in all` : inserts.join(' ');
}

function governingOf({ governing, reasons, state }: ConnectionAnswer): string {
  if (state === 'cannot be computed' || governing === null) return reasons[0] ?? '';
  return `${nameMode(governing.mode)} (${governing.combination})`;
}

/** Every connection on a line: state in words, ratio, what governs. */
export function printConnections(answers: readonly ConnectionAnswer[], width: number): string {
  return layTable(
    [
      { head: 'mark' },
      { head: 'panel' },
      { head: 'face' },
      { head: 'inserts', least: 7 },
      { head: 'answer', least: 12 },
      { head: 'used', align: 'right' },
      { head: 'governing (combination), or why not', least: 24 },
    ],
    answers.map((answer) => [
      answer.mark,
      answer.panel,
      answer.face,
      listInserts(answer.inserts),
      STATE_WORDS[answer.state],
      showRatio(answer.ratio),
      governingOf(answer),
    ]),
    width,
  );
}

/** Totals by state. What was not checked stands apart and is never counted as passed. */
export function printCounts({ counts, connections }: JobAnswer, width: number): string {
  const what = connections.length === 1 ? '1 connection' : `${connections.length} connections`;
  return layText(`${what}: ${nameCounts(counts)}`, width);
}

/** Adds a connection to those of a text. */
function note(where: Map<string, string[]>, text: string, mark: string): void {
  const marks = where.get(text);
  if (marks === undefined) where.set(text, [mark]);
  else marks.push(mark);
}

/** Each connection that fails: how far, in what, in which combination. */
export function listFailing(answers: readonly ConnectionAnswer[], width: number): string[] {
  return answers
    .filter(({ state }) => state === 'fails')
    .map((answer) =>
      layPoint(`${answer.mark}: ${STATE_WORDS.fails} ${showRatio(answer.ratio)}, ${governingOf(answer)}`, width),
    );
}

/** Texts of connections, each once with the marks that it is for. */
function gatherTexts(
  answers: readonly ConnectionAnswer[],
  textsOf: (answer: ConnectionAnswer) => readonly string[],
): readonly (readonly [text: string, marks: readonly string[]])[] {
  const where = new Map<string, string[]>();
  for (const answer of answers) for (const text of new Set(textsOf(answer))) note(where, text, answer.mark);
  return [...where];
}

function reasonsOf({ reasons, state }: ConnectionAnswer): readonly string[] {
  // That no action is given stands in the table already.
  return state === 'strength not checked' && reasons.length <= 1 ? [] : reasons;
}

/** Each reason why connections are not covered or cannot be computed, with the connections that it is for. */
export function listReasons(answers: readonly ConnectionAnswer[], width: number): string[] {
  return gatherTexts(answers, reasonsOf).map(([text, marks]) => layPoint(`${shortenMarks(marks)}: ${text}`, width));
}

/** What a person should look at, with the connections that it is for: what many of them share comes last. */
export function listWarnings(answers: readonly ConnectionAnswer[], width: number): string[] {
  return gatherTexts(answers, ({ warnings }) => warnings)
    .toSorted((a, b) => a[1].length - b[1].length)
    .map(([text, marks]) => layPoint(`${shortenMarks(marks)}: ${text}`, width));
}

/** Each assumption once, with how many connections rest on it. */
export function printAssumptions(answers: readonly ConnectionAnswer[], width: number): string {
  const where = new Map<string, string[]>();
  for (const { mark, assumptions } of answers) for (const assumption of assumptions) note(where, assumption, mark);
  return [...where]
    .sort((a, b) => b[1].length - a[1].length)
    .map(([assumption, marks]) => {
      const on = marks.length === answers.length && answers.length > 1 ? 'all' : shortenMarks(marks);
      return layPoint(answers.length === 1 ? assumption : `${on}: ${assumption}`, width);
    })
    .join('\n');
}

/** Marks by name, shortened when there are many. */
export function shortenMarks(marks: readonly string[]): string {
  return marks.length > 5 ? `${marks.slice(0, 4).join(', ')} and ${marks.length - 4} more` : marks.join(', ');
}

/** What is set out but never computed here. */
export function printOthers({ loose, otherRoles }: JobAnswer, width: number): string {
  const lines: string[] = [];
  if (loose.length > 0) {
    const names = loose.map(({ panel, insert }) => `${panel}/${insert}`);
    const what = loose.length === 1 ? '1 fixing insert' : `${loose.length} fixing inserts`;
    lines.push(layPoint(`${what} in no connection, strength not checked: ${shortenMarks(names)}`, width));
  }
  const roles = Object.entries(otherRoles).map(([role, count]) => `${count} ${role}`);
  if (roles.length > 0) lines.push(layPoint(`other cast-in items, not computed here: ${roles.join(', ')}`, width));
  return lines.join('\n');
}

/** The cautions that go with every answer. */
export const CAUTIONS = [
  'Fixing inserts are not lifting inserts unless their maker rates them so.',
  'Answers are aids for a competent person. Local codes and the licensed design engineer decide.',
  'Before the concrete has its strength, and while panels are lifted or braced, other rules govern.',
];
