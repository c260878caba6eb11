import { listBagLabels, listBench } from '../../assess/parts/bench.ts';
import type { PourParts } from '../../assess/parts/job-parts.ts';
import type { Casting, PartsAnswer } from '../../assess/parts/parts-answer.ts';
import type { SparesRule } from '../../assess/parts/spares.ts';
import { ENGINE_VERSION } from '../../engine/version.ts';
import { countOf } from '../../say/part-words.ts';
import type { LoadedJob } from '../load-job.ts';
import type { PartsFlags } from '../parts-options.ts';
import { printBagLabels, printBench, printLines } from './bench.ts';
import { listReuse, printCountRows, printNeeds, printPours, printShortages } from './parts-tables.ts';
import { layPoint, layText } from './table.ts';

/** What a page of parts is printed from. */
export interface PartsToPrint {
  readonly job: LoadedJob;
  /** The job as it was named in the call. */
  readonly path: string;
  readonly flags: PartsFlags;
  readonly answer: PartsAnswer;
  readonly rule: SparesRule;
  readonly width: number;
}

type Next = readonly (readonly [call: string, gives: string])[];

function section(title: string, text: string): string {
  return text === '' ? '' : `\n${title}\n${text}\n`;
}

function layPoints(texts: readonly string[], width: number): string {
  return texts.map((text) => layPoint(text, width)).join('\n');
}

/** What to do where there is nothing at all to count. */
const NOTHING =
  'No cast-in item here: nothing to bring. Add rows to inserts.csv, or castIns to the job file, then ask again.';

const NO_POUR =
  'No pour is planned, so each panel is counted once. Add rows to pours.csv (docs/job-files.md): benches, bag labels and order-by dates follow.';

function describeRule({ share, atLeast }: SparesRule): string {
  return `spares: ${Number((100 * share).toFixed(2))} % of what is used up, rounded up, at least ${atLeast} of a kind; none for what comes back or is made for its place`;
}

/** What does not agree beside the counts themselves, which the table shows where there are orders. */
function listMismatches({ counts: { rows, holes, foreign } }: PartsAnswer, hasOrders: boolean): readonly string[] {
  const ofRows = rows.flatMap(({ kind, differences }) => differences.map((difference) => `${kind.id}: ${difference}`));
  return [
    ...(hasOrders ? [] : ofRows),
    ...holes,
    ...foreign.map(
      ({ id, meant }) =>
        `${id}: ordered, but nothing in this job has that id${meant === null ? '' : `; did you mean ${meant}?`}`,
    ),
  ];
}

function printFindings({ lookAlikes, open, errors }: PartsAnswer, width: number): string {
  const alike = lookAlikes.map(({ text, panels }) =>
    panels.length === 0 ? `${text} (in different panels of one pour)` : `${text} (in ${panels.join(', ')})`,
  );
  return [
    section('Look-alikes', layPoints(alike, width)),
    section('NOT DECIDED, so that the counts are not complete', layPoints(open, width)),
    section('CANNOT BE MADE as it stands', layPoints(errors, width)),
  ].join('');
}

/** The whole job: pours, needs, what is short, counts side by side. */
function printWhole({ answer, flags, rule, width }: PartsToPrint): string {
  const { parts, needs, counts, shortages } = answer;
  if (parts.lines.length === 0) return `\n${layText(NOTHING, width)}\n`;
  const hasOrders = flags.orders !== undefined;
  const unplanned = parts.unplanned.map(({ parts: { mark } }) => mark);
  const late = needs.filter(({ stock }) => stock !== null && !stock.isListed).map(({ kind }) => kind.id);
  const remarks = [
    describeRule(rule),
    ...listReuse(needs),
    ...(late.length === 0 ? [] : [`not in ${flags.stock}, counted as none: ${late.join(', ')}`]),
    ...(unplanned.length === 0 || parts.pours.length === 0
      ? []
      : [`in no pour, counted once each: ${unplanned.join(', ')}`]),
  ];
  const isShort = flags.stock !== undefined;
  return [
    parts.pours.length === 0 ? `\n${layText(NO_POUR, width)}\n` : section('Pours', printPours(answer, width)),
    section(`Parts of the job, pours from ${answer.today} on`, printNeeds(answer, width)),
    section('How they are counted', layPoints(remarks, width)),
    isShort ? section('SHORT', printShortages(shortages, width)) : '',
    hasOrders ? section('Drawing, schedule and order', printCountRows(counts.rows, width)) : '',
    section('DOES NOT AGREE', layPoints(listMismatches(answer, hasOrders), width)),
    section('Set out and counted, strength not checked', layPoints(counts.loose, width)),
  ].join('');
}

function printPour(pour: PourParts, { answer, rule, width }: PartsToPrint): string {
  const { id, date } = pour.plan.pour;
  const bench = listBench(pour, rule);
  if (bench.length === 0) return `\n${layText(NOTHING, width)}\n`;
  return [
    section(`Bench of pour ${id}, ${date}, ${pour.plan.bed.name}`, printBench(bench, width)),
    section('Bags', printBagLabels(listBagLabels(pour), width)),
    section('SHORT', printShortages(answer.shortages, width)),
  ].join('');
}

