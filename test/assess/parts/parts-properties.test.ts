import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addLines, nameKind } from '../../../src/assess/parts/add-lines.ts';
import { listBench } from '../../../src/assess/parts/bench.ts';
import { addDays } from '../../../src/assess/parts/calendar.ts';
import { findJobParts, type JobParts } from '../../../src/assess/parts/job-parts.ts';
import { findNeeds, type KindNeed } from '../../../src/assess/parts/needs.ts';
import type { PartLine } from '../../../src/assess/parts/part-kind.ts';
import type { Json } from '../../job/sample-job.ts';
import { indexParts } from './parts-job.ts';

const FIRST = '2026-12-01';
const PANELS = ['P1', 'P2', 'P3'] as const;

interface PourPlan {
  readonly day: number;
  readonly castings: readonly number[];
}

/** Pours over some days, each casting each panel up to twice, at least one of them. */
const pourPlans = fc.array(
  fc.record({
    day: fc.nat(5),
    castings: fc.tuple(fc.nat(2), fc.nat(2), fc.nat(2)).filter((castings) => castings.some((count) => count > 0)),
  }),
  { maxLength: 5 },
);

function writePours(plans: readonly PourPlan[]): readonly Json[] {
  let serial = 0;
  return plans.map(({ day, castings }, i) => ({
    id: `T${i}`,
    bed: 'B1',
    date: addDays(FIRST, day),
    pieces: castings.flatMap((count, k) =>
      Array.from({ length: count }, () => {
        serial += 1;
        return { panel: PANELS[k], serial: String(serial) };
      }),
    ),
  }));
}

function plan(plans: readonly PourPlan[]): { readonly parts: JobParts; readonly needs: readonly KindNeed[] } {
  const index = indexParts({ pours: writePours(plans) });
  const parts = findJobParts(index);
  return { parts, needs: findNeeds(index, parts, null, FIRST) };
}

const countIn = (lines: readonly PartLine[]) => new Map(lines.map(({ kind, count }) => [nameKind(kind), count]));

describe('parts of a job', () => {
  it('are those of its pours and of the panels that no pour casts', () => {
    fc.assert(
      fc.property(pourPlans, (plans) => {
        const { parts } = plan(plans);
        const cast = new Set(plans.flatMap(({ castings }) => PANELS.filter((_, k) => castings[k]! > 0)));
        expect(parts.unplanned.map((panel) => panel.parts.mark)).toEqual(PANELS.filter((mark) => !cast.has(mark)));
        const lists = [...parts.pours, ...parts.unplanned.map((panel) => panel.parts)];
        for (const [name, count] of countIn(parts.lines)) {
          const sum = lists.reduce((all, { lines }) => all + (countIn(lines).get(name) ?? 0), 0);
          expect(sum).toBe(count);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('are the same in whatever order and however bracketed they are added', () => {
    const { parts } = plan([]);
    const lists = parts.unplanned.map((panel) => ({ lines: panel.parts.lines, times: 1 }));
    fc.assert(
      fc.property(fc.shuffledSubarray(lists, { minLength: lists.length }), fc.nat(lists.length), (shuffled, cut) => {
        const halves = [shuffled.slice(0, cut), shuffled.slice(cut)].map(addLines);
        expect(addLines(halves.map((lines) => ({ lines, times: 1 })))).toEqual(addLines(lists));
      }),
    );
  });
});

describe('splitting a pour in two', () => {
  /** One pour of a plan in two of the same day, its castings shared between them. */
  const split = fc
    .tuple(
      fc.nat(5),
      fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 })),
      fc.tuple(fc.nat(3), fc.nat(3)),
      pourPlans,
    )
    .map(([day, first, second, others]) => {
      const castings = (counts: readonly number[]) => [...counts, 0];
      const whole = castings([first[0] + second[0], first[1] + second[1]]);
      const parts = [first, second].map((counts) => ({ day, castings: castings(counts) }));
      return {
        together: [...others, { day, castings: whole }],
        apart: [...others, ...parts.filter((pour) => pour.castings.some((count) => count > 0))],
      };
    });

  it('never lowers the need of anything, nor what its benches hold', () => {
    fc.assert(
      fc.property(split, ({ together, apart }) => {
        const before = plan(together);
        const after = plan(apart);
        const needed = new Map(after.needs.map((need) => [nameKind(need.kind), need.needed]));
        for (const { kind, needed: once } of before.needs)
          expect(needed.get(nameKind(kind))).toBeGreaterThanOrEqual(once);
        const rule = { share: 0.05, atLeast: 1 };
        const laidOut = ({ pours }: JobParts) => {
          const sums = new Map<string, number>();
          for (const { kind, count, spares } of pours.flatMap((pour) => listBench(pour, rule)))
            sums.set(nameKind(kind), (sums.get(nameKind(kind)) ?? 0) + count + spares);
          return sums;
        };
        const sums = laidOut(after.parts);
        for (const [name, sum] of laidOut(before.parts)) expect(sums.get(name)).toBeGreaterThanOrEqual(sum);
      }),
      { numRuns: 40 },
    );
  });
});

describe('need against stock', () => {
  it('is short of what stock and orders do not cover, and packs cover it', () => {
    const index = indexParts();
    const parts = findJobParts(index);
    const line = fc.record({ inStock: fc.nat(30), onOrder: fc.nat(30), day: fc.nat(20) });
    fc.assert(
      fc.property(
        fc.constantFrom('F16', 'NAIL', 'PLATE-16', 'BOARD 2xM16 200x0'),
        fc.array(line, { maxLength: 3 }),
        (id, lines) => {
          const stock = lines.map(({ day, ...counts }) => ({ id, ...counts, arrives: addDays(FIRST, day) }));
          const need = findNeeds(index, parts, stock, FIRST).find(({ kind }) => kind.id === id)!;
          const all = lines.reduce((sum, { inStock, onOrder }) => sum + inStock + onOrder, 0);
          expect(all + need.toOrder).toBeGreaterThanOrEqual(need.needed);
          expect(need.packs * need.kind.packSize).toBeGreaterThanOrEqual(need.toOrder);
          for (const { date, needed, short } of need.byPour) {
            const there = lines.reduce(
              (sum, { inStock, onOrder, day }) => sum + inStock + (addDays(FIRST, day) < date ? onOrder : 0),
              0,
            );
            expect(there + short).toBeGreaterThanOrEqual(needed);
            expect(short === 0 || there + short === needed).toBe(true);
            expect(needed).toBeLessThanOrEqual(need.needed);
          }
        },
      ),
    );
  });
});
