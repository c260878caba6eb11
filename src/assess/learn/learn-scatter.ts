import type { Point } from '../../engine/geometry/point.ts';
import {
  findTrend,
  type Interval,
  type SampleSummary,
  summariseSample,
  type Trend,
  wilsonInterval,
} from '../../engine/statistics/intervals.ts';
import { findCovariance, findEllipse, type ScatterEllipse } from '../../engine/statistics/scatter.ts';
import { compareWithRest, type GroupDifference } from './compare-groups.ts';
import type { Deviation } from './deviations.ts';

/** What inserts are put together by. */
export const groupings = ['all', 'method', 'place', 'bed', 'setter', 'distance', 'type', 'board'] as const;
export type Grouping = (typeof groupings)[number];

/**
 * From fewer inserts no scatter is given: with ten the true one may still be from 0.7 to 1.8 times what was found (95 %, chi-square). The number is common
 * practice.
 */
export const LEAST_COUNT = 10;
const CONFIDENCE = 0.95;
/** What is just at the tolerance is within it [mm]. */
const ROUNDING = 1e-9;

/** Shares of a round scatter within one standard deviation and within what holds 95 %. */
const SHARE_OF_ONE = 1 - Math.exp(-0.5);
const SHARE = 0.95;

/** Bands of the distance from the datum, along the axis along which it is farther [mm]. */
const BANDS = [0, 1000, 2000, 4000] as const;

/** Where the band of a distance begins and ends [mm]; null: no end. */
export interface DistanceBand {
  readonly from: number;
  readonly to: number | null;
}

/** The band of a group by distance, from its value; null: it is none. */
export function readBand(value: string): DistanceBand | null {
  const at = BANDS.findIndex((from) => String(from) === value);
  return at < 0 ? null : { from: BANDS[at]!, to: BANDS[at + 1] ?? null };
}

/** How many lie how far off, in parts of their tolerance: from −2 to 2 in steps of a quarter, what is farther in the end bins. */
export interface HistogramBin {
  readonly from: number;
  readonly to: number;
  readonly x: number;
  readonly y: number;
}

/** One group of inserts that were measured alike. Lengths mm. */
export interface LearnedGroup {
  readonly by: Grouping;
  /** Which of them: a method, a place, an id; null: not known. */
  readonly value: string | null;
  readonly source: Deviation['source'];
  readonly count: number;
  /** x, y and its number for each: what a scatter is drawn from. */
  readonly points: readonly {
    readonly at: Point;
    readonly tolerance: number;
    readonly number: number;
    readonly piece: string;
    /** Designed distances from the datum along the two axes. */
    readonly from: Deviation['from'];
  }[];
  /** Which lie within their tolerance along both axes. */
  readonly within: number;
  /** Null: too few. */
  readonly found: {
    readonly x: SampleSummary;
    readonly y: SampleSummary;
    /** That holds 95 % of a normal scatter; and that of one standard deviation. */
    readonly ellipse: ScatterEllipse;
    readonly ellipseOfOne: ScatterEllipse;
    /**
     * Standard deviation along an axis of the inserts of one connection about their own middle, over all connections, and from how many inserts: what
     * moves a whole connection is not in it. Null: too few that lie together.
     */
    readonly apart: { readonly sigma: number; readonly count: number } | null;
    /** Of the share within tolerance, by Wilson. */
    readonly withinInterval: Interval;
    /** Deviation along an axis over the distance from the datum [mm a mm]: a long tape, a form that grows. Null: all at one distance. */
    readonly trendX: Trend | null;
    readonly trendY: Trend | null;
  } | null;
  readonly bins: readonly HistogramBin[];
  /** What sets it apart from the rest of its grouping, if anything does beyond chance; null: too few here or there. */
  readonly difference: GroupDifference | null;
}

/** What was learned, and what was left out of it. */
export interface Learned {
  readonly groups: readonly LearnedGroup[];
  /** Readings of people whose readings look copied from the sheet: they are in no group. */
  readonly leftOut: readonly { readonly measurer: string; readonly count: number }[];
}

/**
 * Puts measured inserts together by each grouping and gives their scatter, bias and trends with their intervals, 95 %; taped and surveyed ones apart.
 * @param copied ids of people whose readings are as printed far more often than by taping (`exact-hits.ts`): theirs teach nothing
 */
