import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findCapacities } from '../../../src/assess/capacities.ts';
import { answerOutOfPlace } from '../../../src/assess/out-of-place/answer.ts';
import { EMPTY_CASE, NOTHING_KNOWN, type OutOfPlaceCase } from '../../../src/assess/out-of-place/case.ts';
import { makeJobOfAnswer } from '../../../src/assess/out-of-place/to-job.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { readJobDocument } from '../../../src/job/read-job-document.ts';
import { resolveConnection } from '../../../src/job/resolve/resolve-connection.ts';
import { ALL_SAID, anyCase, anyStandard, anyTruth, compute, DOCUMENT, LEAST_SAID } from './any-case.ts';

const EN = { standard: 'EN 1992-4', known: NOTHING_KNOWN } as const;

/** All that can be known of the demo's kind of insert, so that nothing is assumed but the neighbours' side. */
const ALL_KNOWN = {
  document: DOCUMENT,
  bodyDiameter_mm: 24,
  footDiameter_mm: 46,
  embedment_mm: 90,
  steelUltimate_MPa: 510,
  steelYield_MPa: 355,
  threadClass: '6AZ',
  boltClass: '8.8',
  engagement_mm: 16,
  isDense: false,
  limitsCracks: true,
  edgeBars: 'none',
  otherEdges_mm: 1500,
  neighboursCarry: 1,
  criticalEdge_mm: 200,
} as const;

describe('the role comes first', () => {
  it.each(['lifting', 'brace'] as const)('stops at once for a %s insert, with no number', (role) => {
    for (const given of [
      { ...ALL_SAID, role },
      { ...EMPTY_CASE, role },
    ])
      expect(answerOutOfPlace(given, EN)).toEqual({ kind: 'stopped', role });
  });
});

describe('what cannot be assumed', () => {
  it('is asked for by name', () => {
    const answer = answerOutOfPlace(EMPTY_CASE, EN);
    expect(answer.kind === 'unanswered' && answer.faults.map(({ field, kind }) => `${field} ${kind}`)).toEqual([
      'role missing',
      'thread missing',
      'length_mm missing',
      'edge1_mm missing',
      'edge2_mm missing',
      'neighbours missing',
    ]);
  });
  it('is the spacing, once there are neighbours', () => {
    const answer = answerOutOfPlace({ ...LEAST_SAID, neighbours: 2 }, EN);
    expect(answer.kind === 'unanswered' && answer.faults.map(({ field }) => field)).toEqual(['spacing_mm']);
  });
  it.each<[Partial<OutOfPlaceCase>, string, number]>([
    [{ thickness_mm: 100 }, 'thickness_mm', 100],
    [{ edge1_mm: 0 }, 'edge1_mm', 0],
    [{ edge2_mm: -5 }, 'edge2_mm', 0],
    [{ length_mm: 25 }, 'length_mm', 26],
    [{ neighbours: 1, spacing_mm: 22.4 }, 'spacing_mm', 22.4],
    [{ tension_kN: -1 }, 'tension_kN', 0],
  ])('refuses %o at %s', (wrong, field, limit) => {
    const answer = answerOutOfPlace({ ...LEAST_SAID, ...wrong }, EN);
    expect(answer).toMatchObject({ kind: 'unanswered', faults: [{ field, limit }] });
  });
  it.each<[Partial<typeof NOTHING_KNOWN>, string, number]>([
    [{ footDiameter_mm: 25 }, 'footDiameter_mm', (8 / 7) * 22.4],
    [{ bodyDiameter_mm: 22 }, 'bodyDiameter_mm', 22.4],
    [{ embedment_mm: 101 }, 'embedment_mm', 100],
    [{ steelYield_MPa: 400, steelUltimate_MPa: 390 }, 'steelYield_MPa', 390],
    [{ neighboursCarry: 1.1 }, 'neighboursCarry', 1],
  ])('refuses %o of what is known at %s', (wrong, field, limit) => {
    const answer = answerOutOfPlace(LEAST_SAID, { ...EN, known: { ...NOTHING_KNOWN, ...wrong } });
    expect(answer).toMatchObject({ kind: 'unanswered', faults: [{ field, limit }] });
  });
  it('takes values at their limits', () => {
    for (const right of [{ thickness_mm: 100.1 }, { length_mm: 26 }, { neighbours: 1, spacing_mm: 22.5 }] as const)
      expect(answerOutOfPlace({ ...LEAST_SAID, ...right }, EN).kind).toBe('answer');
  });
});

