import type { Asked, Capacities, Capacity, CapacityLine, StatedCapacity } from '../../assess/capacities.ts';
import { shortenMarks } from '../../say/connection-words.ts';
import { showLimit } from '../../say/numbers.ts';
import { nameMode } from '../../say/words.ts';
import { type Column, indentLines, layPoint, layTable, layText } from './table.ts';

/** Columns of directions that fit side by side; more go into a further table. */
const SIDE_BY_SIDE = 6;

const NOT_COVERED = 'NOT COVERED';

const NOBODY = 'no bolt takes it';

function nameLoad({ direction }: Capacity): string {
  if (direction === null) return 'tension';
  const edge = direction.edge === null ? 'no edge square to it' : `edge at ${Math.round(direction.edge)} mm`;
  return `shear toward ${direction.name}, ${edge}`;
}

function nameLimit({
  mode,
  reasons,
}: {
  readonly mode: Capacity['mode'];
  readonly reasons: readonly string[];
}): string {
  const what = mode === null ? NOBODY : nameMode(mode);
  return reasons.length > 0 ? `${what}; ${NOT_COVERED}` : what;
}

function printGroup(group: readonly Capacity[], isSingle: boolean, width: number): string {
  const columns: readonly (Column & { readonly cell: (one: Capacity) => string })[] = [
    { head: 'load', least: 20, cell: nameLoad },
    { head: isSingle ? 'kN' : 'kN in all', align: 'right', cell: ({ total }) => showLimit(total) },
    ...(isSingle
      ? []
      : [{ head: 'kN an insert', align: 'right', cell: ({ perInsert }: Capacity) => showLimit(perInsert) } as const]),
    { head: 'what limits it', least: 20, cell: nameLimit },
  ];
  return layTable(
    columns,
    group.map((one) => columns.map(({ cell }) => cell(one))),
    width,
  );
}

function printStated(stated: readonly StatedCapacity[], width: number): string {
  return layTable(
    [
      { head: 'stated combination', least: 20 },
      { head: 'times', align: 'right' },
      { head: 'N kN', align: 'right' },
      { head: 'V kN', align: 'right' },
      { head: 'what limits it', least: 20 },
    ],
    stated.map((one) => [
      one.combination,
      one.times === null ? '-' : showLimit(one.times * 1000),
      showLimit(one.tension),
      showLimit(one.shear),
      one.why ?? nameLimit(one),
    ]),
    width,
  );
}

/** Each insert by itself: a row an insert, a column a load. */
function printInserts(inserts: Capacities['inserts'], width: number): string {
  const [tension, ...shears] = inserts[0]!.capacities.map(({ direction }) => direction?.name ?? 'tension');
  const tables: string[] = [];
  for (let from = 0; from < shears.length; from += SIDE_BY_SIDE) {
    const names = shears.slice(from, from + SIDE_BY_SIDE);
    const cells = (capacities: readonly Capacity[]) => [
      capacities[0]!,
      ...capacities.slice(1 + from, 1 + from + SIDE_BY_SIDE),
    ];
    tables.push(
      layTable(
        [
          { head: 'insert', least: 8 },
          { head: tension!, align: 'right' },
          ...names.map((name) => ({ head: `V ${name}`, align: 'right' }) as const),
        ],
        inserts.map(({ id, capacities }) => [id, ...cells(capacities).map(({ total }) => showLimit(total))]),
        width,
      ),
    );
  }
  return tables.join('\n\n');
}

