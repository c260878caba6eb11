import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isNamedAlike } from '../../../src/assess/as-cast/match-names.ts';
import { type DesignPoint, matchPoints, type SurveyedPoint } from '../../../src/assess/as-cast/match-points.ts';
import { movePointBack, type Pose } from '../../../src/engine/survey/pose.ts';
import type { Vector } from '../../../src/engine/survey/vector.ts';
import { flatPose, makeNormal, spacePose } from '../../engine/survey/poses.ts';

const uniform = (seed: number) => {
  const chance = makeNormal(seed);
  return () => {
    // A normal number wrapped into 0…1 is as good as even.
    const value = chance() * 7.3;
    return value - Math.floor(value);
  };
};

const named = (places: readonly Vector[]): DesignPoint[] =>
  places.map((at, i) => ({ key: `k${i + 1}`, number: `${i + 1}`, at, kind: i < 4 ? 'control' : 'insert' }));

/** Corners of a panel and inserts in groups of two, off any pattern. */
function makePanel(seed: number, inserts: number, size: 2 | 3): DesignPoint[] {
  const next = uniform(seed);
  const places: number[][] = [
    [0, 0],
    [6000, 0],
    [6000, 2900],
    [0, 2900],
  ];
  while (places.length < 4 + inserts) {
    const [x, y] = [Math.round(next() * 5600) + 200, Math.round(next() * 2500) + 200];
    places.push([x, y], [x + 150, y]);
  }
  return named(places.slice(0, 4 + inserts).map((at, i) => (size === 2 ? at : [...at, i % 3 === 0 ? -180 : 0])));
}

interface Taken {
  readonly surveyed: readonly SurveyedPoint[];
  /** Index of the surveyed point by the key of the design. */
  readonly truth: ReadonlyMap<string, number>;
}

/** What an instrument has of a panel: some missing, some more, each off by as much, in another order. */
function take(
  design: readonly DesignPoint[],
  pose: Pose,
  seed: number,
  { off = 8, missing = 0, extra = 0 } = {},
): Taken {
  const next = uniform(seed);
  const size = design[0]!.at.length;
  const around = (far: number) => Array.from({ length: size }, () => (next() - 0.5) * 2 * far);
  const points = design.slice(0, design.length).map(({ key, at }) => {
    const by = around(1);
    const length = Math.hypot(...by);
    return {
      key,
      at: movePointBack(
        pose,
        at.map((value, k) => value + (by[k]! / length) * off * next()),
      ),
    };
  });
  const kept = points.filter((_, i) => i >= missing);
  const more = Array.from({ length: extra }, () => ({ key: '', at: movePointBack(pose, around(9000)) }));
  const order = [...kept, ...more].map((point) => ({ point, by: next() })).sort((a, b) => a.by - b.by);
  return {
    surveyed: order.map(({ point }) => ({ name: null, at: point.at })),
    truth: new Map(order.flatMap(({ point }, i) => (point.key === '' ? [] : [[point.key, i] as const]))),
  };
}

const pairsOf = (answer: ReturnType<typeof matchPoints>) =>
  new Map(answer.best?.pairs.map(({ key, surveyed }) => [key, surveyed]));

