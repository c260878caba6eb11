import type { ChooseOptions, ConnectionChoice } from '../../assess/choose/choice.ts';
import type { ChooseScope, JobChoice } from '../../assess/choose/choose-job.ts';
import { ENGINE_VERSION } from '../../engine/version.ts';
import { asInDocuments, describeChanges, describeDelivery } from '../../say/choice-words.ts';
import { showRatio } from '../../say/numbers.ts';
import type { LoadedJob } from '../load-job.ts';
import { printChoice } from './choice.ts';
import { printKept, printUnfit } from './choice-common.ts';
import { layPoint, layTable, layText } from './table.ts';

/** What a page of choices shows. */
export interface ChoicesPage {
  readonly job: LoadedJob;
  /** As it was asked for. */
  readonly path: string;
  /** The standard that was asked for in place of the job's own. */
  readonly by: string | null;
  readonly choice: JobChoice;
  readonly scope: ChooseScope;
  readonly options: ChooseOptions;
  /** The file that the first choices were to be written to, and the one that they were. */
  readonly asked: string | null;
  readonly applied: string | null;
  readonly width: number;
}

function shorten(marks: readonly string[]): string {
  return marks.length > 8 ? `${marks.slice(0, 7).join(', ')} and ${marks.length - 7} more` : marks.join(', ');
}

/** How the ranking came about, as far as this page needs it. */
function describeRanking({ options, choice }: ChoicesPage): readonly string[] {
  const days = options.daysToPour;
  return [
    'best first: as it is, where it passes; the fewest changes besides the insert; in use in the panel, then in the job; to be had by the pour; no look-alike in the panel; cost; the least used',
    "in use: how many others of the kind the panel has, else the job, this connection's own left out; a choice counts as made for the connections after it, in the order of the job",
    'look-alikes: inserts of the panel with the same thread and another length, easily taken for one another',
    ...(days === null
      ? ['to be had by the pour: not judged, since no day is given (--pour-in DAYS or --pour-date YYYY-MM-DD)']
      : [`to be had by the pour in ${days} days: a lead time that is not known does not count as in time`]),
    ...(choice.choices.some(({ hasSeveralCurrencies }) => hasSeveralCurrencies)
      ? ['cost: prices in several currencies are not compared']
      : []),
    ...(options.move > 0
      ? [
          `moves: in x and y as the job gives positions, at most ${options.move} mm each, plate and inserts together; inside the panel, clear of everything else cast in by 3 h_ef (or as far as now); the smallest found in at most twelve directions, to 1 mm, then on by the rules' tolerance of position where it still passes`,
        ]
      : []),
    ...(options.drills
      ? [
          'holes: drilled larger, never smaller, to the widest over which bolts of the thread share a shear (EN 1992-4, Table 6.1)',
        ]
      : []),
  ];
}

function listApplied(page: ChoicesPage): string {
  const rows = page.choice.choices.flatMap(({ before, present, ranked: [first] }) =>
    first === undefined || first.isAsDesigned
      ? []
      : [
          [
            before.mark,
            present.join(' '),
            first.item.id,
            showRatio(first.ratio),
            ...(page.options.daysToPour === null ? [] : [describeDelivery(first)]),
            describeChanges(first, asInDocuments(before.face)).join('; ') || 'none',
          ],
        ],
  );
  return layTable(
    [
      { head: 'mark' },
      { head: 'from', least: 8 },
      { head: 'to' },
      { head: 'used', align: 'right' },
      ...(page.options.daysToPour === null ? [] : [{ head: 'lead time' }]),
      { head: 'other changes', least: 14 },
    ],
    rows,
    page.width,
  );
}

function printApplied(page: ChoicesPage): string {
  const { asked, applied, width } = page;
  if (asked === null) return '';
  if (applied === null) return `\n${layText(`${asked} not written: no choice changes anything.`, width)}\n`;
  const late = page.choice.choices.flatMap(({ before, ranked: [first] }) =>
    first === undefined || first.isAsDesigned || first.delivery.kind !== 'late' ? [] : [before.mark],
  );
  const warning = late.length === 0 ? '' : `${layText(`LATE, not to be had by the pour: ${late.join(', ')}`, width)}\n`;
  return `\n${layText(`Written to ${applied}, each with its first choice`, width)}\n${warning}${listApplied(page)}\n`;
}

/** How many connections have an insert, and how many none. */
function printTotals({ choice, width }: ChoicesPage): string {
  const { choices, passing, withoutAction } = choice;
  const count = (...outcomes: readonly ConnectionChoice['outcome'][]) =>
    choices.filter(({ outcome }) => outcomes.includes(outcome)).length;
  const none = choices.filter(({ outcome }) => outcome !== 'chosen' && outcome !== 'no action');
  const parts = [
    ...(count('chosen') > 0 ? [`${count('chosen')} with an insert that passes`] : []),
    ...(none.length > 0 ? [`${none.length} WITHOUT (${shorten(none.map(({ before }) => before.mark))})`] : []),
    ...(passing.length > 0 ? [`${passing.length} pass as they stand`] : []),
    ...(withoutAction.length + count('no action') > 0
      ? [`${withoutAction.length + count('no action')} without an action, strength not checked`]
      : []),
  ];
  const total = choices.length + passing.length + withoutAction.length;
  const what = total === 1 ? '1 connection' : `${total} connections`;
  return layText(`${what}: ${parts.length === 0 ? 'nothing to choose' : parts.join(', ')}`, width);
}

