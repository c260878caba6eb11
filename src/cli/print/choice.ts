import type { ChooseOptions, ConnectionChoice, PassingInsert, RejectedInsert } from '../../assess/choose/choice.ts';
import type { LookAt } from '../../assess/choose/choose-job.ts';
import {
  asInDocuments,
  describeChanges,
  describeCost,
  describeDelivery,
  describeReason,
  describeUse,
  groupByText,
  isByItself,
} from '../../say/choice-words.ts';
import { showRatio } from '../../say/numbers.ts';
import { nameMode, STATE_WORDS, shortenMode } from '../../say/words.ts';
import { adviseOnNone } from './choice-advice.ts';
import { type Column, GAP, indentLines, layPoint, layRows, layTable, layText } from './table.ts';

const INDENT = '  ';
/** Where what belongs to a row stands under it. */
const UNDER = '       ';

/** A column with what it shows of each insert; on a narrow page it goes under the row where `canSink` is set. */
interface Shown extends Column {
  readonly canSink?: true;
  readonly show: (insert: PassingInsert, rank: number) => string;
}

function listColumns({ daysToPour }: ChooseOptions): readonly Shown[] {
  return [
    { head: '#', align: 'right', show: (_, rank) => String(rank) },
    { head: 'insert', show: ({ item }) => item.id },
    { head: 'size mm', show: ({ item }) => `${item.thread} × ${item.length_mm}` },
    { head: 'finish', canSink: true, show: ({ item }) => item.finish },
    { head: 'used', align: 'right', show: ({ ratio }) => showRatio(ratio) },
    { head: 'governing', canSink: true, show: ({ governing }) => shortenMode(governing.mode) },
    { head: 'in use', show: describeUse },
    ...(daysToPour === null ? [] : [{ head: 'lead time', show: describeDelivery }]),
    { head: 'look-alikes', canSink: true, show: ({ lookAlikes }) => lookAlikes.join(' ') || '-' },
    { head: 'cost', align: 'right', show: describeCost },
  ];
}

/** Columns that fit beside each other, and those that go under the rows: the last that can, first. */
function fitColumns(
  columns: readonly Shown[],
  ranked: readonly PassingInsert[],
  width: number,
): { readonly beside: readonly Shown[]; readonly under: readonly Shown[] } {
  const widths = columns.map(({ head, show }) =>
    ranked.reduce((most, insert, i) => Math.max(most, show(insert, i + 1).length), head.length),
  );
  const needed = widths.reduce((sum, one) => sum + one + GAP, -GAP);
  const last = columns.findLastIndex(({ canSink }) => canSink);
  if (needed <= width || last < 0) return { beside: columns, under: [] };
  const { beside, under } = fitColumns(columns.toSpliced(last, 1), ranked, width);
  return { beside, under: [...under, columns[last]!] };
}

/** What goes with one choice on a page. */
export interface ChoiceBlock {
  readonly options: ChooseOptions;
  readonly lookAt: LookAt | undefined;
  /** One connection was asked for: all that is known of it stands here, not at the end of the page. */
  readonly isInFull: boolean;
}

/** Ranked inserts, a line each; under it what has to change besides, and what found no room. */
function printRanked({ ranked, before }: ConnectionChoice, options: ChooseOptions, width: number): string {
  const { beside, under } = fitColumns(listColumns(options), ranked, width - INDENT.length);
  const { head, rows } = layRows(
    beside,
    ranked.map((insert, i) => beside.map(({ show }) => show(insert, i + 1))),
    width - INDENT.length,
  );
  const lines = ranked.flatMap((insert, i) => {
    const changes = describeChanges(insert, asInDocuments(before.face)).join('; ');
    const more = under.flatMap(({ head, show }) =>
      show(insert, i + 1) === '-' ? [] : [`${head} ${show(insert, i + 1)}`],
    );
    const texts = [...(changes === '' ? [] : [`with ${changes}`]), ...(more.length === 0 ? [] : [more.join(', ')])];
    return [rows[i]!, ...texts.map((text) => layText(text, width - INDENT.length, UNDER))];
  });
  return indentLines((head === '' ? lines : [head, ...lines]).join('\n'), INDENT);
}

