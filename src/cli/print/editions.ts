import type { ComparedConnection, ComparedMode, Comparison } from '../../assess/compare-editions.ts';
import { CONNECTION_STATES } from '../../assess/connection-answer.ts';
import { printReasons } from './job.ts';
import { showRatio } from './numbers.ts';
import { type Column, layPoint, layTable } from './table.ts';
import { nameMode, STATE_WORDS } from './words.ts';

/** What decides: each mode once, in the order of the editions; where no action is given, why there is none. */
function writeGoverning({ answers, differs }: ComparedConnection): string {
  const modes = new Set(answers.flatMap(({ governing }) => (governing === null ? [] : [nameMode(governing.mode)])));
  const text = modes.size > 0 ? [...modes].join(' / ') : (answers[0]!.reasons[0] ?? '');
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
      writeGoverning(one),
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

/** How far apart the ratios of one connection lie, as a factor; 1 where fewer than two are known. */
function findSpread({ answers }: ComparedConnection): number {
  const ratios = answers.flatMap(({ ratio }) => (ratio === null || ratio === 0 ? [] : [ratio]));
  const spread = Math.max(...ratios) / Math.min(...ratios);
  return Number.isNaN(spread) || ratios.length < 2 ? 1 : spread;
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
      const own = connections.map(({ answers }) => ({ ...answers[i]!, warnings: [] }));
      const text = printReasons(own, width);
      return text === '' ? '' : `\nWhy not, by ${standard}\n${text}\n`;
    })
    .join('');
}

/** Totals by state, a line an edition. */
export function printEditionCounts({ standards, counts, connections }: Comparison): string {
  const what = connections.length === 1 ? '1 connection' : `${connections.length} connections`;
  const longest = Math.max(...standards.map((standard) => standard.length));
  return standards
    .map((standard, i) => {
      const parts = CONNECTION_STATES.filter((state) => counts[i]![state] > 0).map(
        (state) => `${counts[i]![state]} ${STATE_WORDS[state]}`,
      );
      return `${standard.padEnd(longest)}  ${what}: ${parts.length === 0 ? 'none to check' : parts.join(', ')}`;
    })
    .join('\n');
}
