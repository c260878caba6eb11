import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOutOfPlace, type ComputedAnswer } from '../../../src/assess/out-of-place/answer.ts';
import { type AnswerSettings, NOTHING_KNOWN, type OutOfPlaceCase } from '../../../src/assess/out-of-place/case.ts';
import { tries } from '../../long.ts';
import { ALL_SAID, anyCase, anyStandard, anyTruth, compute, DOCUMENT } from './any-case.ts';

/** The search for a largest load stops at 1e-9; sums of areas round at about that. */
const ROUNDING = 1e-6;

function answer(given: OutOfPlaceCase, settings: AnswerSettings): ComputedAnswer {
  const found = answerOutOfPlace(given, settings);
  if (found.kind !== 'answer') throw new Error(JSON.stringify(found));
  return found;
}

/** Where the second answer is worse than the first by more than a part of it; empty where it is nowhere. */
function listWorse(before: ComputedAnswer, after: ComputedAnswer, allowed = ROUNDING): readonly string[] {
  const worse: string[] = [];
  for (const [i, one] of before.limits.entries()) {
    const other = after.limits[i]!;
    const [a, b] = [one.force ?? Number.POSITIVE_INFINITY, other.force ?? Number.POSITIVE_INFINITY];
    if (b < a * (1 - allowed)) worse.push(`${one.direction}: ${a} (${one.mode}) → ${b} (${other.mode})`);
  }
  if (before.limits.length > 0 && after.limits.length === 0)
    worse.push(`cannot be computed: ${after.reasons.join('; ')}`);
  if (before.load !== null && after.load !== null && after.load.ratio > before.load.ratio / (1 - allowed))
    worse.push(`ratio: ${before.load.ratio} (${before.load.mode}) → ${after.load.ratio} (${after.load.mode})`);
  if (before.reasons.length === 0 && after.reasons.length > 0) worse.push(after.reasons.join('; '));
  return worse;
}

/** Where it is drawn has no part in the answer. */
const KNOWN_FIELDS = (Object.keys(NOTHING_KNOWN) as (keyof typeof NOTHING_KNOWN)[]).filter(
  (field) => !field.startsWith('drawn'),
);

const RUNS = { numRuns: tries(120, 50) };

/** In thin and narrow members EN 1992-4 itself gives up to 0.7 % less shear for more thickness or width: its exponent falls as c1' grows. */
const CODE = 0.01;