export function learnScatter(deviations: readonly Deviation[], copied: ReadonlySet<string>): Learned {
  const isCopied = ({ measurer }: Deviation) => measurer !== null && copied.has(measurer);
  const counted = deviations.filter((one) => !isCopied(one));
  const sources = ['taped', 'surveyed'] as const;
  const groups = sources.flatMap((source) => {
    const own = counted.filter((one) => one.source === source);
    return own.length === 0 ? [] : groupings.flatMap((by) => learnGrouping(by, source, own));
  });
  const measurers = [...copied].filter((id) => deviations.some(({ measurer }) => measurer === id)).sort();
  return {
    groups,
    leftOut: measurers.map((measurer) => ({
      measurer,
      count: deviations.filter((one) => one.measurer === measurer).length,
    })),
  };
}

function groupValue({ context, from }: Deviation, by: Grouping): string | null {
  if (by === 'all') return 'all';
  if (by === 'distance') return String(BANDS.findLast((start) => Math.max(...from) >= start) ?? BANDS[0]);
  if (by === 'board') return context.isOnBoard ? 'template board' : 'single';
  return context[by];
}

function learnGrouping(by: Grouping, source: Deviation['source'], all: readonly Deviation[]): readonly LearnedGroup[] {
  const values = [...new Set(all.map((one) => groupValue(one, by)))].sort((a, b) => (String(a) < String(b) ? -1 : 1));
  const members = values.map((value) => all.filter((one) => groupValue(one, by) === value));
  const differences = compareWithRest(members, LEAST_COUNT);
  return values.map((value, i) => learnGroup({ by, value, source }, members[i]!, differences[i]!));
}

function learnGroup(
  head: Pick<LearnedGroup, 'by' | 'value' | 'source'>,
  own: readonly Deviation[],
  difference: GroupDifference | null,
): LearnedGroup {
  return {
    ...head,
    count: own.length,
    points: own.map(({ x, y, tolerance, number, piece, from }) => ({ at: [x, y], tolerance, number, piece, from })),
    within: countWithin(own),
    found: own.length < LEAST_COUNT ? null : findScatterOf(own),
    bins: countBins(own),
    difference,
  };
}

function countWithin(own: readonly Deviation[]): number {
  return own.filter(({ x, y, tolerance }) => Math.max(Math.abs(x), Math.abs(y)) <= tolerance + ROUNDING).length;
}

/** Pooled over connections: each has its own middle, so that of n inserts n − 1 count. */
function findApart(own: readonly Deviation[]): { readonly sigma: number; readonly count: number } | null {
  const names = new Set(own.flatMap(({ group }) => group ?? []));
  const together = [...names]
    .map((name) => own.filter(({ group }) => group === name))
    .filter((members) => members.length > 1);
  const count = together.reduce((sum, members) => sum + members.length, 0);
  const free = count - together.length;
  if (free < LEAST_COUNT - 1) return null;
  const squares = together.reduce((sum, members) => {
    const { covariance } = findCovariance(members.map(({ x, y }) => [x, y]));
    return sum + (members.length - 1) * (covariance.xx + covariance.yy);
  }, 0);
  return { sigma: Math.sqrt(squares / (2 * free)), count };
}

function findScatterOf(own: readonly Deviation[]): NonNullable<LearnedGroup['found']> {
  const { mean, covariance } = findCovariance(own.map(({ x, y }) => [x, y]));
  const trend = (axis: 0 | 1) =>
    findTrend(
      own.map(({ x, y, from }) => [from[axis], axis === 0 ? x : y]),
      CONFIDENCE,
    );
  return {
    x: summariseSample(
      own.map(({ x }) => x),
      CONFIDENCE,
    ),
    y: summariseSample(
      own.map(({ y }) => y),
      CONFIDENCE,
    ),
    ellipse: findEllipse(mean, covariance, SHARE),
    ellipseOfOne: findEllipse(mean, covariance, SHARE_OF_ONE),
    apart: findApart(own),
    withinInterval: wilsonInterval(countWithin(own), own.length, CONFIDENCE),
    trendX: trend(0),
    trendY: trend(1),
  };
}

/** Bins to either side of 0, each a quarter of the tolerance wide. */
const BINS = 8;
const WIDTH = 0.25;

function countBins(own: readonly Deviation[]): readonly HistogramBin[] {
  const binOf = (part: number) => Math.max(0, Math.min(2 * BINS - 1, Math.floor(part / WIDTH) + BINS));
  return Array.from({ length: 2 * BINS }, (_, bin) => ({
    from: (bin - BINS) * WIDTH,
    to: (bin - BINS + 1) * WIDTH,
    x: own.filter(({ x, tolerance }) => binOf(x / tolerance) === bin).length,
    y: own.filter(({ y, tolerance }) => binOf(y / tolerance) === bin).length,
  }));
}
