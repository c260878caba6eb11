import { summariseSample } from '../../engine/statistics/intervals.ts';
import { annexDFactor, oneSidedFactor } from '../../engine/statistics/tolerance-factor.ts';
import type { ProofLoadPlan } from './test-plan.ts';

/** One insert that was pulled. */
export interface ProofLoadResult {
  readonly name: string;
  /** Load that was held, or that it failed at [kN]. */
  readonly load: number;
  /** At the end of the hold [mm]; null: not read. */
  readonly displacement: number | null;
  /** How long it was held [s]; null: not written down. */
  readonly held: number | null;
  /** It gave way, at the proof load or when it was pulled on. */
  readonly failed: boolean;
}

export interface Gauge {
  readonly serial: string | null;
  /** Day of its calibration, as 2026-11-30; null: not known, as where its sticker names only the last day. */
  readonly calibrated: string | null;
  /** The last day that it is good for; null: not known. */
  readonly goodUntil: string | null;
}

/** What one test comes to; `not shown`: something that must be known is missing. */
export interface TestVerdict {
  readonly name: string;
  readonly state: 'passes' | 'fails' | 'not shown';
  readonly why: readonly (
    | 'failed'
    | 'load not reached'
    | 'moved too far'
    | 'displacement not read'
    | 'hold not shown'
    | 'held too short'
  )[];
}

/** Characteristic value of loads at failure: the 5 % fractile by three published ways [kN]. */
export interface CharacteristicLoad {
  readonly kind: 'value';
  readonly count: number;
  readonly mean: number;
  readonly deviation: number;
  readonly variation: number;
  readonly distribution: 'normal' | 'lognormal';
  /** 75 % confidence, deviation from the sample. */
  readonly at75: number;
  /** 90 %, as assessment documents of fasteners ask. */
  readonly at90: number;
  /** EN 1990, Annex D. */
  readonly annexD: number;
}

export interface ProofLoadAnswer {
  readonly tests: readonly TestVerdict[];
  /** `not shown` while a test or the gauge leaves a gap; never better than the worst test. */
  readonly state: 'passes' | 'fails' | 'not shown';
  /** Tests that the plan asks for and that are missing. */
  readonly missing: number;
  readonly gaps: readonly (
    | 'no serial of the gauge'
    | 'no calibration date'
    | 'calibration has run out'
    | 'tests are missing'
    | 'the cone is not tested'
  )[];
  /** Of those that failed; proof loads that were held say only that each carries that much. */
  readonly characteristic:
    | CharacteristicLoad
    | { readonly kind: 'too few'; readonly count: number; readonly least: number };
}

/** From fewer failures no characteristic value is given: k is above 3 and hangs on chance. Common practice. */
const LEAST_FAILURES = 5;

/**
 * Evaluates proof-load tests against their plan.
 * @param day on which they were made, as 2026-11-30
 */
export function evaluateTests(
  plan: ProofLoadPlan,
  results: readonly ProofLoadResult[],
  gauge: Gauge,
  day: string,
  distribution: CharacteristicLoad['distribution'] = 'normal',
): ProofLoadAnswer {
  const tests = results.map((result) => judgeTest(plan, result));
  const missing = Math.max(0, plan.count.value - results.length);
  const gaps: ProofLoadAnswer['gaps'][number][] = [];
  if (gauge.serial === null) gaps.push('no serial of the gauge');
  if (gauge.goodUntil === null) gaps.push('no calibration date');
  else if ((gauge.calibrated !== null && gauge.calibrated > day) || gauge.goodUntil < day)
    gaps.push('calibration has run out');
  if (missing > 0) gaps.push('tests are missing');
  if (plan.isConfined) gaps.push('the cone is not tested');
  const fails = tests.some(({ state }) => state === 'fails');
  const isShown = gaps.length === 0 && tests.every(({ state }) => state === 'passes');
  const failures = results.filter(({ failed }) => failed).map(({ load }) => load);
  return {
    tests,
    state: fails ? 'fails' : isShown ? 'passes' : 'not shown',
    missing,
    gaps,
    characteristic: findCharacteristic(failures, distribution),
  };
}

function judgeTest(plan: ProofLoadPlan, { name, load, displacement, held, failed }: ProofLoadResult): TestVerdict {
  const why: TestVerdict['why'][number][] = [];
  const isReached = load >= plan.load.value;
  // Held first and pulled on to failure: the proof load was carried.
  const isFailedBelow = failed && load <= plan.load.value;
  if (isFailedBelow) why.push('failed');
  if (!isReached) why.push('load not reached');
  if (displacement === null) why.push('displacement not read');
  else if (displacement > plan.displacement.value) why.push('moved too far');
  if (held === null) why.push('hold not shown');
  else if (held < plan.hold.value) why.push('held too short');
  const state = isFailedBelow || why.includes('moved too far') ? 'fails' : why.length === 0 ? 'passes' : 'not shown';
  return { name, state, why };
}

/**
 * The 5 % fractile of loads at failure. Source: mean − k s with the one-sided tolerance factor for an unknown deviation (ISO 16269-6), and k_n of EN 1990, Annex D;
 * lognormal: the same of the logarithms.
 * @param loads [kN], above 0
 */
export function findCharacteristic(
  loads: readonly number[],
  distribution: CharacteristicLoad['distribution'],
): ProofLoadAnswer['characteristic'] {
  const count = loads.length;
  if (count < LEAST_FAILURES) return { kind: 'too few', count, least: LEAST_FAILURES };
  const isNormal = distribution === 'normal';
  const { mean, deviation } = summariseSample(isNormal ? loads : loads.map(Math.log), 0.95);
  const own = isNormal ? { mean, deviation } : summariseSample(loads, 0.95);
  const below = (k: number) => (isNormal ? mean - k * deviation : Math.exp(mean - k * deviation));
  const factor = (confidence: number) => oneSidedFactor({ count, share: 0.95, confidence });
  return {
    ...{ kind: 'value', count, distribution, mean: own.mean, deviation: own.deviation },
    variation: own.deviation / own.mean,
    at75: below(factor(0.75)),
    at90: below(factor(0.9)),
    annexD: below(annexDFactor(count, false)),
  };
}
