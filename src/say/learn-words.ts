import { RARE } from '../assess/learn/compare-groups.ts';
import {
  type Grouping,
  LEAST_COUNT,
  type Learned,
  type LearnedGroup,
  readBand,
} from '../assess/learn/learn-scatter.ts';
import type { PlateChance, TakenScatter } from '../assess/learn/plate-chance.ts';
import type { SampleSummary } from '../engine/statistics/intervals.ts';

/** A length with its unit. */
type WriteLength = (mm: number) => string;

const GROUPINGS: Readonly<Record<Grouping, string>> = {
  all: 'all inserts',
  method: 'by way of holding',
  place: 'by face of the form',
  bed: 'by bed',
  setter: 'by who set them',
  distance: 'by distance from the datum',
  type: 'by type of insert',
  board: 'by board or single',
};

/** What inserts are put together by, for a heading. */
export function nameGrouping(by: Grouping): string {
  return GROUPINGS[by];
}

/** Names of what groups are called by an id; null: it is not known any more. */
export interface GroupNames {
  readonly person: (id: string) => string | null;
  readonly bed: (id: string) => string | null;
  readonly length: WriteLength;
}

const PLACES: Readonly<Record<string, string>> = {
  'mould face': 'mould face (on the form)',
  'trowelled face': 'trowelled face (open side)',
  edge: 'edge (against a side form)',
};

const UNKNOWN: Readonly<Record<Grouping, string>> = {
  all: 'all inserts',
  method: 'no way of holding named',
  place: 'no face named',
  bed: 'no bed named',
  setter: 'nobody said it was in place',
  distance: 'no distance',
  type: 'no type named',
  board: 'no way of holding named',
};

/** Which of a grouping a group is. */
export function nameGroup({ by, value }: Pick<LearnedGroup, 'by' | 'value'>, names: GroupNames): string {
  if (value === null) return UNKNOWN[by];
  switch (by) {
    case 'all':
      return 'all inserts';
    case 'place':
      return PLACES[value] ?? value;
    case 'bed':
      return names.bed(value) ?? `bed ${value}`;
    case 'setter':
      return names.person(value) ?? 'somebody whose name is not here';
    case 'distance': {
      const band = readBand(value);
      if (band === null) return value;
      if (band.to === null) return `${names.length(band.from)} and farther`;
      return band.from === 0
        ? `up to ${names.length(band.to)}`
        : `${names.length(band.from)} to ${names.length(band.to)}`;
    }
    default:
      return value;
  }
}

/** How a group was measured, and along what its axes lie. */
export const SOURCE_WORDS: Readonly<
  Record<LearnedGroup['source'], { readonly how: string; readonly axes: readonly [x: string, y: string] }>
> = {
  taped: {
    how: 'taped in the form',
    axes: ['along the form (on an edge along it)', 'across the form (on an edge above the bed)'],
  },
  surveyed: { how: 'surveyed on the hard panel', axes: ['along x of the drawing', 'along y of the drawing'] },
};

const sign = (value: number) => (value < 0 ? '−' : '+');

/** A length with its sign, in somebody's units: `+1.2 mm`. */
export function writeSigned(value: number, length: WriteLength): string {
  return `${sign(value)}${length(Math.abs(value))}`;
}

/** Scatter along one axis with its interval. */
function tellScatter({ deviation, deviationInterval: [low, high] }: SampleSummary, length: WriteLength): string {
  return `standard deviation ${length(deviation)} (95 %: ${length(low)} to ${length(high)})`;
}

/** Bias along one axis: said as one only where its interval leaves 0 out. */
function tellBias({ mean, meanInterval: [low, high] }: SampleSummary, length: WriteLength): string {
  const signed = (value: number) => writeSigned(value, length);
  const interval = `95 %: ${signed(low)} to ${signed(high)}`;
  return low > 0 || high < 0 ? `lies ${signed(mean)} off in the mean (${interval})` : `no bias shown (${interval})`;
}

/** What a group says, line by line. @param length a length with its unit */
export function tellGroup({ count, source, found, difference }: LearnedGroup, length: WriteLength): readonly string[] {
  const { how, axes } = SOURCE_WORDS[source];
  if (found === null) return [`${count} ${how}: ${tellTooFew(count)}.`];
  const { x, y } = found;
  return [
    `${count} ${how}.`,
    `Deviation ${axes[0]}: ${tellScatter(x, length)}; ${tellBias(x, length)}.`,
    `Deviation ${axes[1]}: ${tellScatter(y, length)}; ${tellBias(y, length)}.`,
    ...tellStandout({ found, difference }, length),
  ];
}

