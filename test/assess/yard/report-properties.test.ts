import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeze, judgeClearance } from '../../../src/assess/yard/clearance.ts';
import type { PieceReport } from '../../../src/assess/yard/piece-report.ts';
import type { FactRecord, KindAndBody } from '../../../src/records/record.ts';
import {
  checkAll,
  demoFile,
  formCheck,
  PEOPLE,
  PieceTablet,
  pieceOf,
  reportOf,
  sight,
  taped,
  type Who,
} from './yard-sample.ts';

const sample = pieceOf(demoFile(), 'P12', '1');
const numbers = sample.plan.setOut.items.map(({ number }) => number);
const people = Object.keys(PEOPLE) as Who[]; // safe: its own keys

/** What a tablet may do; offsets few, so that what was computed once serves again. */
type Act =
  | { readonly act: 'look'; readonly number: number; readonly fault: 'type' | 'firm' | null }
  | { readonly act: 'tape'; readonly number: number; readonly x: number }
  | { readonly act: 'form'; readonly off: number }
  | { readonly act: 'accept'; readonly number: number }
  | { readonly act: 'clear' | 'hold' | 'override' | 'pour' | 'withdraw' | 'all'; readonly which: number }
  | { readonly act: 'meet'; readonly other: number };

const number = fc.constantFrom(...numbers);
const act: fc.Arbitrary<Act> = fc.oneof(
  fc.record({
    act: fc.constant('look' as const),
    number,
    fault: fc.constantFrom(null, null, 'type' as const, 'firm' as const),
  }),
  fc.record({ act: fc.constant('tape' as const), number, x: fc.constantFrom(0, 0, 7, 30) }),
  fc.record({ act: fc.constant('form' as const), off: fc.constantFrom(0, 0, 9) }),
  fc.record({ act: fc.constant('accept' as const), number }),
  fc.record({
    act: fc.constantFrom(
      'clear' as const,
      'hold' as const,
      'override' as const,
      'pour' as const,
      'withdraw' as const,
      'all' as const,
    ),
    which: fc.nat(),
  }),
  fc.record({ act: fc.constant('meet' as const), other: fc.nat(2) }),
);

interface Step {
  readonly tablet: number;
  readonly who: Who;
  readonly step: Act;
}

const steps = fc.array(fc.record({ tablet: fc.nat(2), who: fc.constantFrom(...people), step: act }), {
  minLength: 1,
  maxLength: 24,
});

function roleOf(who: Who) {
  return PEOPLE[who].roles[0]!;
}

function acceptOn(tablet: PieceTablet, who: Who, of: number): KindAndBody | null {
  const insert = tablet.report().inserts.find(({ item }) => item.number === of);
  const about = [...(insert?.sight?.latest ?? []), ...(insert?.place?.latest ?? [])].map(({ id }) => id);
  if (about.length === 0) return null;
  return {
    kind: 'decision',
    body: {
      about,
      verdict: 'accepted',
      role: roleOf(who),
      registration: PEOPLE[who].registration,
      reason: 'it will do',
      computed: { state: 'works', ratio: null, engine: '1' },
    },
  };
}

