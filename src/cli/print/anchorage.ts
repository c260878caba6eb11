import type { AnchorageOutput } from '../../calc/anchorage-output.ts';
import { isWithin } from '../../engine/checks/verdict.ts';
import { writeNumber } from '../../engine/checks/write-step.ts';
import { showForce, showRatio } from '../../say/numbers.ts';
import { nameMode, SHEAR_MODES, TENSION_MODES, tellAction } from '../../say/words.ts';
import { printStep } from './steps.ts';
import { type Column, layPoint, layTable, layText } from './table.ts';

type Row = AnchorageOutput['modes'][number];
type Interaction = AnchorageOutput['interaction'][number];

const newton = (kN: number | null) => (kN === null ? null : kN * 1000);

/** A ratio of JSON: null beside an action means that nothing is left to resist. */
function ratioOf(row: Row): number | null {
  return row.ratio === null && row.action_kN !== null ? Number.POSITIVE_INFINITY : row.ratio;
}

function titleOf(row: Row): string {
  const part = row.part === undefined ? '' : ` (${row.part})`;
  return `${nameMode(row.mode)}${part}`;
}

/** The title with what a row of one part of a shear comes to together with the other. */
function fullTitleOf(row: Row): string {
  return row.ratioTogether === undefined ? titleOf(row) : `${titleOf(row)}; both parts ${showRatio(row.ratioTogether)}`;
}

/** The ratio that a row brings to the answer. */
function decisiveRatioOf(row: Row): number | null {
  return row.ratioTogether ?? ratioOf(row);
}

function edgeOf(row: Row): string {
  if (row.edge === undefined) return '';
  const point = ([x, y]: readonly [number, number]) => `(${Math.round(x)},${Math.round(y)})`;
  return `${point(row.edge.from)} to ${point(row.edge.to)}`;
}

/** A clause without its document, which stands below the table; the clauses of ACI 318 name both editions. */
function shortenClause(clause: string, standard: string): string {
  return clause.replace('ACI 318-19 and 318M-19, ', '').replace(`${standard} `, '');
}

/** The modes of one result as a table, the governing one first. */
export function printModes(result: AnchorageOutput, width: number): string {
  const rows = [...result.modes]
    .filter((row) => row.applies)
    .sort((a, b) => (decisiveRatioOf(b) ?? -1) - (decisiveRatioOf(a) ?? -1));
  const withEdges = rows.some((row) => row.edge !== undefined);
  const columns: readonly (Column & { readonly cell: (row: Row) => string })[] = [
    { head: 'mode', least: 20, turn: 2, cell: fullTitleOf },
    { head: 'inserts', least: 8, turn: 1, cell: (row) => row.inserts.join(' ') },
    ...(withEdges ? [{ head: 'edge (mm)', least: 12, turn: 1, cell: edgeOf }] : []),
    { head: 'action kN', align: 'right', least: 6, cell: (row) => showForce(newton(row.action_kN)) },
    { head: 'design kN', align: 'right', least: 6, cell: (row) => showForce(newton(row.design_kN)) },
    { head: 'used', align: 'right', cell: (row) => showRatio(ratioOf(row)) },
    { head: 'clause', cell: (row) => shortenClause(row.clause, result.standard) },
  ];
  const table = layTable(
    columns,
    rows.map((row) => columns.map(({ cell }) => cell(row))),
    width,
  );
  return `${table}\nclauses of ${result.standard}`;
}

/** Tension with shear, a line each. */
export function printInteraction(result: AnchorageOutput, width: number): string {
  return result.interaction
    .map(({ kind, ratio, clause }) =>
      layText(`tension with shear, ${kind}: ${showRatio(ratio ?? Number.POSITIVE_INFINITY)}   [${clause}]`, width),
    )
    .join('\n');
}

/** A ratio in words: what a person has to know of it. */
function judge(ratio: number): string {
  return isWithin(ratio) ? 'passes' : 'FAILS';
}

/** The last step of a row: how its ratio follows from action and design resistance. */
function printRatio(row: Row): string[] {
  const ratio = ratioOf(row);
  if (row.action_kN === null || row.design_kN === null || ratio === null) return [];
  const [action, design] = [writeNumber(row.action_kN * 1000), writeNumber(row.design_kN * 1000)];
  const value = Number.isFinite(ratio) ? `${writeNumber(ratio)}: ${showRatio(ratio)}` : 'no resistance';
  const end = row.applies ? judge(ratio) : 'not decisive, the bars carry it';
  return [`action: ${action} N, ${tellAction(row.mode, row.part)}`, `ratio = ${action} / ${design} = ${value}, ${end}`];
}