/** The largest loads of one connection as a block; rounded down, so that what stands there holds. */
export function printCapacities({ group, stated, inserts, reasons }: Capacities, width: number): string {
  const isSingle = inserts.length === 0;
  const what =
    'Of the inserts, their bolts and the concrete, as design (factored) loads; a plate counts only with the stated loads.';
  const shared = isSingle ? '' : ', shared equally by the inserts that take it';
  const parts = [
    layText(`Carries at most, in design (factored) kN: one load at a time${shared}, nothing else acting`, width),
    indentLines(printGroup(group, isSingle, width - 2), '  '),
    layText(
      `${what} Directions on the face seen from its front, counter-clockwise from the right: 270° is down`,
      width,
      '  ',
      '  ',
    ),
  ];
  if (stated.length > 0)
    parts.push(
      '',
      layText('In the ratio of the stated loads; N and V of the most loaded insert', width),
      indentLines(printStated(stated, width - 2), '  '),
    );
  if (!isSingle)
    parts.push(
      '',
      layText('Each insert by itself, the others unloaded, kN', width),
      indentLines(printInserts(inserts, width - 2), '  '),
    );
  if (reasons.length > 0)
    parts.push(
      '',
      `${NOT_COVERED}: numbers to be judged, never a pass`,
      ...reasons.map((reason) => layPoint(reason, width)),
    );
  return parts.join('\n');
}

/** One connection of a list. */
export interface ListedCapacity {
  readonly mark: string;
  readonly panel: string;
  readonly face: string;
  readonly inserts: readonly string[];
  readonly asked: Asked<CapacityLine>;
}

/** What limits tension, and what shear: said once where it is the same both ways. */
function listLimits({ tension, toward, along, reasons }: CapacityLine): string {
  const [n, v, w] = [tension, toward, along].map(({ mode }) => (mode === null ? NOBODY : nameMode(mode)));
  return `${reasons.length > 0 ? `${NOT_COVERED}: ` : ''}${n}; ${v === w ? v : `${v}, ${w}`}`;
}

/** A line a connection: tension, shear toward its weakest edge, shear along that edge. */
function printLines(listed: readonly ListedCapacity[], width: number): string {
  return layTable(
    [
      { head: 'mark' },
      { head: 'panel' },
      { head: 'face' },
      { head: 'inserts', align: 'right' },
      { head: 'N kN', align: 'right' },
      { head: 'V kN toward', align: 'right' },
      { head: 'V kN along', align: 'right' },
      { head: 'what limits N; V toward, along', least: 24 },
    ],
    listed.map(({ mark, panel, face, inserts, asked }) => {
      const head = [mark, panel, face, `${inserts.length}`];
      if (asked.kind === 'refused') return [...head, '-', '-', '-', `CANNOT BE COMPUTED: ${asked.reasons.join('; ')}`];
      const { tension, toward, along } = asked.value;
      return [
        ...head,
        showLimit(tension.total),
        `${showLimit(toward.total)} ${toward.direction!.name.padStart(4)}`,
        showLimit(along.total),
        listLimits(asked.value),
      ];
    }),
    width,
  );
}

/** Reasons with the connections that they are for. */
function printUncovered(listed: readonly ListedCapacity[], width: number): string[] {
  const where = new Map<string, string[]>();
  for (const { mark, asked } of listed)
    for (const reason of asked.kind === 'computed' ? asked.value.reasons : [])
      where.set(reason, [...(where.get(reason) ?? []), mark]);
  return [...where].map(([reason, marks]) => layPoint(`${shortenMarks(marks)}: ${reason}`, width));
}

/** What the connections of a job carry at most, as a page of text. */
export function printCapacityList(
  listed: readonly ListedCapacity[],
  cautions: readonly string[],
  width: number,
): string {
  if (listed.length === 0)
    return `${layText('No connection in this job: nothing to ask. Add rows to connections.csv and inserts.csv, or connections to the job file.', width, '', '')}\n`;
  const legend =
    'Design (factored) loads on all inserts of a connection, one load at a time, shared equally by those that take it. N: tension. V toward: shear toward the weakest edge in sight, with its direction on the face seen from its front, counter-clockwise from the right. V along: shear along that edge. None of it is a pass: no load was checked.';
  const uncovered = printUncovered(listed, width);
  return [
    printLines(listed, width),
    '',
    layText(legend, width, '', ''),
    ...(uncovered.length === 0 ? [] : ['', `${NOT_COVERED}: numbers to be judged, never a pass`, ...uncovered]),
    '',
    'Cautions',
    ...cautions.map((text) => layPoint(text, width)),
    '',
  ].join('\n');
}
