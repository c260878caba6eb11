import type { PieceState } from '../../records/fold/piece-state.ts';
import { worseOf } from '../../records/fold/worse-of.ts';
import type { RecordOf } from '../../records/record.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import type { YardContext } from '../yard/piece-report.ts';
import { ofKind, readSlots } from '../yard/piece-slots.ts';
import { findPerson, mayDo } from '../yard/rights.ts';
import {
  evaluateTests,
  findCharacteristic,
  type ProofLoadAnswer,
  type ProofLoadResult,
  type TestVerdict,
} from './evaluate-tests.ts';
import { findPullBasis, type PullBasis } from './pull-basis.ts';
import { type ProofLoadPlan, planProofLoad } from './test-plan.ts';

const S_PER_MIN = 60;

type Pulled = RecordOf<'proof-loaded'>['body'];

/** One pull, by its plan. */
export interface PullTest {
  readonly record: RecordOf<'proof-loaded'>;
  /** Against the plan, by its own feet and gauge; null: nothing to hold it against. */
  readonly answer: ProofLoadAnswer | null;
}

/** An insert that shall be pulled, or was. */
export interface PulledInsert {
  readonly item: SetOutItem;
  readonly isPlanned: boolean;
  readonly tests: readonly PullTest[];
  /** A test that failed stays so, whatever was pulled after it; one that left a gap may be made again. */
  readonly state: 'passes' | 'fails' | 'not shown' | 'not pulled';
}

/** Everything about the pull tests of a piece. */
export interface PullReport {
  readonly record: RecordOf<'proof-planned'> | null;
  /** Whoever planned may not: the plan does not count as one. */
  readonly isWithoutRight: boolean;
  /** What was planned from; null: its inserts are not of one type any more, or there is no plan. */
  readonly basis: PullBasis | null;
  readonly plan: ProofLoadPlan | null;
  readonly inserts: readonly PulledInsert[];
  /** Planned inserts that the revision in force does not have. */
  readonly gone: number;
  /** Of all tests together; null: no plan to hold them against. */
  readonly answer: ProofLoadAnswer | null;
}

/** The plan as its record says it, held against feet that stand so far from the axis [mm]. */
function planOf({ body }: RecordOf<'proof-planned'>, basis: PullBasis, support: number): ProofLoadPlan {
  return planProofLoad({
    lot: basis.lot,
    design: body.load_kN,
    steelYield: basis.steelYield,
    depth: basis.depth,
    support,
    count: body.items.length,
    factor: 1,
    hold: body.hold_min * S_PER_MIN,
    displacement: body.movement_mm ?? Number.POSITIVE_INFINITY,
  });
}

function readResult(body: Pulled, name: string, { displacement }: ProofLoadPlan): ProofLoadResult {
  const isAsked = Number.isFinite(displacement.value);
  return {
    name,
    load: body.load_kN,
    displacement: body.movement_mm ?? (isAsked ? null : 0),
    held: body.held_min * S_PER_MIN,
    failed: body.failure !== null,
  };
}

/**
 * One pull against its plan: feet that nobody measured are taken as standing in the cone.
 * @param day on which it was pulled, as 2026-11-30
 */
function judgePull(
  planned: RecordOf<'proof-planned'>,
  basis: PullBasis,
  body: Pulled,
  { day, number }: { readonly day: string; readonly number: number },
): ProofLoadAnswer {
  const whole = planOf(planned, basis, body.support_mm ?? 0);
  const plan = { ...whole, count: { ...whole.count, value: 1 } };
  const gauge = {
    serial: body.gauge?.serial ?? null,
    calibrated: null,
    goodUntil: body.gauge?.calibratedUntil ?? null,
  };
  return evaluateTests(plan, [readResult(body, `no. ${number}`, plan)], gauge, day);
}

/** Day on which an insert was pulled (UTC). */
function dayOf({ body, measuredAt }: RecordOf<'proof-loaded'>): string {
  return (body.at ?? measuredAt).slice(0, 10);
}

function stateOf(tests: readonly PullTest[]): PulledInsert['state'] {
  if (tests.length === 0) return 'not pulled';
  if (tests.some(({ answer }) => answer?.state === 'fails')) return 'fails';
  return tests.some(({ answer }) => answer?.state === 'passes') ? 'passes' : 'not shown';
}

