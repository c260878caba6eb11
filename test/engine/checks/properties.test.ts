// What must hold for any group by any edition, drawn at random (random-groups.ts), the same in every run.
import * as fc from 'fast-check';
import { compile, type EvalFunction } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { checkAnchorage, explainAnchorage, findResistances } from '../../../src/engine/checks/anchorage.ts';
import type { AnchorageGroup } from '../../../src/engine/checks/anchorage-group.ts';
import type { AnchorageResult, Mode, Row, Step } from '../../../src/engine/checks/result.ts';
import { writeStep } from '../../../src/engine/checks/write-step.ts';
import type { Point, Polygon } from '../../../src/engine/geometry/point.ts';
import { type StandardName, standardNames } from '../../../src/engine/standards/standard-name.ts';
import { anyCase, type Case, moveCase, prepareCase } from './random-groups.ts';

const RUNS = { numRuns: 500, seed: 19924 };

const check = (one: Case) => checkAnchorage(prepareCase(one), one.actions);
const explain = (one: Case) => explainAnchorage(prepareCase(one), one.actions, true);

/** Rounding of a moved or renumbered group; 1e-9 relative as the contract asks. */
const SAME = 1e-9;
const isSame = (a: number, b: number) => a === b || Math.abs(a - b) <= SAME * Math.max(a, b);

function expectSame(one: Case, other: Case): void {
  const [a, b] = [check(one), check(other)];
  if (!isSame(a.ratio, b.ratio)) expect(b.ratio).toBe(a.ratio);
  expect(b.verdict).toBe(a.verdict);
}

describe('one answer, however it is asked for', () => {
  it('numbers alone are those of the full result, to the last bit', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const numbers = check(one);
        const { governing, verdict, uncovered } = explain(one);
        expect(governing).toEqual({ ratio: numbers.ratio, mode: numbers.mode });
        expect([verdict, uncovered]).toEqual([numbers.verdict, numbers.uncovered]);
      }),
      RUNS,
    );
  });
  it('a group prepared once answers every combination as one prepared anew', () => {
    fc.assert(
      fc.property(anyCase, fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 4, maxLength: 4 }), (one, factors) => {
        const p = prepareCase(one);
        for (const factor of factors) {
          const inserts = one.actions.inserts.map(({ N, Vx, Vy }, i) => ({ N: i < factor ? 0 : N, Vx, Vy: -Vy }));
          const actions = { ...one.actions, inserts };
          expect(checkAnchorage(p, actions)).toEqual(check({ group: one.group, actions }));
        }
      }),
      { ...RUNS, numRuns: 200 },
    );
  });
  it('asking changes nothing that was given', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const before = JSON.stringify(one);
        explain(one);
        findResistances(prepareCase(one), true);
        expect(JSON.stringify(one)).toBe(before);
      }),
      { ...RUNS, numRuns: 100 },
    );
  });
});