describe('matching by geometry', () => {
  it.each([
    ['2D', 2, flatPose, { off: 10 }],
    ['2D, some missing, some more', 2, flatPose, { off: 10, missing: 6, extra: 8 }],
    ['3D', 3, spacePose, { off: 10 }],
    ['3D, some missing, some more', 3, spacePose, { off: 10, missing: 6, extra: 8 }],
  ] as const)('finds every pair, wherever the instrument stands: %s', (_, size, poses, how) => {
    fc.assert(
      fc.property(poses, fc.integer({ min: 1, max: 1e6 }), (pose: Pose, seed) => {
        const design = makePanel(seed, 18, size);
        const { surveyed, truth } = take(design, pose, seed + 1, how);
        const answer = matchPoints(design, surveyed);
        expect(answer.state).toBe('clear');
        expect(pairsOf(answer)).toEqual(truth);
        expect(answer.isMirrored).toBe(false);
        expect(answer.unmatchedSurveyed.length).toBe(surveyed.length - truth.size);
      }),
      { seed: 10, numRuns: 12 },
    );
  });

  it('finds the way with 40 inserts and 60 points that are up to 30 mm off, and lays them well', () => {
    for (const [size, poses] of [
      [2, flatPose],
      [3, spacePose],
    ] as const) {
      const pose = fc.sample(poses, { seed: 11, numRuns: 1 })[0]!;
      const design = makePanel(5, 40, size);
      const { surveyed, truth } = take(design, pose, 6, { off: 30, extra: 16 });
      const answer = matchPoints(design, surveyed);
      expect(answer.state).toBe('clear');
      const right = answer.best!.pairs.filter(({ key, surveyed: i }) => truth.get(key) === i);
      expect(right.length).toBeGreaterThanOrEqual(42);
    }
  });

  it('says that a part of a regular pattern fits elsewhere in it too', () => {
    const bay = [
      [0, 0],
      [150, 0],
      [0, 200],
      [150, 200],
    ];
    const regular = Array.from({ length: 10 }, (_, i) =>
      bay.map(([x, y]) => [300 + (i % 5) * 1100 + x!, 400 + Math.floor(i / 5) * 1500 + y!]),
    );
    const corners = makePanel(1, 0, 2).map(({ at }) => at);
    const design = named([...corners, ...regular.flat()]);
    const pose = fc.sample(flatPose, { seed: 14, numRuns: 1 })[0]!;
    // All of it can lie one way only, since the corners are no part of the pattern; six bays alone lie two ways.
    const all = take(design, pose, 15);
    expect(matchPoints(design, all.surveyed).state).toBe('clear');
    expect(pairsOf(matchPoints(design, all.surveyed))).toEqual(all.truth);
    const { surveyed } = take(design, pose, 16, { missing: 20, extra: 20 });
    const answer = matchPoints(design, surveyed);
    expect(answer).toMatchObject({ state: 'cannot tell', by: 'geometry' });
    expect(answer.runnerUp!.pairs.length).toBe(24);
  });

  it('finds a few inserts of many', () => {
    const design = makePanel(8, 40, 2);
    const pose = fc.sample(flatPose, { seed: 12, numRuns: 1 })[0]!;
    const { surveyed, truth } = take(design, pose, 9, { off: 6, missing: 34 });
    expect(pairsOf(matchPoints(design, surveyed))).toEqual(truth);
  });
});

const RECTANGLE = named([
  [0, 0],
  [200, 0],
  [200, 120],
  [0, 120],
]);
const SHIFT: Pose = {
  rotation: [
    [1, 0],
    [0, 1],
  ],
  shift: [-5000, -700],
};
const asTaken = (design: readonly DesignPoint[], names: readonly (string | null)[]): SurveyedPoint[] =>
  design.map(({ at }, i) => ({ name: names[i] ?? null, at: movePointBack(SHIFT, at) }));