/** Why of a group nothing is given. */
export function tellTooFew(count: number): string {
  return `too few for a scatter: ${count} of the ${LEAST_COUNT} that are needed (common practice)`;
}

/**
 * What of a group is beyond chance, a sentence each: a trend with the distance, another scatter or another middle than the others have.
 * @param length a length with its unit
 */
export function tellStandout(
  { found, difference }: Pick<LearnedGroup, 'found' | 'difference'>,
  length: WriteLength,
): readonly string[] {
  const lines: string[] = [];
  for (const [axis, trend] of [
    ['x', found?.trendX ?? null],
    ['y', found?.trendY ?? null],
  ] as const) {
    if (trend === null) continue;
    const [low, high] = trend.slopeInterval;
    const perMetre = (slope: number) => writeSigned(1000 * slope, length);
    if (low > 0 || high < 0)
      lines.push(
        `Along ${axis} it changes with the distance from the datum: ${perMetre(trend.slope)} a metre (95 %: ${perMetre(low)} to ${perMetre(high)}). Look at the tape and at the form.`,
      );
  }
  if (difference !== null && difference.scatter.probability < RARE)
    lines.push(
      `Scatters ${difference.scatter.ratio.toFixed(1)} times as much as the others do (by chance ${percent(difference.scatter.probability)}, all comparisons counted).`,
    );
  if (difference !== null && difference.bias.probability < RARE)
    lines.push(
      `Lies ${writeSigned(difference.bias.by, length)} along ${difference.bias.axis} from where the others lie (by chance ${percent(difference.bias.probability)}, all comparisons counted).`,
    );
  return lines;
}

/** From fewer the reach of 19 of 20 would be that of the worst one alone. */
const LEAST_FOR_REACH = 20;

/**
 * How far from its place 95 % of a group lay, by count, rounded up to whole mm; null: too few to say.
 * @example of 20 the 19th, of 40 the 38th
 */
export function findReach({ points }: Pick<LearnedGroup, 'points'>): number | null {
  if (points.length < LEAST_FOR_REACH) return null;
  const sorted = points.map(({ at }) => Math.hypot(...at)).sort((a, b) => a - b);
  return Math.ceil(sorted[Math.ceil(SHARE * sorted.length - ROUNDING) - 1]! - ROUNDING);
}

const SHARE = 0.95;
const ROUNDING = 1e-9;

/** One line for the yard: of which way of holding inserts came out farthest off, from enough of them. Null: there is not enough. */
export function tellWorstReach({ groups }: Pick<Learned, 'groups'>): string | null {
  const reaches = groups.flatMap((group) => {
    const reach = group.by === 'method' && group.value !== null ? findReach(group) : null;
    return reach === null ? [] : [{ group, reach }];
  });
  const worst = reaches.toSorted((a, b) => b.reach - a.reach)[0];
  if (worst === undefined) return null;
  const { group, reach } = worst;
  return `Held by ${group.value}: 19 of 20 inserts lay within ${reach} mm of their place, ${SOURCE_WORDS[group.source].how} (${group.count} inserts).`;
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
export function tellTaken({ sigma, from, count }: TakenScatter, length: WriteLength): string {
  return from === 'the yard'
    ? `${length(sigma)} along each axis, from ${count} inserts of this yard`
    : `${length(sigma)} along each axis, common practice: the yard has measured ${count === 0 ? 'none' : `${count}, too few`}`;
}

/** A chance as a share: never certain, never impossible where it is only computed to some digits. */
export function tellChance({ fits }: Pick<PlateChance, 'fits'>): string {
  return fits > 0.9995 ? 'more than 99.9 %' : fits < 0.0005 ? 'less than 0.1 %' : `${(100 * fits).toFixed(1)} %`;
}

/** How well a chance is known: two standard errors to either side; in closed form exactly. */
export function tellChanceError({ standardError }: Pick<PlateChance, 'standardError'>): string {
  if (standardError === 0) return 'exact';
  const error = 200 * standardError;
  return error < 0.01 ? '± less than 0.01 %' : `± ${error.toFixed(2)} %`;
}

/** What must be for the chance that is aimed at. @param length a length with its unit */
export function tellNeed({ target, needs }: PlateChance, length: WriteLength): string {
  const wanted = `${(100 * target).toFixed(0)} of 100`;
  switch (needs.kind) {
    case 'nothing':
      return `the holes do for ${wanted}`;
    case 'no hole':
      return `no hole would do for ${wanted}`;
    case 'holes':
      // Rounded up: what is drilled must do.
      return `${length(Math.ceil(10 * needs.overBolt) / 10)} over the bolt`;
  }
}