describe('the result is sound in itself', () => {
  /** The largest ratio of all rows. ACI has two of an edge, for shear toward it and along it: together √(r⊥² + r∥²). */
  function findLargest(rows: readonly Row[]): number {
    const used = new Map<string, number>();
    for (const [i, { applies, mode, edge, inserts, ratio }] of rows.entries()) {
      if (!applies) continue;
      const key = mode === 'concrete-edge' ? JSON.stringify([edge, inserts]) : `${i}`;
      const before = used.get(key) ?? 0;
      used.set(key, before === 0 ? ratio! : Math.hypot(before, ratio!));
    }
    return Math.max(0, ...used.values());
  }

  it('ratio = action/design, design = characteristic/γ or φ · characteristic, and the largest governs', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const result = explain(one);
        for (const row of result.rows.filter(({ applies }) => applies)) {
          const byFactor = one.group.standard === 'EN 1992-4';
          expect(row.design).toBe(byFactor ? row.characteristic! / row.safety! : row.safety! * row.characteristic!);
          expect(row.ratio).toBe(row.design! > 0 ? row.action! / row.design! : Number.POSITIVE_INFINITY);
        }
        const largest = Math.max(findLargest(result.rows), ...result.interaction.map(({ ratio }) => ratio));
        if (!isSame(result.governing!.ratio, largest)) expect(result.governing!.ratio).toBe(largest);
      }),
      RUNS,
    );
  });
  it('passes only when all is covered and no ratio is above 1', () => {
    fc.assert(
      fc.property(anyCase, fc.boolean(), (one, isQualified) => {
        const insert = isQualified ? one.group.insert : { ...one.group.insert, qualification: null };
        const { verdict, uncovered, governing } = explain({ ...one, group: { ...one.group, insert } });
        if (!isQualified) expect(uncovered).not.toEqual([]);
        const isTooMuch = governing!.ratio > 1 + 1e-9;
        expect(verdict).toBe(isTooMuch ? 'fail' : uncovered.length > 0 ? 'not covered' : 'pass');
      }),
      RUNS,
    );
  });
  const CONCRETE: readonly Mode[] = ['blow-out', 'concrete-cone', 'concrete-edge', 'pry-out', 'pull-out'];
  const STEEL: readonly Mode[] = ['steel-shear', 'steel-tension'];
  const EN_ONLY: readonly Mode[] = ['bar-anchorage', 'bar-steel', 'splitting'];
  it.each<readonly [StandardName, readonly Mode[]]>([
    ['EN 1992-4', [...CONCRETE, ...STEEL, ...EN_ONLY]],
    ['AS 5216', [...CONCRETE, ...STEEL, ...EN_ONLY]],
    // Splitting by distances; bars in place of the concrete are not computed.
    ['ACI 318-19', [...CONCRETE, ...STEEL]],
    ['ACI 318M-19', [...CONCRETE, ...STEEL]],
  ])('every mode of %s comes up', (standard, modes) => {
    const seen = new Set(
      fc
        .sample(anyCase, { numRuns: 600, seed: 19924 })
        .filter(({ group }) => group.standard === standard)
        .flatMap((one) => explain(one).rows.filter(({ applies }) => applies))
        .map(({ mode }) => mode),
    );
    expect([...seen].sort()).toEqual([...modes].sort());
  });
});

describe('printed steps', () => {
  /** Half a unit of the last of the 7 digits that a number is printed with. */
  const halfUnit = (value: number) =>
    value === 0 || !Number.isFinite(value) ? 0 : 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - 6);

  /** How far the printed numbers may lead: each argument moved by half a unit of its last printed digit. */
  function leeway(step: Step & { readonly kind: 'clause' }): number {
    const { clause, args, value } = step;
    const moved = args.map((arg, i) => {
      const move = (by: number) => Math.abs(clause.fn(...args.map((other, k) => (k === i ? arg + by : other))) - value);
      return Math.max(move(halfUnit(arg)), move(-halfUnit(arg)));
    });
    return 2 * moved.reduce((sum, one) => sum + one, 0) + 1e-12 * Math.abs(value);
  }

  const formulas = new Map<string, EvalFunction>();

  it('compute to the printed result', () => {
    let steps = 0;
    fc.assert(
      fc.property(anyCase, (one) => {
        const result = explain(one);
        for (const step of [...result.rows, ...result.interaction].flatMap((row) => row.steps)) {
          const written = writeStep(step);
          if (step.kind === 'quantity') continue;
          steps += 1;
          const formula = formulas.get(written.numbers) ?? compile(written.numbers);
          formulas.set(written.numbers, formula);
          const computed = Number(formula.evaluate({ infinity: Number.POSITIVE_INFINITY }));
          if (computed === written.result) continue;
          expect(Math.abs(computed - written.result), `${written.symbol} = ${written.numbers}`).toBeLessThanOrEqual(
            leeway(step),
          );
        }
      }),
      { ...RUNS, numRuns: 150 },
    );
    expect(steps).toBeGreaterThan(3000);
  });
  it('end in the characteristic resistance of their row, with its basic value and area ratio', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        for (const row of explain(one).rows) {
          if (!row.applies || !['concrete-cone', 'splitting', 'blow-out', 'concrete-edge'].includes(row.mode)) continue;
          const clauses = row.steps.filter((step) => step.kind === 'clause');
          // A shear along the edge has a sentence of its own in the clause of its row.
          const last = clauses.filter((step) => step.clause.reference.startsWith(row.clause)).at(-1)!;
          expect(last.value).toBe(row.characteristic);
          expect(last.args[0]).toBe(row.basic);
          // ACI's blow-out has no areas.
          if (row.factors.areaRatio !== undefined) expect(last.args[1]).toBe(row.factors.areaRatio);
          else expect(last.args.slice(1)).toEqual([row.factors.corner, row.factors.group]);
        }
      }),
      { ...RUNS, numRuns: 150 },
    );
  });
});