describe('what is assumed', () => {
  it('is listed, each with the value that was taken', () => {
    const { assumptions } = compute({ thickness_mm: null, strength_MPa: null, isPoured: null }).filled;
    const listed = Object.fromEntries(assumptions.map(({ what, values, name }) => [what, name ?? values]));
    expect(listed).toMatchObject({
      'other-edges': [200],
      thickness: [120, 20],
      strength: [12],
      poured: [],
      foot: 'M16',
      embedment: [90, 100],
      steel: [200, 510],
      bolt: 'A2-50',
      splitting: [300],
      document: [],
    });
  });
  it('is nothing but cracks, a cross hole and the worst side once everything is known', () => {
    const { assumptions } = compute({ neighbours: 1, spacing_mm: 150 }, ALL_KNOWN).filled;
    expect(assumptions.map(({ what }) => what)).toEqual([
      'neighbours-place',
      'cracked',
      'shear-direction',
      'cross-hole',
    ]);
  });
  it('counts yield and strength of the steel together only', () => {
    const limits = (known: Partial<typeof NOTHING_KNOWN>) =>
      compute({}, { ...ALL_KNOWN, boltClass: null, ...known }).limits;
    const neither = limits({ steelYield_MPa: null, steelUltimate_MPa: null });
    expect(limits({ steelYield_MPa: 600, steelUltimate_MPa: null })).toEqual(neither);
    expect(limits({ steelYield_MPa: null, steelUltimate_MPa: 900 })).toEqual(neither);
  });
  it('bears on what the widest body leaves of a foot, where the body is not known', () => {
    const { item } = compute({}, { footDiameter_mm: 40 }).filled.insert;
    expect(item.bodyDiameter_mm).toBe(22.4);
    expect(item.foot).toMatchObject({ kind: 'area', area_mm2: (Math.PI / 4) * (40 ** 2 - 35 ** 2) });
  });
  it('takes the two edges in any order, and beyond 1.5 m no farther', () => {
    const limits = (edge1_mm: number, edge2_mm: number) => compute({ edge1_mm, edge2_mm }).limits;
    expect(limits(200, 60)).toEqual(limits(60, 200));
    expect(limits(60, 9000)).toEqual(limits(60, 1500));
  });
  it('counts no strength above the highest that the rules cover', () => {
    expect(compute({ strength_MPa: 120 }).limits).toEqual(compute({ strength_MPa: 90 }).limits);
  });
});

describe('states are never merged', () => {
  const small = { tension_kN: 0.5, shear_kN: 0.5 };
  it.each<[string, Partial<OutOfPlaceCase>, Partial<typeof NOTHING_KNOWN>]>([
    ['passes', small, ALL_KNOWN],
    ['fails', { tension_kN: 60, shear_kN: 0 }, ALL_KNOWN],
    ['fails', { tension_kN: 60, shear_kN: 0 }, {}],
    ['not covered', small, { ...ALL_KNOWN, document: null }],
    ['not covered', small, { ...ALL_KNOWN, document: { document: 'x', standard: 'AS 5216' } }],
    ['strength not checked', { ...small, shear_kN: null }, ALL_KNOWN],
    ['strength not checked', { tension_kN: 0, shear_kN: 0 }, ALL_KNOWN],
  ])('%s', (state, given, known) => {
    expect(compute(given, known).state).toBe(state);
  });
  it('takes the shear in the direction where it does most', () => {
    expect(compute({ tension_kN: 0, shear_kN: 3 }, ALL_KNOWN).load).toMatchObject({
      shear: 'toward 1',
      mode: 'concrete-edge',
    });
    expect(compute({ tension_kN: 3, shear_kN: 0 }, ALL_KNOWN).load?.shear).toBeNull();
  });
});

