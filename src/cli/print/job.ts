import type { JobAnswer } from '../../assess/assess-job.ts';
import type { ConnectionAnswer } from '../../assess/connection-answer.ts';
import { gatherTexts, governingOf, listInserts, note, reasonsOf, shortenMarks } from '../../say/connection-words.ts';
import { showRatio } from '../../say/numbers.ts';
import { nameCounts, STATE_WORDS } from '../../say/words.ts';
import { layPoint, layTable, layText } from './table.ts';

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

/** Each connection that fails: how far, in what, in which combination. */
export function listFailing(answers: readonly ConnectionAnswer[], width: number): string[] {
  return answers
    .filter(({ state }) => state === 'fails')
    .map((answer) =>
      layPoint(`${answer.mark}: ${STATE_WORDS.fails} ${showRatio(answer.ratio)}, ${governingOf(answer)}`, width),
    );
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