function draftOf(
  tablet: PieceTablet,
  who: Who,
  step: Exclude<Act, { act: 'meet' }>,
): readonly [number | null, KindAndBody] | null {
  switch (step.act) {
    case 'look':
      return [step.number, sight(2, step.fault === null ? {} : { [step.fault]: false })];
    case 'tape':
      return [step.number, taped(sample.plan, step.number, { x: step.x })];
    case 'form':
      return [null, formCheck(sample, { length: step.off })];
    case 'accept': {
      const draft = acceptOn(tablet, who, step.number);
      return draft === null ? null : [step.number, draft];
    }
    case 'clear':
    case 'override': {
      const frozen = freeze(sample.context, tablet.report(), null);
      if (step.act === 'override')
        return [null, { kind: 'override', body: { role: roleOf(who), reason: 'truck', frozen } }];
      const condition = frozen.open.length === 0 ? null : 'before the concrete reaches it';
      return [null, { kind: 'cleared', body: { role: roleOf(who), condition, frozen } }];
    }
    case 'hold':
      return [null, { kind: 'held', body: { reason: 'wait' } }];
    case 'pour':
      return [null, { kind: 'poured', body: { reason: null } }];
    case 'withdraw': {
      const known = [...tablet.known.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
      const target = known[step.which % Math.max(1, known.length)];
      if (target === undefined) return null;
      const place = sample.plan.setOut.items.find(({ castIn }) => castIn.key === target.item);
      return [place?.number ?? null, { kind: 'correction', body: { of: target.id, reason: 'mistyped' } }];
    }
    case 'all':
      checkAll(tablet);
      return null;
  }
}

function play(all: readonly Step[]): readonly PieceTablet[] {
  const tablets = [0, 1, 2].map((place) => new PieceTablet(place + 1, sample));
  for (const [minute, { tablet, who, step }] of all.entries()) {
    const writer = tablets[tablet]!;
    if (step.act === 'meet') {
      const other = tablets[step.other]!;
      writer.learn(other);
      other.learn(writer);
      continue;
    }
    const draft = draftOf(writer, who, step);
    if (draft !== null) writer.write(who, draft[0], draft[1], minute);
  }
  return tablets;
}

function recordsOf(tablets: readonly PieceTablet[]): readonly FactRecord[] {
  return [...new Map(tablets.flatMap(({ written }) => written).map((record) => [record.id, record])).values()];
}

/** A report without what only repeats the records. */
function essence({ state: _state, plan: _plan, ...rest }: PieceReport) {
  return rest;
}

const PERMISSIONS = ['refused', 'only on an override', 'clear with a condition', 'clear'];

function mayOf(report: PieceReport): number {
  return PERMISSIONS.indexOf(judgeClearance(sample.context, report, PEOPLE.qa).may);
}

describe('a report', () => {
  it('is the same in whatever order the records came, once or twice', () => {
    fc.assert(
      fc.property(steps, fc.infiniteStream(fc.nat()), (all, chance) => {
        const records = recordsOf(play(all));
        const keyed = [...records, ...records].map((record) => [chance.next().value as number, record] as const); // endless
        const shuffled = keyed.sort(([a], [b]) => a - b).map(([, record]) => record);
        expect(essence(reportOf(sample, shuffled))).toEqual(essence(reportOf(sample, records)));
      }),
      { numRuns: 150 },
    );
  });

  it('of a piece that was poured and not cleared shows it, whatever else is recorded', () => {
    fc.assert(
      fc.property(steps, steps, (before, after) => {
        const tablets = play(before);
        for (const tablet of tablets) tablet.learn(...tablets);
        const [first, ...others] = tablets as [PieceTablet, ...PieceTablet[]]; // three
        first.write('foreman', null, { kind: 'poured', body: { reason: null } }, 100);
        const then = first.report();
        const wasFlagged = then.flags.some(({ kind }) => kind.startsWith('poured'));
        for (const other of others) other.learn(first);
        const rest = after.filter(({ step }) => step.act !== 'withdraw' && step.act !== 'meet');
        for (const [minute, { who, step }] of rest.entries()) {
          const draft = step.act === 'meet' ? null : draftOf(first, who, step);
          if (draft !== null) first.write(who, draft[0], draft[1], 200 + minute);
        }
        const now = first.report();
        if (wasFlagged) expect(now.flags.some(({ kind }) => kind.startsWith('poured'))).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('is never made easier to clear by a fault that is found', () => {
    const faults = fc.oneof(
      fc.record({
        act: fc.constant('look' as const),
        number,
        fault: fc.constantFrom('type' as const, 'firm' as const),
      }),
      fc.record({ act: fc.constant('tape' as const), number, x: fc.constantFrom(7, 30) }),
      fc.record({ act: fc.constant('form' as const), off: fc.constant(9) }),
      fc.record({ act: fc.constant('hold' as const), which: fc.constant(0) }),
    );
    fc.assert(
      fc.property(steps, faults, (all, fault) => {
        const tablets = play(all.filter(({ step }) => step.act !== 'pour'));
        const before = reportOf(sample, recordsOf(tablets));
        // Written by somebody who knows nothing of the others: nothing that he found may be lost by that.
        const alone = new PieceTablet(9, sample);
        const draft = draftOf(alone, 'checker', fault)!;
        alone.write('checker', draft[0], draft[1], 300);
        const after = reportOf(sample, recordsOf([...tablets, alone]));
        expect(mayOf(after)).toBeLessThanOrEqual(mayOf(before));
        if (before.clearance.is === 'none')
          expect(after.clearance.is === 'none' || after.clearance.is === 'held').toBe(true);
        expect(after.phase === 'cleared' && before.phase !== 'cleared').toBe(false);
      }),
      { numRuns: 100 },
    );
  });

  it('of a piece in which everything is right raises nothing, whoever looked at what and where', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(2), { minLength: numbers.length, maxLength: numbers.length }), (who) => {
        const tablets = [0, 1, 2].map((place) => new PieceTablet(place + 1, sample));
        tablets[0]!.write('checker', null, formCheck(sample));
        for (const [place, of] of numbers.entries()) {
          const tablet = tablets[who[place]!]!;
          tablet.write('checker', of, sight(2));
          tablet.write('checker', of, taped(sample.plan, of));
        }
        const report = reportOf(sample, recordsOf(tablets));
        expect([report.openPoints, report.flags, report.counts[2].left]).toEqual([[], [], 0]);
      }),
      { numRuns: 30 },
    );
  });
});