describe('the same group, otherwise written down', () => {
  const angle = fc.integer({ min: 0, max: 62831 }).map((value) => value / 10000);

  it('turned at any angle, mirrored, shifted', () => {
    fc.assert(
      fc.property(anyCase, angle, fc.boolean(), (one, turn, isMirrored) => {
        expectSame(one, moveCase(one, turn, isMirrored, [1234.5, -678.9]));
      }),
      { ...RUNS, numRuns: 800 },
    );
  });
  it('turned by quarters', () => {
    fc.assert(
      fc.property(anyCase, fc.integer({ min: 1, max: 3 }), (one, quarters) => {
        expectSame(one, moveCase(one, (quarters * Math.PI) / 2, false, [0, 0]));
      }),
      RUNS,
    );
  });
  it('inserts in another order', () => {
    fc.assert(
      fc.property(anyCase, fc.integer({ min: 1, max: 3 }), (one, by) => {
        const turn = <T>(list: readonly T[]): T[] =>
          list.map((_, i) => list[(list.length - 1 - i + by) % list.length]!);
        expectSame(one, {
          group: { ...one.group, positions: turn(one.group.positions) },
          actions: { ...one.actions, inserts: turn(one.actions.inserts) },
        });
      }),
      RUNS,
    );
  });
  it('corners from another start, the other way round, with more corners on the sides', () => {
    fc.assert(
      fc.property(anyCase, fc.integer({ min: 0, max: 7 }), fc.boolean(), (one, start, isReversed) => {
        const { member } = one.group;
        const rewrite = (polygon: Polygon): Polygon => {
          const more = polygon.flatMap((a, i): Point[] => {
            const b = polygon[(i + 1) % polygon.length]!;
            return [a, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]];
          });
          const turned = more.map((_, i) => more[(i + start) % more.length]!);
          return isReversed ? turned.reverse() : turned;
        };
        expectSame(one, {
          ...one,
          group: {
            ...one.group,
            member: {
              ...member,
              outline: member.outline === null ? null : rewrite(member.outline),
              openings: member.openings.map(rewrite).reverse(),
            },
          },
        });
      }),
      RUNS,
    );
  });
});

describe('load', () => {
  // With a lever arm the bending resistance itself depends on the tension, so only the other modes grow in step.
  it('k times the load: k times every ratio, k² of the steel interaction', () => {
    fc.assert(
      fc.property(anyCase, fc.integer({ min: 1, max: 400 }), (one, percent) => {
        const k = percent / 100;
        const plain: Case = { ...one, group: { ...one.group, leverArm: null } };
        const times = (value: number) => k * value;
        const inserts = one.actions.inserts.map(({ N, Vx, Vy }) => ({ N: times(N), Vx: times(Vx), Vy: times(Vy) }));
        const { compression } = one.actions;
        const actions = {
          inserts,
          compression: compression === null ? null : { ...compression, force: times(compression.force) },
        };
        const [a, b] = [explain(plain), explain({ ...plain, actions })];
        const powers = (result: AnchorageResult, power: number, factor: number) => [
          ...result.rows.map(({ ratio }) => (ratio ?? 0) * factor),
          ...result.interaction.map(({ kind, ratio }) => ratio * (kind === 'steel' ? factor ** power : factor)),
        ];
        const [grown, found] = [powers(a, 2, k), powers(b, 1, 1)];
        expect(found).toHaveLength(grown.length);
        for (const [i, ratio] of found.entries()) expect(isSame(ratio, grown[i]!)).toBe(true);
      }),
      RUNS,
    );
  });
  it('half the load is never worse than the whole', () => {
    fc.assert(
      fc.property(anyCase, (one) => {
        const half = one.actions.inserts.map(({ N, Vx, Vy }) => ({ N: N / 2, Vx: Vx / 2, Vy: Vy / 2 }));
        const { compression } = one.actions;
        const actions = {
          inserts: half,
          compression: compression === null ? null : { ...compression, force: compression.force / 2 },
        };
        expect(check({ ...one, actions }).ratio).toBeLessThanOrEqual(check(one).ratio * (1 + SAME));
      }),
      RUNS,
    );
  });
});

