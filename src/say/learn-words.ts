import { RARE } from '../assess/learn/compare-groups.ts';
import { type Grouping, LEAST_COUNT, type Learned, type LearnedGroup } from '../assess/learn/learn-scatter.ts';
import type { PlateChance, TakenScatter } from '../assess/learn/plate-chance.ts';
import type { SampleSummary } from '../engine/statistics/intervals.ts';

const GROUPINGS: Readonly<Record<Grouping, string>> = {
  all: 'all inserts',
  method: 'by way of holding',
  place: 'by face of the form',
  bed: 'by bed',
  setter: 'by who set them',
  type: 'by type of insert',
  board: 'by board or single',
};

/** What inserts are put together by, for a heading. */
export function nameGrouping(by: Grouping): string {
  return GROUPINGS[by];
}

const mm = (value: number) => `${value.toFixed(1)} mm`;
const signed = (value: number) => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(1)} mm`;

/** Scatter along one axis with its interval. */
function tellScatter({ deviation, deviationInterval: [low, high] }: SampleSummary): string {
  return `standard deviation ${mm(deviation)} (95 %: ${low.toFixed(1)} to ${mm(high)})`;
}

/** Bias along one axis: said as one only where its interval leaves 0 out. */
function tellBias({ mean, meanInterval: [low, high] }: SampleSummary): string {
  const interval = `95 %: ${signed(low)} to ${signed(high)}`;
  return low > 0 || high < 0 ? `lies ${signed(mean)} off in the mean (${interval})` : `no bias shown (${interval})`;
}

/** What a group says, line by line. */
export function tellGroup({ count, source, found, difference }: LearnedGroup): readonly string[] {
  const how = source === 'taped' ? 'taped in the form' : 'surveyed on the hard panel';
  const axes = source === 'taped' ? 'of the form' : 'of the drawing';
  if (found === null) return [`${count} ${how}: too few for a scatter, ${LEAST_COUNT} are needed (common practice).`];
  const { x, y, trendX, trendY } = found;
  const lines = [
    `${count} ${how}.`,
    `Along x ${axes}: ${tellScatter(x)}; ${tellBias(x)}.`,
    `Along y ${axes}: ${tellScatter(y)}; ${tellBias(y)}.`,
  ];
  for (const [axis, trend] of [
    ['x', trendX],
    ['y', trendY],
  ] as const) {
    if (trend === null) continue;
    const [low, high] = trend.slopeInterval;
    if (low > 0 || high < 0)
      lines.push(
        `Along ${axis} it grows with the distance from the datum: ${signed(1000 * trend.slope)} a metre (95 %: ${signed(1000 * low)} to ${signed(1000 * high)}). Look at the tape and at the form.`,
      );
  }
  if (difference !== null && difference.scatter.probability < RARE)
    lines.push(
      `Scatters ${difference.scatter.ratio.toFixed(1)} times as much as the others do (by chance ${percent(difference.scatter.probability)}, all comparisons counted).`,
    );
  if (difference !== null && difference.bias.probability < RARE)
    lines.push(
      `Lies ${signed(difference.bias.by)} along ${difference.bias.axis} from where the others lie (by chance ${percent(difference.bias.probability)}, all comparisons counted).`,
    );
  return lines;
}

const percent = (share: number) => (share < 0.001 ? 'below 0.1 %' : `${(100 * share).toFixed(1)} %`);

/** What was left out, and why. */
export function tellLeftOut({ leftOut }: Learned, nameOf: (person: string) => string): readonly string[] {
  return leftOut.map(
    ({ measurer, count }) =>
      `${count} measured by ${nameOf(measurer)} left out: far more readings are as printed than taping gives.`,
  );
}

/** Where the scatter of an insert is from. */
export function tellTaken({ sigma, from, count }: TakenScatter): string {
  return from === 'the yard'
    ? `${mm(sigma)} along each axis, from ${count} inserts of this yard`
    : `${mm(sigma)} along each axis, common practice: the yard has measured ${count}, too few`;
}

/** Chance in words: never certain, never impossible where it is only computed to some digits. */
export function tellPlateChance({ fits, standardError, target, needs }: PlateChance): readonly string[] {
  const shown = fits > 0.9995 ? 'more than 99.9 %' : fits < 0.0005 ? 'less than 0.1 %' : `${(100 * fits).toFixed(1)} %`;
  const error = standardError === 0 ? '' : ` (computed within ± ${(200 * standardError).toFixed(2)} %)`;
  const wanted = `${(100 * target).toFixed(0)} of 100`;
  const need =
    needs.kind === 'nothing'
      ? `The holes do for ${wanted}.`
      : needs.kind === 'no hole'
        ? `No hole would do for ${wanted}.`
        : `For ${wanted} each hole must be ${mm(needs.overBolt)} larger than its bolt.`;
  return [`Goes on first time: ${shown}${error}.`, need];
}