describe('what geometry cannot tell', () => {
  it('says that a pattern fits the other way round as well', () => {
    const answer = matchPoints(RECTANGLE, asTaken(RECTANGLE, []));
    expect(answer.state).toBe('cannot tell');
    expect(answer.confidence).toBeCloseTo(0.5, 6);
    expect(answer.runnerUp!.pairs.length).toBe(4);
    expect(answer.runnerUp!.rms).toBeLessThan(0.01);
  });

  it('lets names choose there, and there only', () => {
    const right = matchPoints(RECTANGLE, asTaken(RECTANGLE, ['1', 'INS 2', 'P12-3', '04']));
    expect(right).toMatchObject({ state: 'clear', by: 'names' });
    expect([...pairsOf(right).values()].sort()).toEqual([0, 1, 2, 3]);
    expect(pairsOf(right).get('k1')).toBe(0);
    // The other way round by name: the pattern allows it.
    const turned = matchPoints(RECTANGLE, asTaken(RECTANGLE, ['3', '4', '1', '2']));
    expect(pairsOf(turned).get('k1')).toBe(2);
    // A pattern that fits one way only takes no notice of names.
    const odd = named([
      [0, 0],
      [200, 0],
      [260, 120],
      [0, 190],
    ]);
    const contradicted = matchPoints(odd, asTaken(odd, ['3', '4', '1', '2']));
    expect(contradicted).toMatchObject({ state: 'clear', by: 'geometry' });
    expect(pairsOf(contradicted).get('k1')).toBe(0);
    expect(contradicted.best!.pairs.every((pair) => !pair.isNamedAlike)).toBe(true);
  });

  it('does not let names overrule a pattern that fits a hundred times better one way', () => {
    // One corner 11 mm aside: about 240 times more probable than the other way round, which four names alone would outweigh.
    const nearly = named([
      [0, 0],
      [200, 0],
      [211, 120],
      [0, 120],
    ]);
    const answer = matchPoints(nearly, asTaken(nearly, ['3', '4', '1', '2']));
    expect(answer.runnerUp!.pairs.length).toBe(4);
    expect(pairsOf(answer).get('k1')).toBe(0);
    expect(answer.by).toBe('geometry');
  });

  it('knows names that resemble numbers', () => {
    for (const name of ['7', '07', 'INS7', 'P12-7', '7b', 'ins. 007']) expect(isNamedAlike('7', name)).toBe(true);
    for (const name of ['17', '7-12', '', null, 'seven']) expect(isNamedAlike('7', name)).toBe(false);
    expect(isNamedAlike('Corner A', 'corner-a')).toBe(true);
    expect(isNamedAlike('', '')).toBe(false);
  });

  it('names points measured from the other face, and matches nothing by the mirror image', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const design = makePanel(seed, 12, 2);
        const { surveyed } = take(design, SHIFT, seed, { off: 6 });
        // East and north exchanged.
        const answer = matchPoints(
          design,
          surveyed.map(({ name, at }) => ({ name, at: [at[1]!, at[0]!] })),
        );
        expect(answer.isMirrored).toBe(true);
        expect(answer.state === 'clear' && answer.best!.pairs.length >= 0.9 * design.length).toBe(false);
      }),
      { seed: 13, numRuns: 8 },
    );
  });

  it('makes nothing of points that have nothing to do with the panel', () => {
    const design = makePanel(3, 20, 2);
    const next = uniform(4);
    const surveyed = design.map(() => ({ name: null, at: [next() * 90_000, next() * 90_000] }));
    expect(matchPoints(design, surveyed)).toMatchObject({ state: 'none', best: null, isMirrored: false });
    expect(matchPoints(design, [])).toMatchObject({ state: 'none' });
    expect(matchPoints([], surveyed)).toMatchObject({ state: 'none' });
    // One point, or points in one place, fix nothing.
    expect(matchPoints(design.slice(0, 1), surveyed.slice(0, 1)).state).toBe('none');
    expect(
      matchPoints(
        RECTANGLE,
        RECTANGLE.map(() => ({ name: null, at: [7, 7] })),
      ).best,
    ).toBeNull();
  });

  it('takes a second point on an axis for what it is', () => {
    const design = makePanel(2, 10, 3).map((point) => ({ ...point, out: [0, 0, point.at[2] === 0 ? 1 : -1] }));
    const { surveyed, truth } = take(
      design,
      {
        rotation: [
          [0, 1, 0],
          [-1, 0, 0],
          [0, 0, 1],
        ],
        shift: [9, 9, 9],
      },
      3,
      { off: 2 },
    );
    const tops = design.slice(6, 8);
    // The rod stands 95 mm out of the drawn face: in the instrument's frame heights are the same.
    const rods = tops.map(({ key, at }) => {
      const top = surveyed[truth.get(key)!]!.at;
      return { name: null, at: [top[0]!, top[1]!, top[2]! + (at[2] === 0 ? 95 : -95)] };
    });
    const answer = matchPoints(design, [...surveyed, ...rods]);
    expect(pairsOf(answer)).toEqual(truth);
    expect(answer.seconds.map(({ key }) => key)).toEqual(tops.map(({ key }) => key));
    for (const { along } of answer.seconds) expect(along).toBeCloseTo(95, 0);
    expect(answer.unmatchedSurveyed).toEqual([]);
  });
});