describe('what may be done', () => {
  const steps = (given: Partial<OutOfPlaceCase>, known: Partial<typeof NOTHING_KNOWN> = ALL_KNOWN) =>
    compute(given, known).steps;
  it('is to move it back, only before the pour', () => {
    expect(steps({ isPoured: false }).may).toContain('move back');
    expect(steps({ isPoured: false }).never).toContain('push into wet concrete');
    for (const isPoured of [true, null]) expect(steps({ isPoured }).may).not.toContain('move back');
  });
  it('is never to hang anything on it, unless it passes', () => {
    const passes = steps({ tension_kN: 0.5, shear_kN: 0.5 });
    expect(passes.never).not.toContain('hang anything on it');
    expect(passes.may).toContain('try the plate');
    for (const bad of [{ tension_kN: 60 }, { tension_kN: null }])
      expect(steps(bad).never).toContain('hang anything on it');
  });
  it('always leaves the place itself to the design engineer, and never allows lifting', () => {
    fc.assert(
      fc.property(anyCase, anyStandard, (given, standard) => {
        const { ask, never } = compute(given, {}, standard).steps;
        expect(ask).toContain('accept the place');
        expect(never).toContain('lift or brace');
      }),
      { numRuns: 20 },
    );
  });
  it('needs the design engineer near an edge and in young concrete, on both sides of each limit', () => {
    expect(steps({ edge1_mm: 49.9 }).ask).toContain('near the edge');
    expect(steps({ edge1_mm: 50 }).ask).not.toContain('near the edge');
    expect(steps({ thread: 'M20', edge1_mm: 59 }, { document: DOCUMENT }).ask).toContain('near the edge');
    expect(steps({ strength_MPa: 19.9 }).ask).toContain('young concrete');
    expect(steps({ strength_MPa: 20 }).ask).not.toContain('young concrete');
  });
});

describe('a job of the answer', () => {
  /** The answer's job as read, and what its connection carries at most; null where there is none. */
  function tryReadBack(answer: ReturnType<typeof compute>) {
    let keys = 0;
    const makeKey = () => {
      keys += 1;
      return `key ${keys}`;
    };
    const names = { project: 'From an answer', remarks: ['Sizes were assumed.'], makeKey };
    const made = makeJobOfAnswer(answer, names);
    if (made === null) return null;
    const read = readJobDocument(JSON.parse(JSON.stringify(made)));
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const resolution = resolveConnection(indexJob(read.file), read.file.job.connections[0]!);
    const asked = findCapacities(resolution);
    if (asked.kind !== 'computed') throw new Error(asked.reasons.join('; '));
    return { file: read.file, group: asked.value.group };
  }

  function readBack(answer: ReturnType<typeof compute>) {
    const job = tryReadBack(answer);
    if (job === null) throw new Error('no job was made');
    return job;
  }

  it('carries what the answer says, where the answer left nothing open', () => {
    for (const standard of ['EN 1992-4', 'AS 5216', 'ACI 318-19'] as const) {
      const answer = compute({ neighbours: 0 }, ALL_KNOWN, standard);
      const { group } = readBack(answer);
      const find = (name: string | null) => group.find(({ direction }) => (direction?.name ?? null) === name)?.total;
      const said = (name: string) => answer.limits.find(({ direction }) => direction === name)!.force!;
      expect(find(null)! / said('tension')).toBeCloseTo(1, 8);
      expect(find('270°')! / said('toward 1')).toBeCloseTo(1, 8);
      expect(find('180°')! / said('toward 2')).toBeCloseTo(1, 8);
    }
  });
  it('is readable for any case, and never carries less than the answer says', () => {
    const cases = anyCase.chain((given) => fc.tuple(fc.constant(given), anyTruth(given), anyStandard));
    fc.assert(
      fc.property(cases, ([given, truth, standard]) => {
        // A job's neighbours carry as much as the insert.
        const answer = compute(given, { ...truth, neighboursCarry: null }, standard);
        const made = tryReadBack(answer);
        const { item, footWidth } = answer.filled.insert;
        expect(made === null).toBe(Math.max(item.bodyDiameter_mm, footWidth) / 2 > answer.filled.nearest);
        if (made === null) return;
        const { file, group } = made;
        expect(file.job.castIns).toHaveLength(1 + given.neighbours!);
        const tension = group.find(({ direction }) => direction === null)!;
        const said = answer.limits[0]!.force!;
        expect(tension.perInsert).toBeGreaterThanOrEqual(said * (1 - 1e-6));
      }),
      { numRuns: 60 },
    );
  });
  it('asks for the stated loads of every insert, and says nothing where none were said', () => {
    const actions = (given: Partial<OutOfPlaceCase>) => readBack(compute(given)).file.job.connections[0]!.actions;
    expect(actions({ tension_kN: 2, shear_kN: 3 })).toEqual({ kind: 'required', N_kN: 2, V_kN: 3 });
    expect(actions({ tension_kN: null })).toEqual({ kind: 'none' });
  });
  it('has no neighbour outside the panel', () => {
    const { file } = readBack(compute({ neighbours: 2, spacing_mm: 300, edge1_mm: 60, edge2_mm: 70 }));
    expect(file.job.castIns.map(({ x_mm }) => x_mm)).toEqual([70, 670, 370]);
  });
});
