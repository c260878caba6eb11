import type { Connection } from '../../job/documents/connection.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { findNearestWord } from '../../job/nearest-word.ts';
import { castInName } from '../../job/sift.ts';
import { addLines, nameKind } from './add-lines.ts';
import type { JobParts } from './job-parts.ts';
import { findNeeds } from './needs.ts';
import { insertKind, otherKind, type PartKind, type PartLine } from './part-kind.ts';

/** What was ordered of one part for the job, and what of it has come. Several lines of one part add up. */
export interface OrderLine {
  readonly id: string;
  readonly ordered: number;
  readonly delivered: number;
}

/** The counts of one kind side by side; null: not counted there. */
export interface CountRow {
  readonly kind: PartKind;
  /** As set out. */
  readonly drawing: number;
  /** Rows of the schedule of inserts, each as often as its panel is cast. */
  readonly schedule: number | null;
  /** With spares; of a reusable part what is needed at once and lost. */
  readonly needed: number;
  readonly ordered: number | null;
  readonly delivered: number | null;
  /** What does not agree, in words. */
  readonly differences: readonly string[];
  /** What is to come yet: no difference. */
  readonly outstanding: number;
}

/** Drawing, schedule and order side by side. */
export interface Reconciliation {
  readonly rows: readonly CountRow[];
  /** Holes of plates without an insert behind them. */
  readonly holes: readonly string[];
  /** Fixing inserts behind no plate: set out and counted, their strength not checked. */
  readonly loose: readonly string[];
  /** Ordered, but nothing that the job takes. */
  readonly foreign: readonly { readonly id: string; readonly meant: string | null }[];
}

/** Before every pour. */
const FIRST_DAY = '0000-01-01';

/** How often each panel is cast; once where no pour casts it. */
function countCastings({ pours, panels }: JobIndex['file']['job']): (mark: string) => number {
  const castings = new Map(panels.map(({ mark }) => [mark, 0]));
  for (const { pieces } of pours) for (const { panel } of pieces) castings.set(panel, castings.get(panel)! + 1);
  return (mark) => Math.max(1, castings.get(mark) ?? 0);
}

/** Rows of the schedule, kind by kind. */
function countSchedule({ file, items }: JobIndex): readonly PartLine[] {
  const castings = countCastings(file.job);
  const lists = file.job.castIns.map((castIn) => {
    const item = castIn.item === null ? undefined : items.get(castIn.item);
    const kind = item === undefined ? otherKind(castIn) : insertKind(item);
    return { lines: [{ kind, count: 1 }], times: castings(castIn.panel) };
  });
  return addLines(lists);
}

function holesOf(index: JobIndex, connection: Connection): readonly string[] {
  return index.fixtureOf(connection)?.holes.map(({ id }) => id) ?? [];
}

/** Holes of plates without an insert behind them. */
function findFreeHoles(index: JobIndex): readonly string[] {
  return index.file.job.connections.flatMap((connection) => {
    const used = new Set(connection.inserts.map(({ hole }) => hole));
    const left = holesOf(index, connection).filter((hole) => !used.has(hole));
    if (left.length === 0) return [];
    const { mark, panel } = connection;
    return [`connection ${mark} of panel ${panel}: no insert behind hole ${left.join(', ')} of its plate`];
  });
}

/** Fixing inserts that no connection uses, panel by panel. */
function findLoose({ file: { job } }: JobIndex): readonly string[] {
  const bolted = new Set(
    job.connections.flatMap(({ panel, inserts }) => inserts.map(({ insert }) => castInName(panel, insert))),
  );
  const loose = new Map<string, string[]>();
  for (const { panel, id, role } of job.castIns) {
    if (role !== 'fixing' || bolted.has(castInName(panel, id))) continue;
    loose.set(panel, [...(loose.get(panel) ?? []), id]);
  }
  return [...loose].map(([panel, ids]) => `panel ${panel}: fixing insert ${ids.join(', ')} in no connection`);
}

/** What does not agree in the counts of one kind. */
function compareCounts({
  kind,
  drawing,
  schedule,
  needed,
  ordered,
  delivered,
}: Omit<CountRow, 'differences' | 'outstanding'>): readonly string[] {
  const differences: string[] = [];
  if (schedule !== null && schedule !== drawing) differences.push(`drawing ${drawing}, schedule ${schedule}`);
  if (ordered === null || delivered === null) return differences;
  const least = kind.reuse === null ? drawing : needed;
  const most = Math.ceil(needed / kind.packSize) * kind.packSize;
  if (ordered < least)
    differences.push(`ordered ${least - ordered} fewer than ${kind.reuse === null ? 'the drawing has' : 'needed'}`);
  else if (ordered < needed) differences.push(`ordered enough, but ${needed - ordered} too few for the spares`);
  if (ordered > most)
    differences.push(`ordered ${ordered - most} more than needed${kind.packSize > 1 ? ' in whole packs' : ''}`);
  if (delivered > ordered) differences.push(`delivered ${delivered - ordered} more than ordered`);
  return differences;
}

/**
 * Sets the counts of drawing, schedule and order side by side. What is described in words only is compared with an order that lists it: such
 * things are often bought by others.
 * @param orders null: none given
 */
export function reconcile(index: JobIndex, parts: JobParts, orders: readonly OrderLine[] | null): Reconciliation {
  const schedule = countSchedule(index);
  const scheduled = new Map(schedule.map(({ kind, count }) => [nameKind(kind), count]));
  const counted = new Map(parts.lines.map(({ kind, count }) => [nameKind(kind), count]));
  // Over all pours, those before today too: the order was for them as well.
  const needs = new Map(findNeeds(index, parts, null, FIRST_DAY).map((need) => [nameKind(need.kind), need.needed]));
  const kinds = new Map([...parts.lines, ...schedule].map(({ kind }) => [nameKind(kind), kind]));
  const rows = [...kinds].map(([name, kind]): CountRow => {
    const lines = orders === null ? [] : orders.filter(({ id }) => id === kind.id);
    const isCompared = orders !== null && (lines.length > 0 || kind.group !== 'other cast-ins');
    const isScheduled = kind.group === 'inserts' || kind.group === 'other cast-ins';
    const add = (of: (line: OrderLine) => number) => lines.reduce((sum, line) => sum + of(line), 0);
    const row = {
      kind,
      drawing: counted.get(name) ?? 0,
      schedule: isScheduled ? (scheduled.get(name) ?? 0) : null,
      needed: needs.get(name) ?? 0,
      ordered: isCompared ? add(({ ordered }) => ordered) : null,
      delivered: isCompared ? add(({ delivered }) => delivered) : null,
    };
    const outstanding = Math.max(0, (row.ordered ?? 0) - (row.delivered ?? 0));
    return { ...row, differences: compareCounts(row), outstanding };
  });
  const known = new Set([...kinds.values()].map(({ id }) => id));
  const ids = [...new Set((orders ?? []).map(({ id }) => id))].filter((id) => !known.has(id));
  const foreign = ids.map((id) => ({ id, meant: findNearestWord(id, [...known]) }));
  return { rows, holes: findFreeHoles(index), loose: findLoose(index), foreign };
}