function printRow(row: Row, governs: boolean, width: number): string {
  const inserts =
    row.inserts.length > 0 ? `, ${row.inserts.length > 1 ? 'inserts' : 'insert'} ${row.inserts.join(' ')}` : '';
  const edge = row.edge === undefined ? '' : `, edge ${edgeOf(row)}`;
  const title = `${titleOf(row)}${inserts}${edge}   [${row.clause}]${governs ? '   governs' : ''}`;
  // Both parts of a shear come together after the ratio of each: that step is the last.
  const steps = row.steps ?? [];
  const ownSteps = row.ratioTogether === undefined ? steps : steps.slice(0, -1);
  return [
    layText(title, width),
    ...ownSteps.map((step) => printStep(step, '    ', width)),
    ...printRatio(row).map((line) => layText(line, width, '    ')),
    ...steps.slice(ownSteps.length).map((step) => printStep(step, '    ', width)),
    ...row.notes.map((note) => layPoint(note, width, '    ')),
  ].join('\n');
}

/** Which rows an interaction takes its ratios from: the largest of tension and of shear, of one part for steel. */
function findPartners(modes: readonly Row[], { kind, steps }: Interaction): readonly Row[] {
  const numbers = (steps ?? []).map((step) => step.numbers).join(' ');
  const isUsed = (row: Row) => {
    const ratio = decisiveRatioOf(row);
    return row.applies && ratio !== null && numbers.includes(writeNumber(ratio));
  };
  const isOfKind = (row: Row) => kind === 'all' || row.mode.startsWith('steel') === (kind === 'steel');
  const first = (group: ReadonlySet<string>) =>
    modes.find((row) => group.has(row.mode) && isOfKind(row) && isUsed(row));
  return [first(TENSION_MODES), first(SHEAR_MODES)].filter((row) => row !== undefined);
}

function printInteractionSteps(result: AnchorageOutput, row: Interaction, width: number): string {
  const { kind, clause, steps } = row;
  const ratio = row.ratio ?? Number.POSITIVE_INFINITY;
  const governs = result.governing?.mode === `interaction-${kind}`;
  const partners = findPartners(result.modes, row).map(
    (partner) => `${titleOf(partner)} ${writeNumber(decisiveRatioOf(partner) ?? Number.POSITIVE_INFINITY)}`,
  );
  return [
    layText(`tension with shear, ${kind}   [${clause}]${governs ? '   governs' : ''}`, width),
    ...(partners.length === 0 ? [] : [layText(`ratios: ${partners.join('; ')}`, width, '    ')]),
    ...(steps ?? []).map((step) => printStep(step, '    ', width)),
    `    ${showRatio(ratio)}, ${judge(ratio)}`,
  ].join('\n');
}

/** Modes without a number, by the reason. */
function printSkipped(rows: readonly Row[], width: number): string[] {
  const reasons = new Map<string, string[]>();
  for (const row of rows) {
    const reason = row.notes.join('; ');
    const edge = row.edge === undefined ? '' : ` toward ${edgeOf(row)}`;
    reasons.set(reason, [...(reasons.get(reason) ?? []), `${titleOf(row)}${edge}`]);
  }
  if (reasons.size === 0) return [];
  const points = [...reasons].map(([reason, titles]) => layPoint(`${reason}: ${titles.join(', ')}`, width));
  return [['No number needed', ...points].join('\n')];
}

/** Whether a row of the result decides it: the first that reaches the governing ratio in the governing mode. */
function findGoverning({ governing, modes }: AnchorageOutput): Row | undefined {
  return modes.find((row) => row.applies && row.mode === governing?.mode && decisiveRatioOf(row) === governing.ratio);
}

/** Every row step by step: what is measured, each clause with its numbers, the design value, the ratio. */
export function printSteps(result: AnchorageOutput, width: number): string {
  const governing = findGoverning(result);
  const isSkipped = (row: Row) => !row.applies && row.design_kN === null;
  return [
    ...result.modes.filter((row) => !isSkipped(row)).map((row) => printRow(row, row === governing, width)),
    ...result.interaction.map((row) => printInteractionSteps(result, row, width)),
    ...printSkipped(result.modes.filter(isSkipped), width),
  ].join('\n\n');
}