describe('more is never worse', () => {
  /** One insert or two beside a long straight edge, no corner and no other edge within reach; both loads toward the edge. */
  const besideEdge = fc
    .record({
      standard: fc.constantFrom(...standardNames),
      c: fc.integer({ min: 40, max: 400 }),
      h: fc.integer({ min: 60, max: 140 }),
      more: fc.integer({ min: 5, max: 200 }),
      strength: fc.integer({ min: 12, max: 80 }),
      foot: fc.integer({ min: 34, max: 60 }),
      pair: fc.integer({ min: 0, max: 300 }),
      isCracked: fc.boolean(),
    })
    .map((drawn) => ({ ...drawn, pair: drawn.pair < 60 ? 0 : drawn.pair }));
  type Beside = typeof besideEdge extends fc.Arbitrary<infer T> ? T : never;

  const sample = fc.sample(anyCase, { numRuns: 1, seed: 1 })[0]!.group;
  function place({ standard, c, h, more, strength, foot, pair, isCracked }: Beside): Case {
    const group: AnchorageGroup = {
      ...sample,
      standard,
      concrete: { strength, cracked: isCracked, lightweightFactor: 1 },
      member: {
        thickness: h + more,
        outline: [
          [0, 0],
          [6000, 0],
          [6000, 6000],
          [0, 6000],
        ],
        openings: [],
      },
      insert: {
        ...sample.insert,
        embedment: h,
        shaftDiameter: 24,
        foot: { kind: 'diameter', diameter: foot, thickness: 5 },
      },
      positions: [{ id: 'A', x: c, y: 3000 }, ...(pair > 0 ? [{ id: 'B', x: c, y: 3000 + pair }] : [])],
      leverArm: null,
      splitting: { criticalEdge: 200, minimumThickness: 60 },
      hangers: [],
      hairpins: [],
    };
    const actions = group.positions.map(() => ({ N: 8000, Vx: -6000, Vy: 1000 }));
    return { group, actions: { inserts: actions, compression: null } };
  }
  function expectNoWorse(before: Beside, after: Beside): void {
    expect(check(place(after)).ratio).toBeLessThanOrEqual(check(place(before)).ratio * (1 + 1e-12));
  }
  const by = fc.integer({ min: 1, max: 60 });

  it('stronger concrete, for any group without bars', () => {
    fc.assert(
      fc.property(anyCase, by, (one, more) => {
        const withStrength = (strength: number): Case => ({
          ...one,
          group: { ...one.group, hangers: [], hairpins: [], concrete: { ...one.group.concrete, strength } },
        });
        const { strength } = one.group.concrete;
        expect(check(withStrength(strength + more / 10)).ratio).toBeLessThanOrEqual(
          check(withStrength(strength)).ratio * (1 + 1e-12),
        );
      }),
      RUNS,
    );
  });
  it('a larger foot, for any group', () => {
    fc.assert(
      fc.property(anyCase, by, (one, more) => {
        const { foot } = one.group.insert;
        if (foot.kind !== 'diameter') throw new Error('random groups have a foot by diameter');
        const larger = { ...one.group.insert, foot: { ...foot, diameter: foot.diameter + more / 10 } };
        expect(check({ ...one, group: { ...one.group, insert: larger } }).ratio).toBeLessThanOrEqual(check(one).ratio);
      }),
      RUNS,
    );
  });
  it('farther from the edge', () => {
    // Farther in than max(10 h_ef, 60 d) no other edge comes near: 400 + 60 of 6000 mm.
    fc.assert(
      fc.property(besideEdge, by, (one, more) => {
        expectNoWorse(one, { ...one, c: one.c + more });
      }),
      RUNS,
    );
  });
  it('a thicker member', () => {
    fc.assert(
      fc.property(besideEdge, by, (one, more) => {
        expectNoWorse(one, { ...one, more: one.more + more });
      }),
      RUNS,
    );
  });
  it('deeper in a member as much thicker, where blow-out does not start', () => {
    fc.assert(
      fc.property(
        besideEdge.filter(({ c }) => c > 100),
        by,
        (one, more) => {
          expectNoWorse(one, { ...one, h: one.h + more });
        },
      ),
      RUNS,
    );
  });

  // By ACI 318 only: in a thin member EN 1992-4 falls by a hair with c1 (jumps.test.ts).
  it('farther from one of the two edges of a corner, by ACI 318', () => {
    const any = fc.record({
      standard: fc.constantFrom<StandardName>('ACI 318-19', 'ACI 318M-19'),
      c1: fc.integer({ min: 25, max: 400 }),
      c2: fc.integer({ min: 25, max: 400 }),
      h: fc.integer({ min: 60, max: 200 }),
      degrees: fc.integer({ min: 0, max: 359 }),
    });
    fc.assert(
      fc.property(any, by, ({ standard, c1, c2, h, degrees }, more) => {
        const at = (x: number): Case => {
          const beside = { standard, c: x, h, more: 40, strength: 36, foot: 40, pair: 0, isCracked: true };
          const { group } = place(beside);
          const angle = (degrees * Math.PI) / 180;
          const action = { N: 8000, Vx: 6000 * Math.cos(angle), Vy: 6000 * Math.sin(angle) };
          return {
            group: { ...group, positions: [{ id: 'A', x, y: c2 }] },
            actions: { inserts: [action], compression: null },
          };
        };
        expect(check(at(c1 + more)).ratio).toBeLessThanOrEqual(check(at(c1)).ratio * (1 + 1e-12));
      }),
      RUNS,
    );
  });
  it('deeper by ACI 318, without an edge, up to 635 mm and from there on', () => {
    const depth = fc.integer({ min: 400, max: 9000 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(fc.constantFrom<StandardName>('ACI 318-19', 'ACI 318M-19'), depth, by, (standard, h, more) => {
        fc.pre(h > 635 || h + more <= 635);
        const at = (embedment: number): Case => {
          const { group, actions } = place({
            standard,
            c: 100,
            h: embedment,
            more: 40,
            strength: 36,
            foot: 60,
            pair: 0,
            isCracked: true,
          });
          return { group: { ...group, member: { ...group.member, outline: null } }, actions };
        };
        expect(check(at(h + more)).ratio).toBeLessThanOrEqual(check(at(h)).ratio * (1 + 1e-12));
      }),
      RUNS,
    );
  });
});

describe('continuity', () => {
  const mix = (a: number, b: number, t: number) => a + (b - a) * t;

  /** From one case to another in a straight line, all measures and loads at once; panel and options stay those of the first. */
  function goBetween({ group, actions }: Case, to: Case, t: number): Case {
    const [from, end] = [group.insert, to.group.insert];
    const isAlone = group.positions.length === 1;
    return {
      group: {
        ...group,
        concrete: { ...group.concrete, strength: mix(group.concrete.strength, to.group.concrete.strength, t) },
        member: { ...group.member, thickness: mix(group.member.thickness, to.group.member.thickness, t) },
        insert: {
          ...from,
          embedment: mix(from.embedment, end.embedment, t),
          shaftDiameter: mix(from.shaftDiameter, end.shaftDiameter, t),
        },
        positions: group.positions.map((p, i) => {
          const q = to.group.positions[i] ?? p;
          return { id: p.id, x: mix(p.x, q.x, t), y: mix(p.y, q.y, t) };
        }),
      },
      // Groups in tension, single inserts in both: which insert's shear reaches which row is a jump of its own (front row).
      actions: {
        compression: actions.compression,
        inserts: actions.inserts.map(({ N, Vx, Vy }, i) => {
          const other = to.actions.inserts[i] ?? { N, Vx, Vy };
          return {
            N: mix(N, other.N, t),
            Vx: isAlone ? mix(Vx, other.Vx, t) : 0,
            Vy: isAlone ? mix(Vy, other.Vy, t) : 0,
          };
        }),
      },
    };
  }

  /**
   * What must change for the ratio to jump; each kind of change is a known jump with a test of its own: which rows apply and which
   * inserts and edges they name, edges within reach, direction of the squares, k8 or k_cp, edge stirrups, psi_M, notes, l_f and bond
   * limits.
   */
  function listSwitches(one: Case): string {
    const p = prepareCase(one);
    const { embedment, shaftDiameter } = one.group.insert;
    const { rows } = explainAnchorage(p, one.actions, false);
    const reaches = [1.5 * embedment, one.group.splitting?.criticalEdge ?? 0];
    return JSON.stringify([
      rows.map(({ mode, applies, inserts, edge, direction, factors, notes }) => [
        mode,
        applies,
        inserts,
        edge,
        direction === null ? 0 : ((direction * 180) / Math.PI + 3600.005).toFixed(2),
        factors.k_8 ?? factors.k_cp,
        mode === 'concrete-edge' && (factors.psi_re ?? factors.psi_c),
        factors.psi_M === 1,
        notes.map((note) => note.replace(/[\d.-]+/g, '#')),
      ]),
      reaches.map((reach) =>
        p.near.map((list) =>
          list
            .filter(({ distance }) => distance < reach)
            .map(({ kind, side }) => `${kind}${side}`)
            .sort(),
        ),
      ),
      [shaftDiameter <= 24, one.group.concrete.strength <= 50],
    ]);
  }

  const ratioAt = (a: Case, b: Case, t: number): number => {
    try {
      return check(goBetween(a, b, t)).ratio;
    } catch {
      return Number.NaN;
    }
  };

  /** Halves an interval 36 times toward its larger step; gives the two ends. */
  function closeIn(a: Case, b: Case, from: number, to: number): readonly [number, number] {
    let [low, high] = [from, to];
    let [atLow, atHigh] = [ratioAt(a, b, low), ratioAt(a, b, high)];
    for (let i = 0; i < 36; i++) {
      const middle = (low + high) / 2;
      const atMiddle = ratioAt(a, b, middle);
      if (Math.abs(atMiddle - atLow) > Math.abs(atHigh - atMiddle)) [high, atHigh] = [middle, atMiddle];
      else [low, atLow] = [middle, atMiddle];
    }
    return [low, high];
  }

  it('a ratio jumps only where one of the known switches turns', () => {
    const STEPS = 40;
    let jumps = 0;
    fc.assert(
      fc.property(anyCase, anyCase, (a, b) => {
        const values = Array.from({ length: STEPS + 1 }, (_, i) => ratioAt(a, b, i / STEPS));
        const steps = values.slice(1).map((value, i) => Math.abs(value - values[i]!));
        // The two intervals that stand out most from their neighbours.
        const standOut = (i: number) => steps[i]! - ((steps[i - 1] ?? 0) + (steps[i + 1] ?? 0)) / 2;
        const worst = steps
          .map((_, i) => i)
          .filter((i) => Number.isFinite(standOut(i)))
          .sort((p, q) => standOut(q) - standOut(p))
          .slice(0, 2);
        for (const i of worst) {
          const [low, high] = closeIn(a, b, i / STEPS, (i + 1) / STEPS);
          const [before, after] = [ratioAt(a, b, low), ratioAt(a, b, high)];
          // 2^-36 of a step: what is left there and is not rounding is a jump.
          if (!(Math.abs(after - before) > 1e-5 * Math.max(before, after) + 1e-6)) continue;
          jumps += 1;
          const [one, other] = [goBetween(a, b, low), goBetween(a, b, high)];
          expect(listSwitches(other), `jump from ${before} to ${after}`).not.toBe(listSwitches(one));
        }
      }),
      { ...RUNS, numRuns: 300 },
    );
    expect(jumps).toBeGreaterThan(50);
  });
});
