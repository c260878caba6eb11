import { type BagLabel, listBagLabels, listBench } from '../assess/parts/bench.ts';
import type { PourParts } from '../assess/parts/job-parts.ts';
import type { KindNeed } from '../assess/parts/needs.ts';
import type { PartKind } from '../assess/parts/part-kind.ts';
import type { Casting, PartsAnswer } from '../assess/parts/parts-answer.ts';
import type { SparesRule } from '../assess/parts/spares.ts';
import type { BenchRow, LabelRow, PartRow } from '../files/csv/write-parts.ts';
import { describePanels } from './print/bench.ts';

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
