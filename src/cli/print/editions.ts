import type { ComparedConnection, ComparedMode, Comparison } from '../../assess/compare-editions.ts';
import { showRatio } from '../../say/numbers.ts';
import { nameCounts, nameMode, STATE_WORDS } from '../../say/words.ts';
import { listFailing, listReasons } from './job.ts';
import { type Column, layPairs, layPoint, layTable } from './table.ts';

/** What decides: once where it is the same by all, else by which editions; where no action is given, why there is none. */
function writeGoverning({ answers, differs }: ComparedConnection, standards: Comparison['standards']): string {
  const by = new Map<string, string[]>();
  for (const [i, { governing }] of answers.entries()) {
    const mode = governing === null ? 'nothing' : nameMode(governing.mode);
    by.set(mode, [...(by.get(mode) ?? []), standards[i]!]);
  }
  const [first] = by.keys();
  const isNothing = answers.every(({ governing }) => governing === null);
  const text = isNothing
    ? (answers[0]!.reasons[0] ?? '')
    : by.size === 1
      ? first!
      : [...by].map(([mode, names]) => `${names.join(', ')}: ${mode}`).join('; ');
  return differs ? `DIFFERS: ${text}` : text;
}

/** A line a connection: answer and ratio by each edition, and what governs. */
export function printComparison({ standards, connections }: Comparison, width: number): string {
  // Four editions leave eight signs for a state: "NOT COVERED" on two lines.
  const least = standards.length > 3 ? 8 : 11;
  const columns: readonly Column[] = [
    { head: 'mark' },
    { head: 'panel', least: 5 },
    ...standards.flatMap((head) => [{ head, least }, { head: 'used', align: 'right' } as const]),
    { head: 'what governs', least: 12, turn: 1 },
  ];
  return layTable(
    columns,
    connections.map((one) => [
      one.mark,
      one.answers[0]!.panel,
      ...one.answers.flatMap(({ state, ratio }) => [STATE_WORDS[state], showRatio(ratio)]),
      writeGoverning(one, standards),
    ]),
    width,
  );
}

/** Mode by mode, a column an edition. */
export function printModeComparison(modes: readonly ComparedMode[], { standards }: Comparison, width: number): string {
  return layTable(
    [{ head: 'mode', least: 20 }, ...standards.map((head) => ({ head, align: 'right' }) as const)],
    modes.map(({ mode, ratios }) => [nameMode(mode), ...ratios.map(showRatio)]),
    width,
  );
}

/** Ratios nearer to each other are alike: one point of per cent. */
const ALIKE = 0.01;

/** How far apart the ratios of one connection lie, as a factor; 1 where fewer than two are known or they are alike. */
function findSpread({ answers }: ComparedConnection): number {
  const ratios = answers.flatMap(({ ratio }) => (ratio === null || ratio === 0 ? [] : [ratio]));
  const [least, most] = [Math.min(...ratios), Math.max(...ratios)];
  const spread = most / least;
  return Number.isNaN(spread) || ratios.length < 2 || most - least < ALIKE ? 1 : spread;
}

/** Connections by the answers that they get from each edition, and the one whose ratios lie farthest apart. */
export function printDifferences({ standards, connections }: Comparison, width: number): string {
  const where = new Map<string, string[]>();
  for (const { mark, answers, differs } of connections) {
    if (!differs) continue;
    const words = answers.map(({ state }, i) => `${STATE_WORDS[state]} by ${standards[i]}`).join(', ');
    where.set(words, [...(where.get(words) ?? []), mark]);
  }
  const lines = [...where].map(([words, marks]) => layPoint(`${words}: ${marks.join(', ')}`, width));
  if (lines.length === 0) lines.push(layPoint('no answer: the editions agree', width));
  const farthest = connections.reduce((a, b) => (findSpread(b) > findSpread(a) ? b : a));
  if (findSpread(farthest) > 1) {
    const ratios = farthest.answers.map(({ ratio }, i) => `${showRatio(ratio)} by ${standards[i]}`).join(', ');
    lines.push(layPoint(`ratios most of all in ${farthest.mark}: ${ratios}`, width));
  }
  return lines.join('\n');
}

/** Why not, edition by edition; an edition without a reason is left out. */
export function printEditionReasons({ standards, connections }: Comparison, width: number): string {
  return standards
    .map((standard, i) => {
      const own = connections.map(({ answers }) => answers[i]!);
      const lines = [...listFailing(own, width), ...listReasons(own, width)];
      return lines.length === 0 ? '' : `\nWhy not, by ${standard}\n${lines.join('\n')}\n`;
    })
    .join('');
}

/** Totals by state, a line an edition. */
export function printEditionCounts({ standards, counts, connections }: Comparison, width: number): string {
  const what = connections.length === 1 ? '1 connection' : `${connections.length} connections`;
  const totals = standards.map((standard, i) => [standard, `${what}: ${nameCounts(counts[i]!)}`] as const);
  return layPairs(totals, width);
}
