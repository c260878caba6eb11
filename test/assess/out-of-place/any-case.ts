/** Cases of all kinds for the tests of the ten-minute answer, and values that may be known in place of an assumption. */

import fc from 'fast-check';
import { answerOutOfPlace, type ComputedAnswer } from '../../../src/assess/out-of-place/answer.ts';
import {
  type AnswerSettings,
  EMPTY_CASE,
  type KnownValues,
  NOTHING_KNOWN,
  type OutOfPlaceCase,
} from '../../../src/assess/out-of-place/case.ts';
import { propertyClasses } from '../../../src/engine/hardware/property-classes.ts';
import { findThread, type ThreadName } from '../../../src/engine/hardware/threads.ts';
import { type StandardName, standardNames } from '../../../src/engine/standards/standard-name.ts';

/** A fixing insert of which the least was said. */
export const LEAST_SAID: OutOfPlaceCase = {
  ...EMPTY_CASE,
  role: 'fixing',
  thread: 'M16',
  length_mm: 100,
  edge1_mm: 60,
  edge2_mm: 200,
  neighbours: 0,
};

/** The same with everything said that is asked for. */
export const ALL_SAID: OutOfPlaceCase = {
  ...LEAST_SAID,
  thickness_mm: 150,
  strength_MPa: 32,
  isPoured: true,
  tension_kN: 2,
  shear_kN: 2,
};

export const DOCUMENT = { document: 'Invented assessment 12', standard: standardNames.join(', ') };

/** An answer by EN 1992-4 with nothing else known, unless said otherwise. Anything but a computed answer is an error. */
export function compute(
  given: Partial<OutOfPlaceCase> = {},
  known: Partial<KnownValues> = {},
  standard: StandardName = 'EN 1992-4',
): ComputedAnswer {
  const settings: AnswerSettings = { standard, known: { ...NOTHING_KNOWN, ...known } };
  const answer = answerOutOfPlace({ ...ALL_SAID, ...given }, settings);
  if (answer.kind !== 'answer') throw new Error(`no answer: ${JSON.stringify(answer)}`);
  return answer;
}

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = <T>(values: fc.Arbitrary<T>) => fc.option(values, { nil: null });

/** Threads whose inserts are long enough for EN 1992-4. */
const THREADS = ['M10', 'M12', 'M16', 'M20', 'M24'] as const satisfies readonly ThreadName[];

/** Any case that can be answered, in any standard, with both loads said. */
export const anyCase: fc.Arbitrary<OutOfPlaceCase> = fc
  .record({
    thread: fc.constantFrom(...THREADS),
    slender: within(4, 9),
    edges: fc.tuple(within(25, 400), within(0, 500)),
    neighbours: fc.constantFrom(0, 1, 2, 3),
    apart: within(2.5, 14),
    behind: maybe(within(5, 200)),
    strength_MPa: maybe(within(12, 70)),
    isPoured: maybe(fc.boolean()),
    tension_kN: within(0, 20),
    shear_kN: within(0.01, 20),
  })
  .map(({ thread, slender, edges: [first, more], neighbours, apart, behind, ...rest }) => {
    const d = findThread(thread).diameter;
    const length_mm = slender * d;
    return {
      ...rest,
      role: 'fixing' as const,
      thread,
      length_mm,
      edge1_mm: first,
      edge2_mm: first + more,
      neighbours: neighbours as 0 | 1 | 2 | 3,
      spacing_mm: neighbours === 0 ? null : apart * d,
      thickness_mm: behind === null ? null : length_mm + behind,
    };
  });

export const anyStandard = fc.constantFrom(...standardNames);

/** Values that may turn out to be true of a case, each in the range in which its assumption is on the safe side. */
export function anyTruth({ thread, length_mm, edge1_mm, edge2_mm }: OutOfPlaceCase): fc.Arbitrary<KnownValues> {
  const d = findThread(thread!).diameter;
  const second = Math.max(edge1_mm!, edge2_mm!);
  return fc
    .record({
      document: fc.constantFrom(null, DOCUMENT),
      body: maybe(within(1.41, 1.9)),
      foot: maybe(within(1.15, 1.55)),
      thin: maybe(within(0, 1)),
      steel: maybe(fc.tuple(within(200, 700), within(1.06, 2.5))),
      threadClass: maybe(fc.constantFrom('6H', '6AZ', '6AX') as fc.Arbitrary<'6H'>),
      boltClass: maybe(fc.constantFrom(...propertyClasses)),
      turns: maybe(within(1, 1.6)),
      isDense: maybe(fc.boolean()),
      limitsCracks: maybe(fc.boolean()),
      edgeBars: maybe(fc.constantFrom('none', 'bar', 'bar-and-stirrups') as fc.Arbitrary<'none'>),
      others: maybe(within(0, 800)),
      neighboursCarry: maybe(within(0, 1)),
      critical: maybe(within(0.4, 1)),
    })
    .map(({ body, foot, thin, steel, turns, others, critical, ...rest }) => {
      const bodyDiameter_mm = body === null ? null : body * d;
      const widest = bodyDiameter_mm ?? 1.41 * d;
      const embedment_mm = thin === null ? null : length_mm! - thin * Math.ceil(0.6 * d);
      const leastDepth = embedment_mm ?? length_mm! - Math.ceil(0.6 * d);
      const ultimate = steel === null ? null : Math.min(1000, Math.max(360, steel[0] * steel[1]));
      return {
        ...NOTHING_KNOWN,
        ...rest,
        bodyDiameter_mm,
        footDiameter_mm: foot === null ? null : foot * widest,
        embedment_mm,
        steelYield_MPa: steel === null ? null : steel[0],
        steelUltimate_MPa: ultimate,
        engagement_mm: turns === null ? null : turns * d,
        otherEdges_mm: others === null ? null : second + others,
        criticalEdge_mm: critical === null ? null : critical * 3 * leastDepth,
      };
    });
}
