import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOutOfPlace } from '../../../src/assess/out-of-place/answer.ts';
import { EMPTY_CASE, NOTHING_KNOWN } from '../../../src/assess/out-of-place/case.ts';
import { drawOutOfPlaceSheet } from '../../../src/drawing/sheets/out-of-place-sheet.ts';
import { sayCaseFault } from '../../../src/say/case-fault-words.ts';
import { sayOutOfPlacePage } from '../../../src/say/out-of-place-page.ts';
import { writeOutOfPlaceText } from '../../../src/say/out-of-place-text.ts';
import { sayAssumption, sayLeast } from '../../../src/say/out-of-place-words.ts';
import { writerOf } from '../../../src/say/quantities.ts';
import { findOverhang, findOverlaps, textOf } from '../../drawing/picture-checks.ts';
import { anyCase, anyStandard, anyTruth, compute, DOCUMENT } from './any-case.ts';

const METRIC = writerOf('metric');
const US = writerOf('US');

/** Any case with anything known besides, by any standard, in either units. */
const anyAnswer = anyCase
  .chain((given) =>
    fc.tuple(
      fc.constant(given),
      anyTruth(given),
      anyStandard,
      fc.option(fc.tuple(fc.integer({ min: 20, max: 500 }), fc.integer({ min: 20, max: 900 })), { nil: null }),
      fc.constantFrom('metric' as const, 'US' as const),
    ),
  )
  .map(([given, truth, standard, drawn, units]) => ({
    answer: compute(
      given,
      { ...truth, drawnEdge1_mm: drawn?.[0] ?? null, drawnEdge2_mm: drawn?.[1] ?? null },
      standard,
    ),
    units,
  }));

describe('quantities for people', () => {
  it('writes largest loads rounded down, and never above what holds', () => {
    expect(METRIC.limit(6_309.99)).toBe('6.30 kN');
    expect(METRIC.limit(6_310)).toBe('6.31 kN');
    expect(METRIC.limit(17_280)).toBe('17.2 kN');
    expect(US.limit(4_448.2216152605)).toBe('1.00 kip');
    expect(US.limit(4_447)).toBe('0.99 kip');
  });
  it('writes lengths and strengths in both units', () => {
    expect([METRIC.length(60), METRIC.length(22.4), US.length(60), US.length(25.4)]).toEqual([
      '60 mm',
      '22.4 mm',
      '2.36 in',
      '1 in',
    ]);
    expect([METRIC.strength(32), US.strength(32), METRIC.force(5000), US.force(5000)]).toEqual([
      '32 MPa',
      '4641 psi',
      '5.00 kN',
      '1.12 kip',
    ]);
  });
});

describe('the answer in one line', () => {
  it('has the least shear of all directions, not that toward the nearest edge', () => {
    const answer = compute({ neighbours: 1, spacing_mm: 150 });
    const [tension, ...shears] = answer.limits.map(({ force }) => force!);
    expect(Math.min(...shears)).toBeLessThan(shears[0]!);
    expect(sayLeast(answer, METRIC)).toBe(`N ${METRIC.limit(tension!)} · V ${METRIC.limit(Math.min(...shears))}`);
  });
});

describe('the message', () => {
  it('is under 25 lines and names load, limit, state and every assumption', () => {
    fc.assert(
      fc.property(anyAnswer, ({ answer, units }) => {
        const text = writeOutOfPlaceText(answer, units)!;
        expect(text.split('\n').length).toBeLessThan(25);
        const writer = writerOf(units);
        for (const { force } of answer.limits.slice(0, 3))
          if (force !== null) expect(text).toContain(writer.limit(force));
        for (const one of answer.filled.assumptions) expect(text).toContain(sayAssumption(one, writer).short);
        expect(text).toContain(answer.state.toUpperCase());
        expect(text).toContain('NEVER: Lift with it or brace from it.');
        expect(text).toContain(answer.document);
      }),
      { numRuns: 25 },
    );
  });
  it('says which load is missing', () => {
    expect(writeOutOfPlaceText(compute({ shear_kN: null }), 'metric')).toContain(
      'STRENGTH NOT CHECKED. Not said: shear.',
    );
  });
  it.each([
    ['lifting', 'do not lift'],
    ['brace', 'do not take away what holds the panel now'],
  ] as const)('of a %s insert is to stop, without any number', (role, words) => {
    const text = writeOutOfPlaceText(
      answerOutOfPlace({ ...EMPTY_CASE, role }, { standard: 'EN 1992-4', known: NOTHING_KNOWN }),
      'metric',
    )!;
    expect(text).toContain(words);
    expect(text).not.toMatch(/\d/);
  });
  it('names the value that is missing, and the limit of one that cannot be', () => {
    const say = (given: Partial<typeof EMPTY_CASE>) => {
      const answer = answerOutOfPlace(
        { ...EMPTY_CASE, role: 'fixing', thread: 'M16', edge1_mm: 60, edge2_mm: 90, neighbours: 0, ...given },
        { standard: 'EN 1992-4', known: NOTHING_KNOWN },
      );
      return answer.kind === 'unanswered' ? answer.faults.map((fault) => sayCaseFault(fault, METRIC)) : [];
    };
    expect(say({})).toEqual(['Length of the insert: needed, since nothing that could be assumed is on the safe side']);
    expect(say({ length_mm: 100, thickness_mm: 90 })).toEqual([
      'Thickness of the concrete: 90 mm cannot be; expected more than 100 mm (length of the insert)',
    ]);
  });
});

describe('the page', () => {
  it('is one page on which no text lies on another and nothing sticks out, and says all that the answer holds', () => {
    fc.assert(
      fc.property(anyAnswer, ({ answer, units }) => {
        const page = sayOutOfPlacePage(answer, units);
        const sheet = drawOutOfPlaceSheet(page, answer.filled);
        expect(findOverlaps(sheet.marks)).toEqual([]);
        expect(findOverhang(sheet.marks, sheet)).toBe(0);
        const text = textOf(sheet.marks).replaceAll('\n', ' ');
        for (const { most } of page.limits) expect(text).toContain(most);
        for (const sentence of [...page.assumed, ...page.may, ...page.ask, ...page.never])
          for (const word of sentence.split(' ')) expect(text).toContain(word);
        for (const words of ['accepted by (name)', 'capacity', 'registration no.', 'date', 'NOT FOR LIFTING'])
          expect(text).toContain(words);
      }),
      { numRuns: 40 },
    );
  });
  it('names the clause of what limits each load', () => {
    const { limits } = sayOutOfPlacePage(compute({}, { limitsCracks: true, footDiameter_mm: 46 }), 'metric');
    expect(limits.map(({ why }) => why)).toEqual([
      'concrete cone: EN 1992-4:2018 7.2.1.4',
      'concrete edge in shear: EN 1992-4:2018 7.2.2.5',
      'concrete edge in shear: EN 1992-4:2018 7.2.2.5',
      'concrete edge in shear: EN 1992-4:2018 7.2.2.5',
    ]);
  });
  it('marks what was assumed and frames anything but a pass', () => {
    const page = sayOutOfPlacePage(compute({ strength_MPa: null }), 'metric');
    expect(page.said.find(([name]) => name.startsWith('Strength'))?.[1]).toBe('12 MPa (assumed)');
    expect(page.isStop).toBe(true);
    const pass = compute(
      { tension_kN: 0.5, shear_kN: 0.5 },
      { document: DOCUMENT, limitsCracks: true, footDiameter_mm: 46 },
    );
    expect([pass.state, sayOutOfPlacePage(pass, 'metric').isStop]).toEqual(['passes', false]);
  });
});