/** The call that gives this page, for one that goes on from it. */
function writeCall({ path, by, scope, options }: ChoicesPage): string {
  const { connection, panel, all } = scope;
  return [
    `npx onepour choose ${path}`,
    ...(connection === null ? [] : [connection]),
    ...(panel === null ? [] : [`--panel ${panel}`]),
    ...(by === null ? [] : [`--by "${by}"`]),
    ...(all ? ['--all'] : []),
    ...(options.move === 0 ? [] : [`--move ${options.move}`]),
    ...(options.drills ? ['--drill'] : []),
    ...(options.strongerBolts ? ['--bolt-class'] : []),
    ...(options.daysToPour === null ? [] : [`--pour-in ${options.daysToPour}`]),
  ].join(' ');
}

/** A move that is worth asking for where none was [mm]. */
const SOME_MOVE = 100;

/** What to do next: a call, and what it does. */
function listNext(page: ChoicesPage): readonly (readonly [call: string, gives: string])[] {
  const { path, by, choice, scope, options, asked, applied } = page;
  const { choices, passing, withoutAction } = choice;
  const hasChoice = choices.some(({ ranked: [first] }) => first !== undefined && !first.isAsDesigned);
  const hasNone = choices.some(({ outcome }) => outcome === 'none passes');
  const isWide = options.move > 0 && options.drills && options.strongerBolts;
  const wider = { ...options, move: Math.max(options.move, SOME_MOVE), drills: true, strongerBolts: true };
  return [
    ...(applied === null ? [] : [[`npx onepour check ${applied}`, 'the job with its choices'] as const]),
    ...(hasChoice && asked === null && by === null
      ? [[`${writeCall(page)} --apply NEW.json`, 'writes the job with the first choices made'] as const]
      : []),
    ...(hasNone && !isWide ? [[writeCall({ ...page, options: wider }), 'lets more be changed'] as const] : []),
    ...(choices.length === 0 && passing.length > 0 && !scope.all
      ? [[`npx onepour choose ${path} --all`, 'ranks inserts where all passes, too'] as const]
      : []),
    ...(withoutAction.length === 0
      ? []
      : [
          [
            `without an action: ${shorten(withoutAction)}`,
            'give loads, or what each insert must resist (required), then choose again',
          ] as const,
        ]),
  ];
}

function printNext(page: ChoicesPage): string {
  const next = listNext(page);
  if (next.length === 0) return '';
  const lines = next.map(
    ([call, gives]) => `${layText(call, page.width, '  ')}\n${layText(gives, page.width, '      ', '      ')}`,
  );
  return `\nNext\n${lines.join('\n')}\n`;
}

/** The cautions of choosing, before those of every answer. */
function listCautions({ job }: ChoicesPage): readonly string[] {
  const { position_mm } = job.file.library.rules.tolerances;
  return [
    'Another insert, another place or other bolts are a changed design: the design engineer agrees in writing before anything is set out or ordered.',
    `What is used is for places as drawn: that an insert may stand ${position_mm} mm off (tolerance of the rules) is not in it.`,
    ...job.cautions,
  ];
}

function section(title: string, lines: readonly string[], width: number): string {
  return lines.length === 0 ? '' : `\n${title}\n${lines.map((line) => layPoint(line, width)).join('\n')}\n`;
}

/** The choices for a job as a page of text. */
export function printChoices(page: ChoicesPage): string {
  const { job, choice, scope, options, applied, width } = page;
  const { project } = job.file.job;
  const isInFull = scope.connection !== null;
  const isRanked = applied === null && choice.choices.some(({ ranked }) => ranked.length > 0);
  return [
    `${layText(`${project.name}: which insert to choose, by ${job.file.library.rules.standard} with engine ${ENGINE_VERSION}`, width, '', '')}\n`,
    ...choice.choices.map(
      (one) => `\n${printChoice(one, { options, lookAt: choice.lookAt.get(one.before.mark), isInFull }, width)}\n`,
    ),
    choice.choices.length === 0 ? '\nNo connection here fails or is not covered: there is nothing to choose.\n' : '',
    isInFull ? '' : `${printUnfit(choice.choices, width)}${printKept(choice, width)}`,
    section('Taken as given', job.assumptions, width),
    isRanked ? section('How they are ranked', describeRanking(page), width) : '',
    printApplied(page),
    `\n${printTotals(page)}\n`,
    printNext(page),
    section('Cautions', listCautions(page), width),
  ].join('');
}
