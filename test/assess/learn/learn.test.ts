import { describe, expect, it } from 'vitest';
import type { AsCastInsert } from '../../../src/assess/as-cast/as-cast-report.ts';
import { compareWithRest, correctByHolm } from '../../../src/assess/learn/compare-groups.ts';
import { findConnectionChance } from '../../../src/assess/learn/connection-chance.ts';
import { type Deviation, listSurveyedDeviations, listTapedDeviations } from '../../../src/assess/learn/deviations.ts';
import { LEAST_COUNT, learnScatter, readBand } from '../../../src/assess/learn/learn-scatter.ts';
import { type ChanceBolt, findPlateChance, takeScatter } from '../../../src/assess/learn/plate-chance.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { compareMeans, compareVariances } from '../../../src/engine/statistics/tests.ts';
import { prepareRandom } from '../../../src/engine/tolerance/shifted-lattice.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import {
  findReach,
  nameGroup,
  nameGrouping,
  tellChance,
  tellChanceError,
  tellGroup,
  tellLeftOut,
  tellNeed,
  tellTaken,
  tellWorstReach,
} from '../../../src/say/learn-words.ts';
import { demoFile, PieceTablet, pieceOf, sight } from '../yard/yard-sample.ts';

function prepareNormal(seed: number): () => number {
  const random = prepareRandom(seed);
  return () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

interface Made {
  readonly count: number;
  readonly sigma: number;
  readonly bias?: number;
  readonly grows?: number;
  readonly setter?: string;
  readonly measurer?: string;
  readonly source?: Deviation['source'];
}

function makeDeviations(seed: number, { count, sigma, bias = 0, grows = 0, ...who }: Made): readonly Deviation[] {
  const normal = prepareNormal(seed);
  return Array.from({ length: count }, (_, i) => {
    const from = [100 + 80 * i, 200 + 17 * i] as const;
    return {
      ...{
        piece: 'p',
        item: `${seed}-${i}`,
        number: i + 1,
        source: who.source ?? 'taped',
        from,
        group: null,
        tolerance: 5,
      },
      x: bias + grows * from[0] + sigma * normal(),
      y: sigma * normal(),
      measurer: who.measurer ?? 'm',
      context: {
        ...{ method: 'chair', place: 'trowelled face', bed: '1', type: 'T', isOnBoard: false },
        setter: who.setter ?? 's',
      },
    };
  });
}

const length = (value: number) => `${value.toFixed(1)} mm`;

const groupOf = (deviations: readonly Deviation[], by: string, value: string, copied: readonly string[] = []) =>
  learnScatter(deviations, new Set(copied)).groups.find((one) => one.by === by && one.value === value)!;

describe('scatter that is learned', () => {
  it('is given with its interval, and only from enough', () => {
    const { found, count } = groupOf(makeDeviations(1, { count: 60, sigma: 3 }), 'method', 'chair');
    expect(count).toBe(60);
    const [low, high] = found!.x.deviationInterval;
    expect([low < 3, high > 3, high / low < 1.6]).toEqual([true, true, true]);
    expect(found!.ellipse.half[0]).toBeGreaterThan(found!.ellipse.half[1]);
    const few = groupOf(makeDeviations(1, { count: LEAST_COUNT - 1, sigma: 3 }), 'method', 'chair');
    expect(few.found).toBeNull();
    expect(tellGroup(few, length)).toEqual([
      '9 taped in the form: too few for a scatter: 9 of the 10 that are needed (common practice).',
    ]);
    expect(groupOf(makeDeviations(1, { count: LEAST_COUNT, sigma: 3 }), 'all', 'all').found).not.toBeNull();
  });

  it('says a bias only where its interval leaves 0 out', () => {
    const off = tellGroup(groupOf(makeDeviations(2, { count: 40, sigma: 2, bias: 3 }), 'all', 'all'), length);
    expect(off[1]).toContain('off in the mean');
    expect(off[2]).toContain('no bias shown');
  });

  it('finds a tape that is long: growth with the distance', () => {
    const lines = tellGroup(groupOf(makeDeviations(3, { count: 60, sigma: 1, grows: 0.001 }), 'all', 'all'), length);
    expect(lines.filter((line) => line.includes('changes with the distance'))).toHaveLength(1);
    expect(
      tellGroup(groupOf(makeDeviations(4, { count: 60, sigma: 1 }), 'all', 'all'), length).join(' '),
    ).not.toContain('changes with');
  });

  it('tells apart who scatters more, and nobody where all are alike', () => {
    const rough = makeDeviations(5, { count: 40, sigma: 4, setter: 'rough' });
    const calm = ['a', 'b', 'c'].flatMap((setter, i) => makeDeviations(6 + i, { count: 40, sigma: 2, setter }));
    const { difference } = groupOf([...rough, ...calm], 'setter', 'rough');
    expect(difference!.scatter.probability).toBeLessThan(0.001);
    expect(difference!.scatter.ratio).toBeGreaterThan(1.5);
    for (const setter of ['a', 'b', 'c']) {
      const { difference: other } = groupOf(calm, 'setter', setter);
      expect(other!.scatter.probability).toBeGreaterThan(0.05);
    }
    expect(compareWithRest([rough.slice(0, 5), calm], LEAST_COUNT)).toEqual([null, null]);
  });

  it('keeps taped and surveyed ones apart, and leaves out who copies', () => {
    const taped = makeDeviations(9, { count: 20, sigma: 2, measurer: 'copier' });
    const surveyed = makeDeviations(10, { count: 20, sigma: 2, source: 'surveyed', measurer: 'other' });
    const learned = learnScatter([...taped, ...surveyed], new Set(['copier']));
    expect(learned.groups.every(({ source }) => source === 'surveyed')).toBe(true);
    expect(tellLeftOut(learned, (id) => id)).toEqual([
      '20 measured by copier left out: far more readings are as printed than taping gives.',
    ]);
    expect(learnScatter([...taped, ...surveyed], new Set()).groups.filter(({ by }) => by === 'all')).toHaveLength(2);
  });

  it('counts every insert in one bin, what is far off in the last', () => {
    const own = makeDeviations(11, { count: 50, sigma: 4 });
    const { bins } = groupOf([...own, { ...own[0]!, x: 1000, y: -1000 }], 'all', 'all');
    expect(bins.reduce((sum, { x }) => sum + x, 0)).toBe(51);
    expect([bins.at(-1)!.x > 0, bins[0]!.y > 0, bins[0]!.from, bins.at(-1)!.to]).toEqual([true, true, -2, 2]);
  });

  it('counts what lies within tolerance along both axes, with the interval of the share', () => {
    const own = makeDeviations(20, { count: 20, sigma: 0.01 });
    const off = own.map((one, i) => (i < 2 ? { ...one, x: 5.1 } : i === 2 ? { ...one, y: -5 } : one));
    const { within, found } = groupOf(off, 'all', 'all');
    expect(within).toBe(18);
    // Wilson, 18 of 20: 0.699 to 0.972 (tables).
    expect(found!.withinInterval.map((share) => Number(share.toFixed(3)))).toEqual([0.699, 0.972]);
    expect(found!.ellipse.half[0] / found!.ellipseOfOne.half[0]).toBeCloseTo(2.4477, 3);
  });

  it('puts inserts together by the farther of their two distances from the datum', () => {
    const [one] = makeDeviations(21, { count: 1, sigma: 1 });
    const at = (x: number, y: number) =>
      learnScatter([{ ...one!, from: [x, y] }], new Set()).groups.find(({ by }) => by === 'distance')!;
    expect([at(10, 999), at(10, 1000), at(3999, 10), at(9000, 1)].map(({ value }) => readBand(value!))).toEqual([
      { from: 0, to: 1000 },
      { from: 1000, to: 2000 },
      { from: 2000, to: 4000 },
      { from: 4000, to: null },
    ]);
    const names = { person: () => null, bed: () => null, length };
    expect(nameGroup(at(10, 1000), names)).toBe('1000.0 mm to 2000.0 mm');
    expect(nameGroup({ by: 'setter', value: 'x' }, names)).toBe('somebody whose name is not here');
    expect(readBand('7')).toBeNull();
  });

  it('tells the yard how far 19 of 20 lay off, and only from enough', () => {
    const points = (count: number) => Array.from({ length: count }, (_, i) => ({ at: [0, i + 0.5] as const }));
    const reachOf = (count: number) =>
      findReach({ points: points(count) as unknown as Parameters<typeof findReach>[0]['points'] });
    // Of 20 the 19th lies 18.5 off, of 40 the 38th 37.5.
    expect([reachOf(19), reachOf(20), reachOf(40)]).toEqual([null, 19, 38]);
    expect(tellWorstReach(learnScatter(makeDeviations(22, { count: 40, sigma: 2 }), new Set()))).toMatch(
      /^Held by chair: 19 of 20 inserts lay within \d mm of their place, taped in the form \(40 inserts\)\.$/,
    );
    expect(tellWorstReach(learnScatter(makeDeviations(22, { count: 15, sigma: 2 }), new Set()))).toBeNull();
  });

  it('reads what was taped of a piece', () => {
    const sample = pieceOf(demoFile(), 'P13', '1');
    const tablet = new PieceTablet(1, sample);
    const item = sample.plan.setOut.items[0]!;
    tablet.write('setter', item.number, sight(item.stage));
    const [x, y] = item.taped;
    tablet.write('checker', item.number, {
      kind: 'measured',
      body: { stage: item.stage, x_mm: x + 2, y_mm: y - 3, level_mm: null, basis: 'tape' },
    });
    const [found, ...others] = listTapedDeviations(
      sample.plan,
      foldPiece(sample.plan.piece, tablet.known.values()),
      'bed',
    );
    expect(others).toEqual([]);
    expect([found!.x, found!.y].map((value) => Number(value.toFixed(9)))).toEqual([2, -3]);
    expect(found!.context).toMatchObject({ bed: 'bed', place: item.place, method: item.way?.method ?? null });
    expect(found!.context.setter).toContain('setter');
    expect(found!.measurer).toContain('checker');
    const place = { dx: 4, dy: 1 } as AsCastInsert['place'] & object;
    const state = foldPiece(sample.plan.piece, tablet.known.values());
    const listed = (found: AsCastInsert['state']) =>
      listSurveyedDeviations(sample.plan, state, null, [{ item, place, state: found, why: [] }]);
    expect(listed('off')[0]).toMatchObject({ x: 4, y: 1, source: 'surveyed', measurer: null });
    expect([listed('conflict'), listed('not surveyed')]).toEqual([[], []]);
    expect(nameGrouping('setter')).toBe('by who set them');
  });
});

describe('tests of groups', () => {
  it('Holm: 0.01, 0.02, 0.04 of three become 0.03, 0.04, 0.04', () => {
    expect(correctByHolm([0.04, 0.01, 0.02])).toEqual([0.04, 0.03, 0.04]);
  });
  it('F: 3.18 of 9 and 9 degrees has a tail of 5 % (tables), two-sided 10 %', () => {
    const spread = (scale: number) => [-1, 1, -1, 1, -1, 1, -1, 1, -1, 1].map((value) => scale * value);
    expect(compareVariances(spread(Math.sqrt(3.178_893)), spread(1)).probability).toBeCloseTo(0.1, 5);
    expect(compareVariances([1, 1], [2, 2])).toEqual({ probability: 1, ratio: 1 });
  });
  it('Welch: by hand for two samples of three', () => {
    // Means 2 and 5, variances 1 and 1: t = 3/√(2/3) = 3.674, 4 degrees: 0.0213 (tables: 3.747 is 0.02).
    const { probability, difference } = compareMeans([1, 2, 3], [4, 5, 6]);
    expect(difference).toBe(-3);
    expect(probability).toBeCloseTo(0.0213, 3);
  });
});

describe('chance of a plate from what was learned', () => {
  const bolts: readonly ChanceBolt[] = [0, 200].map((x) => ({
    bolt: [x, 0],
    hole: { id: `${x}`, at_mm: [x, 0], diameter_mm: 22, slot_mm: 0, slotAngle_deg: 0 },
    boltDiameter: 16,
    context: { method: 'chair', place: 'trowelled face' },
  }));

  it('takes common practice where there are too few, and says so', () => {
    const learned = learnScatter(makeDeviations(12, { count: 4, sigma: 1 }), new Set());
    expect(takeScatter(learned, bolts[0]!.context)).toEqual({ sigma: 5, from: 'common practice', count: 4 });
    expect(tellTaken(takeScatter(learned, bolts[0]!.context)!, length)).toContain(
      'common practice: the yard has measured 4',
    );
    // Two round holes, by hand: 2 Φ(6/(5 √2)) − 1 = 0.604 but for what is across.
    const chance = findPlateChance(bolts, learned)!;
    expect(chance.fits).toBeCloseTo(0.604, 2);
    expect(chance.needs.kind === 'holes' && chance.needs.overBolt > 15).toBe(true);
    expect(tellChance(chance)).toMatch(/^60\.\d %$/);
    expect(tellNeed(chance, length)).toMatch(/^1\d\.\d mm over the bolt$/);
    expect(tellChanceError(chance)).toBe('exact');
  });

  it('takes the yard where it has measured enough: surveyed before taped', () => {
    const taped = makeDeviations(13, { count: 40, sigma: 3 });
    const surveyed = makeDeviations(14, { count: 40, sigma: 0.5, source: 'surveyed' });
    const learned = learnScatter([...taped, ...surveyed], new Set());
    const taken = takeScatter(learned, bolts[0]!.context)!;
    expect([taken.from, taken.count, taken.sigma < 0.7]).toEqual(['the yard', 40, true]);
    const chance = findPlateChance(bolts, learned)!;
    expect([tellChance(chance), tellNeed(chance, length)]).toEqual(['more than 99.9 %', 'the holes do for 99 of 100']);
  });

  it('takes the holes of a board to each other, wherever it lies: the whole board takes its plate along', () => {
    const context = { method: 'template board', place: 'trowelled face' } as const;
    expect(takeScatter(learnScatter([], new Set()), context)).toEqual({ sigma: 1, from: 'common practice', count: 0 });
  });

  it('takes how the inserts of a connection lie to each other, not what moved all of them', () => {
    const own = makeDeviations(30, { count: 40, sigma: 1 }).map((one, i) => ({
      ...one,
      ...{ group: `p ${i >> 2}`, x: one.x + 8 * Math.sin(i >> 2), y: one.y - 8 * Math.cos(i >> 2) },
    }));
    const { found } = groupOf(own, 'method', 'chair');
    expect(found!.x.deviation).toBeGreaterThan(4);
    expect([found!.apart!.sigma < 1.35, found!.apart!.sigma > 0.75]).toEqual([true, true]);
    expect(takeScatter(learnScatter(own, new Set()), bolts[0]!.context)).toEqual({
      ...{ sigma: found!.apart!.sigma, from: 'the yard', count: 40 },
    });
    // Four connections of three have 8 to spare, of which 9 are needed.
    const few = own.filter((_, i) => i < 16 && i % 4 !== 0);
    expect(groupOf(few, 'method', 'chair').found!.apart).toBeNull();
    // By hand: ten pairs at ±1 along x only: squares 20, free 10, two axes: √(20/20) = 1.
    const pairs = Array.from({ length: 20 }, (_, i) => ({
      ...own[0]!,
      x: 7 + (i % 2 === 0 ? 1 : -1),
      y: 3,
      group: `q ${i >> 1}`,
    }));
    expect(groupOf(pairs, 'method', 'chair').found!.apart).toEqual({ sigma: 1, count: 20 });
  });

  it('is found for a connection of a job: its bolts as designed, and what a board would change', () => {
    const file = demoFile();
    const index = indexJob(file);
    const known = new Map();
    const find = (mark: string) => {
      const connection = file.job.connections.find((one) => one.mark === mark)!;
      const setOut = setOutPanel(index, connection.panel, null);
      return findConnectionChance(index, setOut, connection, { groups: [] }, known);
    };
    const found = file.job.connections.slice(0, 5).map(({ mark }) => find(mark));
    const computed = found.filter(({ chance }) => chance !== null);
    expect(computed.length).toBeGreaterThan(0);
    for (const { chance, onBoard, bolts, why } of computed) {
      expect([why, chance!.scatter.length]).toEqual([null, bolts]);
      if (onBoard !== null) expect(onBoard.fits).toBeGreaterThanOrEqual(chance!.fits - 0.005);
    }
    // Of one detail they are computed once.
    expect(known.size).toBeGreaterThan(0);
    expect(find(computed[0]!.mark).chance).toBe(computed[0]!.chance);
    expect(new Set(found.flatMap(({ chance, why }) => (chance === null ? [why] : []))).has(null)).toBe(false);
  });

  it('is none where of one insert no way of holding is known', () => {
    const learned = learnScatter([], new Set());
    expect(
      findPlateChance([bolts[0]!, { ...bolts[1]!, context: { method: null, place: 'edge' } }], learned),
    ).toBeNull();
    expect(findPlateChance(bolts.slice(1), learned)).toBeNull();
  });
});