/** Loads at which inserts gave way whose cone was free [kN]: what a characteristic value may come from. */
function listFailures(inserts: readonly PulledInsert[]): readonly number[] {
  return inserts
    .flatMap(({ tests }) => tests)
    .filter(
      ({ record, answer }) => record.body.failure !== null && answer?.gaps.includes('the cone is not tested') === false,
    )
    .map(({ record }) => record.body.load_kN);
}

/** All tests together: passes only where every planned insert does. */
function sumUp(inserts: readonly PulledInsert[], gone: number): ProofLoadAnswer {
  const planned = inserts.filter(({ isPlanned }) => isPlanned);
  const missing = gone + planned.filter(({ state }) => state === 'not pulled').length;
  const open = planned.filter(({ state }) => state === 'not shown');
  const gaps = open.flatMap(({ tests }) => tests).flatMap(({ answer }) => answer?.gaps ?? []);
  const fails = inserts.some(({ state }) => state === 'fails');
  const passes = missing === 0 && planned.length > 0 && planned.every(({ state }) => state === 'passes');
  return {
    tests: inserts.flatMap(({ tests }) => tests).flatMap(({ answer }): readonly TestVerdict[] => answer?.tests ?? []),
    state: fails ? 'fails' : passes ? 'passes' : 'not shown',
    missing,
    gaps: [...new Set([...(missing > 0 ? (['tests are missing'] as const) : []), ...gaps])],
    characteristic: findCharacteristic(listFailures(inserts), 'normal'),
  };
}

/** The pull tests of a piece: what was planned, what was pulled, what each test and all together come to. */
export function reportPullTests({ index, people }: YardContext, plan: PiecePlan, state: PieceState): PullReport {
  const latest = ofKind(readSlots(state).of(null, 'proof plan')?.latest ?? [], 'proof-planned');
  const record = latest.length === 0 ? null : worseOf(latest);
  const pulled = ofKind(state.beside.get('proof-loaded') ?? [], 'proof-loaded');
  const { items } = plan.setOut;
  const wanted = new Set(record?.body.items ?? []);
  const planned = items.filter(({ castIn }) => wanted.has(castIn.key));
  const isWithoutRight = record !== null && !mayDo(findPerson(people, record.person), 'plan a pull test').may;
  const found = record === null || isWithoutRight ? null : findPullBasis(index, plan, planned);
  const basis = typeof found === 'string' ? null : found;
  const inserts = items.flatMap((item): PulledInsert[] => {
    const own = pulled.filter((one) => one.item === item.castIn.key);
    const isPlanned = wanted.has(item.castIn.key);
    if (own.length === 0 && !isPlanned) return [];
    const isAlike = basis !== null && item.item?.id === basis.item.id;
    const tests = own.map((one) => ({
      record: one,
      answer:
        record !== null && isAlike
          ? judgePull(record, basis, one.body, { day: dayOf(one), number: item.number })
          : null,
    }));
    return [{ item, isPlanned, tests, state: stateOf(tests) }];
  });
  const gone = wanted.size - planned.length;
  return {
    record,
    isWithoutRight,
    basis,
    plan: record === null || basis === null ? null : planOf(record, basis, Number.POSITIVE_INFINITY),
    inserts,
    gone,
    answer: basis === null ? null : sumUp(inserts, gone),
  };
}

/** What all pieces of a job that were pulled come to, of inserts of one type in one concrete. */
export interface PooledPulls {
  readonly type: string;
  readonly concrete: string;
  readonly pulled: number;
  readonly characteristic: ProofLoadAnswer['characteristic'];
}

/** Tests of several pieces put together by type and concrete: a characteristic value wants more failures than one piece gives. */
export function poolPulls(reports: readonly PullReport[]): readonly PooledPulls[] {
  const groups = new Map<string, { readonly basis: PullBasis; readonly inserts: PulledInsert[] }>();
  for (const { basis, inserts } of reports) {
    if (basis === null) continue;
    const name = JSON.stringify([basis.item.id, basis.concrete]);
    const group = groups.get(name) ?? { basis, inserts: [] };
    groups.set(name, group);
    group.inserts.push(...inserts.filter(({ tests }) => tests.some(({ answer }) => answer !== null)));
  }
  return [...groups.values()]
    .filter(({ inserts }) => inserts.length > 0)
    .map(({ basis, inserts }) => ({
      type: basis.item.id,
      concrete: basis.concrete,
      pulled: inserts.reduce((sum, { tests }) => sum + tests.length, 0),
      characteristic: findCharacteristic(listFailures(inserts), 'normal'),
    }));
}
