import { type BagLabel, type BenchLine, describePanels } from '../../assess/parts/bench.ts';
import type { PartLine } from '../../assess/parts/part-kind.ts';
import { describeKind, listCounts } from '../../say/part-words.ts';
import { type FilledColumn, layFilled } from './parts-words.ts';
import { layPairs } from './table.ts';

/** The bench of a pour, bin by bin. */
export function printBench(lines: readonly BenchLine[], width: number): string {
  const columns: readonly FilledColumn<BenchLine>[] = [
    { head: 'bin', least: 28, cell: ({ kind }) => kind.id },
    { head: 'what', least: 20, cell: ({ kind }) => describeKind(kind) },
    { head: 'count', align: 'right', cell: ({ count }) => String(count) },
    { head: 'spares', align: 'right', cell: ({ kind, spares }) => (kind.hasSpares ? String(spares) : '-') },
    { head: 'for panels', least: 16, cell: ({ panels }) => describePanels(panels) },
  ];
  return layFilled(columns, lines, width);
}

/** Parts of one casting of a panel. */
export function printLines(lines: readonly PartLine[], width: number): string {
  const columns: readonly FilledColumn<PartLine>[] = [
    { head: 'id', least: 28, cell: ({ kind }) => kind.id },
    { head: 'what', least: 20, cell: ({ kind }) => describeKind(kind) },
    { head: 'count', align: 'right', cell: ({ count }) => String(count) },
    { head: 'goes', cell: ({ kind }) => (kind.neededAt === 'site' ? 'with the panel to the site' : 'on the bench') },
  ];
  return layFilled(columns, lines, width);
}

/** The labels of the bags of a pour: what is written on each. */
export function printBagLabels(labels: readonly BagLabel[], width: number): string {
  return labels
    .map(({ panel, serial, revision, pour, date, bed, inBag, beside }) => {
      const pairs: readonly (readonly [string, string])[] = [
        ['in the bag', inBag.length === 0 ? 'nothing' : listCounts(inBag)],
        ...(beside.length === 0 ? [] : [['beside it', listCounts(beside)] as const]),
      ];
      const head = `  ${panel} no. ${serial}, revision ${revision}, pour ${pour}, ${date}, ${bed}`;
      return `${head}\n${layPairs(pairs, width - 4).replace(/^(?=.)/gm, '    ')}`;
    })
    .join('\n');
}