/** A panel in each way in which it is cast: on another bed it may take other parts. */
function printPanel(castings: readonly Casting[], width: number): string {
  const ways = new Map<string, Casting[]>();
  for (const casting of castings) {
    const way = JSON.stringify(casting.parts.lines);
    ways.set(way, [...(ways.get(way) ?? []), casting]);
  }
  return [...ways.values()]
    .map((same) => {
      const where = same
        .map(({ pour, bed, serials }) =>
          pour === null ? 'in no pour yet' : `pour ${pour} on ${bed}, no. ${serials.join(', ')}`,
        )
        .join('; ');
      const { lines, mark } = same[0]!.parts;
      if (lines.length === 0) return `\n${layText(NOTHING, width)}\n`;
      return section(layText(`One casting of ${mark}: ${where}`, width), printLines(lines, width));
    })
    .join('');
}

/** How many of what, and what is short or open, in one line. */
function printTotals({ answer, flags, width }: PartsToPrint): string {
  const { scope, castings, shortages, needs, open, errors } = answer;
  const isPanel = scope.panel !== null;
  const times = ({ serials }: Casting) => (isPanel ? 1 : Math.max(1, serials.length));
  const asked = isPanel ? castings.slice(0, 1) : castings;
  const inserts = asked.reduce(
    (sum, one) =>
      sum +
      times(one) * one.parts.lines.reduce((all, { kind, count }) => (kind.group === 'inserts' ? all + count : all), 0),
    0,
  );
  const kinds = new Set(asked.flatMap(({ parts: { lines } }) => lines.map(({ kind }) => `${kind.group}/${kind.id}`)));
  const isWhole = scope.pour === null && !isPanel;
  const toOrder =
    isWhole && flags.stock !== undefined
      ? needs.filter(({ stock, toOrder: count }) => stock !== null && count > 0).length
      : 0;
  const short = new Set(shortages.map(({ kind }) => kind.id)).size;
  const parts = [
    `${countOf(
      asked.reduce((sum, one) => sum + times(one), 0),
      'casting',
    )} with ${countOf(inserts, 'insert')}, ${countOf(kinds.size, 'kind')} of parts`,
    ...(short > 0 ? [`SHORT of ${countOf(short, 'kind')}`] : []),
    ...(toOrder > 0 ? [`${countOf(toOrder, 'kind')} to order`] : []),
    ...(open.length > 0 ? [`${open.length} not decided`] : []),
    ...(errors.length > 0 ? [`${errors.length} that cannot be made`] : []),
  ];
  return `\n${layText(parts.join('; '), width)}\n`;
}

function listNext({ path, flags, answer }: PartsToPrint): Next {
  const { scope, parts } = answer;
  const call = `npx onepour parts ${path}`;
  const first = parts.pours.find(({ plan: { pour } }) => pour.date >= answer.today) ?? parts.pours[0];
  if (parts.lines.length === 0) return [];
  if (scope.panel !== null) return [[call, 'the whole job: pours, needs, what to order']];
  if (scope.pour !== null)
    return [
      [`${call} --pour ${scope.pour} --csv labels.csv --list labels`, 'labels of the bags, for printing'],
      ...(flags.stock === undefined
        ? [[`${call} --pour ${scope.pour} --stock stock.csv`, 'what is short for this pour (docs/parts.md)'] as const]
        : []),
    ];
  return [
    ...(flags.stock === undefined
      ? [
          [
            `${call} --stock stock.csv`,
            'what is short, and by when to order it (docs/parts.md has the columns)',
          ] as const,
        ]
      : []),
    ...(flags.orders === undefined
      ? [[`${call} --orders orders.csv`, 'drawing, schedule and order side by side'] as const]
      : []),
    ...(first === undefined
      ? []
      : [[`${call} --pour ${first.plan.pour.id}`, 'bench and bag labels of a pour'] as const]),
  ];
}

function printNext(next: Next, width: number): string {
  const lines = next.map(
    ([call, gives]) => `${layText(call, width, '  ')}\n${layText(gives, width, '      ', '      ')}`,
  );
  return section('Next', lines.join('\n'));
}

/** The parts that were asked for as a page of text. */
export function printParts(page: PartsToPrint): string {
  const { job, answer, width } = page;
  const { scope, pours, castings } = answer;
  const what = [
    ...(scope.panel === null ? [] : [` of panel ${scope.panel}`]),
    ...(scope.pour === null ? [] : [` of pour ${scope.pour}`]),
  ].join('');
  return [
    `${layText(`${job.file.job.project.name}: parts${what}, today ${answer.today}, with engine ${ENGINE_VERSION}`, width, '', '')}\n`,
    scope.panel !== null
      ? printPanel(castings, width)
      : scope.pour === null
        ? printWhole(page)
        : pours.map((pour) => printPour(pour, page)).join(''),
    printFindings(answer, width),
    section('Taken as given', layPoints([...job.assumptions, ...answer.notes], width)),
    printTotals(page),
    printNext(listNext(page), width),
    section('Cautions', layPoints(job.cautions, width)),
  ].join('');
}
