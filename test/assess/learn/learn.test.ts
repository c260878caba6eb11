import { describe, expect, it } from 'vitest';
import type { AsCastInsert } from '../../../src/assess/as-cast/as-cast-report.ts';
import { compareWithRest, correctByHolm } from '../../../src/assess/learn/compare-groups.ts';
import { type Deviation, listSurveyedDeviations, listTapedDeviations } from '../../../src/assess/learn/deviations.ts';
import { LEAST_COUNT, learnScatter } from '../../../src/assess/learn/learn-scatter.ts';
import { type ChanceBolt, findPlateChance, takeScatter } from '../../../src/assess/learn/plate-chance.ts';
import { compareMeans, compareVariances } from '../../../src/engine/statistics/tests.ts';
import { prepareRandom } from '../../../src/engine/tolerance/shifted-lattice.ts';
import { foldPiece } from '../../../src/records/fold/fold-piece.ts';
import { nameGrouping, tellGroup, tellLeftOut, tellPlateChance, tellTaken } from '../../../src/say/learn-words.ts';
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
      ...{ piece: 'p', item: `${seed}-${i}`, number: i + 1, source: who.source ?? 'taped', from, tolerance: 5 },
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
    expect(tellGroup(few)).toEqual(['9 taped in the form: too few for a scatter, 10 are needed (common practice).']);
    expect(groupOf(makeDeviations(1, { count: LEAST_COUNT, sigma: 3 }), 'all', 'all').found).not.toBeNull();
  });

  it('says a bias only where its interval leaves 0 out', () => {
    const off = tellGroup(groupOf(makeDeviations(2, { count: 40, sigma: 2, bias: 3 }), 'all', 'all'));
    expect(off[1]).toContain('off in the mean');
    expect(off[2]).toContain('no bias shown');
  });

  it('finds a tape that is long: growth with the distance', () => {
    const lines = tellGroup(groupOf(makeDeviations(3, { count: 60, sigma: 1, grows: 0.001 }), 'all', 'all'));
    expect(lines.filter((line) => line.includes('grows with the distance'))).toHaveLength(1);
    expect(tellGroup(groupOf(makeDeviations(4, { count: 60, sigma: 1 }), 'all', 'all')).join(' ')).not.toContain(
      'grows',
    );
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
    expect(tellTaken(takeScatter(learned, bolts[0]!.context)!)).toContain('common practice: the yard has measured 4');
    // Two round holes, by hand: 2 Φ(6/(5 √2)) − 1 = 0.604 but for what is across.
    const chance = findPlateChance(bolts, learned)!;
    expect(chance.fits).toBeCloseTo(0.604, 2);
    expect(chance.needs.kind === 'holes' && chance.needs.overBolt > 15).toBe(true);
    expect(tellPlateChance(chance)[0]).toContain('60.');
  });

  it('takes the yard where it has measured enough: surveyed before taped', () => {
    const taped = makeDeviations(13, { count: 40, sigma: 3 });
    const surveyed = makeDeviations(14, { count: 40, sigma: 0.5, source: 'surveyed' });
    const learned = learnScatter([...taped, ...surveyed], new Set());
    const taken = takeScatter(learned, bolts[0]!.context)!;
    expect([taken.from, taken.count, taken.sigma < 0.7]).toEqual(['the yard', 40, true]);
    const chance = findPlateChance(bolts, learned)!;
    expect(tellPlateChance(chance)).toEqual(['Goes on first time: more than 99.9 %.', 'The holes do for 99 of 100.']);
  });

  it('is none where of one insert no way of holding is known', () => {
    const learned = learnScatter([], new Set());
    expect(
      findPlateChance([bolts[0]!, { ...bolts[1]!, context: { method: null, place: 'edge' } }], learned),
    ).toBeNull();
    expect(findPlateChance(bolts.slice(1), learned)).toBeNull();
  });
});