const WHY_NOT = ['fails', 'not covered', 'cannot be computed', 'does not fit', 'other role'] as const;

/** Why the other inserts are not among the ranked: failing ones first, the nearest first. */
function printRejected(rejected: readonly RejectedInsert[], width: number): string {
  const rows = WHY_NOT.flatMap((why) => {
    const those = rejected.filter((insert) => insert.why === why);
    if (why === 'fails') those.sort((a, b) => (a.ratio ?? 0) - (b.ratio ?? 0) || (a.item.id < b.item.id ? -1 : 1));
    const name = ({ item, ratio }: RejectedInsert) => (why === 'fails' ? `${item.id} ${showRatio(ratio)}` : item.id);
    const groups = groupByText(those.map((insert) => [name(insert).replaceAll(' ', '\u00a0'), describeReason(insert)]));
    return groups.map(([names, text], i) => [i === 0 ? why : '', names, text]);
  });
  const columns: readonly Column[] = [
    { head: 'why not', least: 12 },
    { head: 'inserts', least: Math.floor(0.3 * width) },
    { head: 'reason', least: 24 },
  ];
  return rows.length === 0 ? '' : indentLines(layTable(columns, rows, width - INDENT.length), INDENT);
}

/** What to see to before an insert is taken; of the first choice also what the check of the job says with it. */
function printNotes({ ranked }: ConnectionChoice, { lookAt, isInFull }: ChoiceBlock, width: number): string {
  const notes = groupByText(ranked.flatMap(({ item, notes: all }) => all.map((note) => [item.id, note] as const)));
  const warnings = lookAt === undefined ? [] : [...lookAt.brought, ...(isInFull ? lookAt.kept : [])];
  return [
    ...notes.map(([names, note]) => `${names}: ${note}`),
    ...warnings.map((text) => `${ranked[0]!.item.id}: look at: ${text}`),
  ]
    .map((text) => layPoint(text, width, INDENT))
    .join('\n');
}

function describeHead({ before, present }: ConnectionChoice): string {
  const { mark, panel, face, inserts, state, ratio, governing } = before;
  const governs = governing === null ? '' : `, ${nameMode(governing.mode)} (${governing.combination})`;
  const used = ratio === null ? '' : ` ${showRatio(ratio)}${governs}`;
  const count = inserts.length === 1 ? '1 insert' : `${inserts.length} inserts`;
  return `${mark}  panel ${panel}, ${face}, ${count} ${present.join(' and ')}: ${STATE_WORDS[state]}${used}`;
}

function printBody(choice: ConnectionChoice, block: ChoiceBlock, width: number): readonly string[] {
  const { options } = block;
  const say = (text: string) => [layText(text, width, INDENT, INDENT)];
  switch (choice.outcome) {
    case 'no action':
      return say(
        'No action is given, so nothing says which insert is strong enough. Give loads, or what each insert must resist (required), then choose again.',
      );
    case 'other role':
      return say(
        'Its inserts are no fixings (brace, lifting or another role): they are chosen by what their maker rates them for, not here.',
      );
    case 'never covered':
      return say(`No insert cures that: ${choice.before.reasons.join('; ')}`);
    case 'chosen':
      return [printRanked(choice, options, width), printNotes(choice, block, width)];
    case 'none passes':
      return [adviseOnNone(choice, options, width, INDENT)];
  }
}

/** The choice for one connection: inserts with which it passes, best first, then each other with its reason. */
export function printChoice(choice: ConnectionChoice, block: ChoiceBlock, width: number): string {
  const rejected = choice.rejected.filter((insert) => block.isInFull || !isByItself(insert));
  const parts = [...printBody(choice, block, width), printRejected(rejected, width)];
  return [layText(describeHead(choice), width), ...parts.filter((text) => text !== '')].join('\n\n');
}
