import type { ConnectionChoice } from '../../assess/choose/choice.ts';
import type { JobChoice } from '../../assess/choose/choose-job.ts';
import { describeReason, groupByText, isByItself } from '../../say/choice-words.ts';
import { shortenMarks } from '../../say/connection-words.ts';
import { layPoint, layTable } from './table.ts';

/**
 * Why this exists: on a page of many connections most of what does not fit, and of what to look at, is the same for all of them. It
 * stands once at the end, with the connections that it is for.
 */

function nameMarks(marks: readonly string[], choices: readonly ConnectionChoice[]): string {
  const asked = choices.filter(({ rejected }) => rejected.length > 0);
  return marks.length === asked.length && marks.length > 1 ? 'every connection' : marks.join(', ');
}

/** Inserts that do not fit, or are made for another role: by connections, with the reason. */
export function printUnfit(choices: readonly ConnectionChoice[], width: number): string {
  const marks = new Map<string, string[]>();
  const key = (item: string, reason: string) => `${item}\n${reason}`;
  for (const { before, rejected } of choices)
    for (const insert of rejected.filter(isByItself)) {
      const own = key(insert.item.id, describeReason(insert));
      marks.set(own, [...(marks.get(own) ?? []), before.mark]);
    }
  const entries = [...marks].map(([own, of]) => {
    const [item = '', reason = ''] = own.split('\n');
    return [item, `${nameMarks(of, choices)}\n${reason}`] as const;
  });
  const rows = groupByText(entries).map(([items, text]) => {
    const [where = '', reason = ''] = text.split('\n');
    return [where, items, reason];
  });
  if (rows.length === 0) return '';
  const columns = [
    { head: 'for', least: 16 },
    { head: 'inserts', least: 20 },
    { head: 'reason', least: 24 },
  ];
  const order = (where: string) => (where === 'every connection' ? 0 : 1);
  const sorted = rows.toSorted((a, b) => order(a[0]!) - order(b[0]!));
  return `\nWhat does not fit, or is made for another role\n${layTable(columns, sorted, width)}\n`;
}

/** What was to be looked at already and still is with the first choices, each once. */
export function printKept({ lookAt }: JobChoice, width: number): string {
  const kept = groupByMark(
    [...lookAt].flatMap(([mark, { kept: texts }]) => texts.map((text) => [mark, text] as const)),
  );
  if (kept.length === 0) return '';
  const lines = kept.map(([text, marks]) => layPoint(`${shortenMarks(marks)}: look at: ${text}`, width));
  return `\nAs before, with the first choices\n${lines.join('\n')}\n`;
}

function groupByMark(
  entries: readonly (readonly [mark: string, text: string])[],
): readonly (readonly [text: string, marks: readonly string[]])[] {
  const where = new Map<string, string[]>();
  for (const [mark, text] of entries) where.set(text, [...(where.get(text) ?? []), mark]);
  return [...where];
}
