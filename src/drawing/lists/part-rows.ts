import { type BagLabel, describePanels, listBagLabels, listBench } from '../../assess/parts/bench.ts';
import type { PourParts } from '../../assess/parts/job-parts.ts';
import type { KindNeed } from '../../assess/parts/needs.ts';
import type { PartKind } from '../../assess/parts/part-kind.ts';
import type { Casting, PartsAnswer } from '../../assess/parts/parts-answer.ts';
import type { SparesRule } from '../../assess/parts/spares.ts';

/** Parts of a job, a pour or one casting of a panel. */
export interface PartRow {
  readonly scope: 'job' | 'pour' | 'panel';
  readonly pour: string | null;
  readonly date: string | null;
  readonly panel: string | null;
  /** Castings of the panel in that pour; null where the row is not of a panel. */
  readonly castings: number | null;
  readonly group: string;
  readonly id: string;
  readonly name: string;
  readonly thread: string | null;
  readonly size_mm: number | null;
  readonly finish: string | null;
  readonly count: number;
  readonly spares: number | null;
  readonly needed: number | null;
  readonly in_stock: number | null;
  readonly on_order: number | null;
  readonly at_hand: number | null;
  readonly short: number | null;
  readonly to_order: number | null;
  readonly pack_size: number | null;
  readonly packs: number | null;
  readonly order_by: string | null;
}

/** One bin of a bench. */
export interface BenchRow {
  readonly pour: string;
  readonly date: string;
  readonly bed: string;
  readonly group: string;
  readonly id: string;
  readonly name: string;
  readonly thread: string | null;
  readonly size_mm: number | null;
  readonly finish: string | null;
  readonly count: number;
  readonly spares: number;
  /** Panels with the count for one casting, as words. */
  readonly panels: string;
}

/** One line of the label of a bag. */
export interface LabelRow {
  readonly pour: string;
  readonly date: string;
  readonly bed: string;
  readonly panel: string;
  readonly serial: string;
  readonly revision: string;
  readonly in_bag: 'yes' | 'no';
  readonly group: string;
  readonly id: string;
  readonly name: string;
  readonly thread: string | null;
  readonly size_mm: number | null;
  readonly finish: string | null;
  readonly count: number;
}

function kindCells({ group, id, words, thread, size, finish }: PartKind) {
  return { group, id, name: words, thread, size_mm: size, finish };
}

/** What a row of a panel or pour does not say. */
const blank = {
  pour: null,
  date: null,
  panel: null,
  castings: null,
  spares: null,
  needed: null,
  in_stock: null,
  on_order: null,
  at_hand: null,
  short: null,
  to_order: null,
  pack_size: null,
  packs: null,
  order_by: null,
} as const;

/** Rows of the whole job: what it needs, and what of that is to be ordered. */
function jobRows(needs: readonly KindNeed[]): readonly PartRow[] {
  return needs.map(({ kind, count, spares, needed, stock, toOrder, packs }) => ({
    ...blank,
    scope: 'job',
    ...kindCells(kind),
    count,
    spares,
    needed,
    in_stock: stock?.inStock ?? null,
    on_order: stock?.onOrder ?? null,
    to_order: toOrder,
    pack_size: kind.packSize,
    packs,
  }));
}

/** Rows of one pour, with what it needs up to it where it is still to come. */
function pourRows({ plan: { pour }, lines }: PourParts, needs: readonly KindNeed[]): readonly PartRow[] {
  return lines.map(({ kind, count }) => {
    const need = needs
      .find(({ kind: { group, id } }) => group === kind.group && id === kind.id)
      ?.byPour.find((one) => one.pour === pour.id);
    return {
      ...blank,
      scope: 'pour',
      pour: pour.id,
      date: pour.date,
      ...kindCells(kind),
      count,
      needed: need?.needed ?? null,
      at_hand: need?.atHand ?? null,
      short: need === undefined || need.atHand === null ? null : need.short,
      order_by: need?.orderBy ?? null,
    };
  });
}

/** Rows of one casting of a panel. */
function panelRows({ pour, serials, parts }: Casting, date: string | null): readonly PartRow[] {
  return parts.lines.map(({ kind, count }) => ({
    ...blank,
    scope: 'panel',
    pour,
    date,
    panel: parts.mark,
    castings: serials.length,
    ...kindCells(kind),
    count,
  }));
}

/** Rows of parts.csv: the whole job, each pour, one casting of each panel; fewer where a pour or panel is asked for. */
export function listPartRows({ scope, parts, pours, castings, needs }: PartsAnswer): readonly PartRow[] {
  const isWhole = scope.pour === null && scope.panel === null;
  const dates = new Map(parts.pours.map(({ plan: { pour } }) => [pour.id, pour.date]));
  return [
    ...(isWhole ? jobRows(needs) : []),
    ...pours.flatMap((one) => pourRows(one, needs)),
    ...castings.flatMap((one) => panelRows(one, one.pour === null ? null : dates.get(one.pour)!)),
  ];
}

/** Rows of the benches of pours. */
export function listBenchRows(pours: readonly PourParts[], rule: SparesRule): readonly BenchRow[] {
  return pours.flatMap((one) => {
    const { pour, bed } = one.plan;
    return listBench(one, rule).map(({ kind, count, spares, panels }) => ({
      pour: pour.id,
      date: pour.date,
      bed: bed.name,
      ...kindCells(kind),
      count,
      spares,
      panels: describePanels(panels),
    }));
  });
}

function labelRows({ inBag, beside, ...head }: BagLabel): readonly LabelRow[] {
  const row = (in_bag: LabelRow['in_bag']) => (line: BagLabel['inBag'][number]) => ({
    ...head,
    in_bag,
    ...kindCells(line.kind),
    count: line.count,
  });
  return [...inBag.map(row('yes')), ...beside.map(row('no'))];
}

/** Rows of the labels of bags, of the panels that are asked for. */
export function listLabelRows({ scope, parts }: PartsAnswer): readonly LabelRow[] {
  return parts.pours
    .flatMap(listBagLabels)
    .filter(
      ({ pour, panel }) =>
        (scope.pour === null || pour === scope.pour) && (scope.panel === null || panel === scope.panel),
    )
    .flatMap(labelRows);
}