describe('what is assumed is on the safe side', () => {
  it('never answers less once values are known in place of assumptions, whatever was known before', () => {
    const cases = anyCase.chain((given) =>
      fc.tuple(fc.constant(given), anyTruth(given), fc.array(fc.constantFrom(...KNOWN_FIELDS)), anyStandard),
    );
    fc.assert(
      fc.property(cases, ([given, truth, forgotten, standard]) => {
        const part = { ...truth, ...Object.fromEntries(forgotten.map((field) => [field, null])) };
        const nothing = answer(given, { standard, known: { ...NOTHING_KNOWN, document: truth.document } });
        const something = answer(given, { standard, known: { ...part, document: truth.document } });
        const everything = answer(given, { standard, known: truth });
        // A group between three near edges: see below.
        const allowed = given.neighbours === 0 ? ROUNDING : 0.03;
        expect(listWorse(nothing, something, allowed)).toEqual([]);
        expect(listWorse(something, everything, allowed)).toEqual([]);
      }),
      RUNS,
    );
  });
  it('does not keep what the code gives an insert between four near edges more than with two of them far off', () => {
    const between = {
      thread: 'M20',
      length_mm: 180,
      edge1_mm: 259,
      edge2_mm: 259,
      thickness_mm: 188,
      strength_MPa: 12,
    } as const;
    const assumed = compute(between, { document: DOCUMENT });
    expect(assumed.limits[0]!.mode).toBe('splitting');
    expect(listWorse(assumed, compute(between, { document: DOCUMENT, otherEdges_mm: 1139 }))).toEqual([]);
  });
  it('never answers less once a thickness or strength is said that was assumed', () => {
    fc.assert(
      fc.property(anyCase, anyStandard, (given, standard) => {
        const settings = { standard, known: { ...NOTHING_KNOWN, document: DOCUMENT } };
        const assumed = answer({ ...given, thickness_mm: null, strength_MPa: null, isPoured: null }, settings);
        const said = answer(
          {
            ...given,
            thickness_mm: Math.max(given.thickness_mm ?? 0, given.length_mm! + 20),
            strength_MPa: given.strength_MPa ?? 12,
          },
          settings,
        );
        expect(listWorse(assumed, said, CODE)).toEqual([]);
      }),
      RUNS,
    );
  });
  /** One more of what is said, before and after. */
  function answerBoth(
    given: OutOfPlaceCase,
    { field, by }: { readonly field: 'edge1_mm' | 'edge2_mm' | 'thickness_mm' | 'strength_MPa'; readonly by: number },
    standard: AnswerSettings['standard'],
  ): readonly [ComputedAnswer, ComputedAnswer] {
    const settings = { standard, known: { ...NOTHING_KNOWN, document: DOCUMENT } };
    const before = { ...given, thickness_mm: given.thickness_mm ?? given.length_mm! + 20 };
    return [answer(before, settings), answer({ ...before, [field]: (before[field] ?? 12) * by }, settings)];
  }
  const more = fc.record({
    field: fc.constantFrom('edge1_mm' as const, 'edge2_mm' as const, 'thickness_mm' as const, 'strength_MPa' as const),
    by: fc.double({ min: 1.001, max: 3, noNaN: true }),
  });
  it('never answers less with more edge distance, thickness or strength', () => {
    fc.assert(
      fc.property(anyCase, more, anyStandard, (given, change, standard) => {
        const [before, after] = answerBoth({ ...given, neighbours: 0, spacing_mm: null }, change, standard);
        expect(listWorse(before, after, CODE)).toEqual([]);
        const tension = ({ limits }: ComputedAnswer) => limits[0]!.force!;
        expect(tension(after)).toBeGreaterThanOrEqual(tension(before) * (1 - ROUNDING));
      }),
      RUNS,
    );
  });
  it('beside neighbours follows the standards, which give groups between near edges up to 30 % more than with one edge farther', () => {
    // The embedment that is reduced at three near edges is bent by the spacing (EN 1992-4, 7.2.1.4; ACI 318, 17.6.2.1.2).
    fc.assert(
      fc.property(anyCase, more, anyStandard, (given, change, standard) => {
        const [before, after] = answerBoth(given, change, standard);
        expect(listWorse(before, after, 0.3)).toEqual([]);
      }),
      { numRuns: tries(60, 30) },
    );
  });
  it('never answers less for a smaller load', () => {
    fc.assert(
      fc.property(anyCase, fc.double({ min: 0, max: 1, noNaN: true }), anyStandard, (given, share, standard) => {
        const settings = { standard, known: NOTHING_KNOWN };
        const less = { ...given, tension_kN: given.tension_kN! * share };
        expect(listWorse(answer(given, settings), answer(less, settings))).toEqual([]);
      }),
      RUNS,
    );
  });
});

describe('what cannot be known to be on the safe side', () => {
  it('never passes without a product document', () => {
    const best = { limitsCracks: true, footDiameter_mm: 45, otherEdges_mm: 1500 };
    expect(compute({ tension_kN: 0.1, shear_kN: 0.1 }, best).state).toBe('not covered');
    expect(compute({ tension_kN: 0.1, shear_kN: 0.1 }, { ...best, document: DOCUMENT }).state).toBe('passes');
  });
  it('never passes so near to an edge that a wide foot would come to its face, until its width is said', () => {
    const near = { ...ALL_SAID, edge1_mm: 30, tension_kN: 0.1, shear_kN: 0.1 };
    expect(compute(near, { document: DOCUMENT }).reasons.join()).toContain('a foot may be up to 48 mm wide');
    expect(compute(near, { document: DOCUMENT, footDiameter_mm: 36 }).state).toBe('passes');
  });
});
