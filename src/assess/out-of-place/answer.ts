import { decideVerdict } from '../../engine/checks/verdict.ts';
import { findEdition } from '../../engine/standards/editions.ts';
import type { StandardName } from '../../engine/standards/standard-name.ts';
import { ENGINE_VERSION } from '../../engine/version.ts';
import type { ConnectionState } from '../connection-answer.ts';
import type { AnswerSettings, AskedRole, OutOfPlaceCase } from './case.ts';
import { type FilledCase, fillCase } from './fill-case.ts';
import { type CaseFault, findCaseFaults } from './find-case-faults.ts';
import { DIRECTIONS, findLimit, findLoadRatio, type Limit, type LoadRatio, preparePossible } from './limits.ts';
import { listSteps, type NextSteps } from './next-steps.ts';

/** What can be said of an insert in the wrong place. */
export type OutOfPlaceAnswer = StoppedAnswer | UnansweredCase | ComputedAnswer;

/** A lifting or brace insert: no number at all. */
export interface StoppedAnswer {
  readonly kind: 'stopped';
  readonly role: Exclude<AskedRole, 'fixing'>;
}

/** Something is missing or cannot be. */
export interface UnansweredCase {
  readonly kind: 'unanswered';
  readonly faults: readonly CaseFault[];
}

export interface ComputedAnswer {
  readonly kind: 'answer';
  readonly standard: StandardName;
  /** Document and edition by which it was computed, and the engine's version. */
  readonly document: string;
  readonly version: string;
  readonly given: OutOfPlaceCase;
  readonly filled: FilledCase;
  readonly state: ConnectionState;
  /** Largest loads one way at a time, in the order of DIRECTIONS; empty where it cannot be computed. */
  readonly limits: readonly Limit[];
  /** The stated loads together; null where they were not said. */
  readonly load: LoadRatio | null;
  /** Why it can never be a pass, or cannot be computed. */
  readonly reasons: readonly string[];
  readonly steps: NextSteps;
}

/** Concrete that a foot should keep beside it [mm], and the widest that feet are over the thread (our choices). */
const BESIDE_FOOT = 10;
const WIDEST_FOOT = 3;

/** A foot that stands out of the concrete, or whose width is not known and that may leave hardly any concrete beside it. */
function findFootReason({ nearest, thread, known, insert }: FilledCase): readonly string[] {
  if (known.footDiameter_mm !== null)
    return nearest < insert.footWidth / 2
      ? [`${nearest} mm from an edge: the foot, ${insert.footWidth} mm wide, would stand out of the concrete`]
      : [];
  const widest = WIDEST_FOOT * thread.diameter;
  return nearest < widest / 2 + BESIDE_FOOT
    ? [
        `${nearest} mm from an edge: a foot may be up to ${widest} mm wide, and less than ${BESIDE_FOOT} mm of concrete would be left beside it; say the true width of the foot`,
      ]
    : [];
}

/** The widest body over the thread (our choice): least spacings of a document go by the body's width. */
const WIDEST_BODY = 2;

/** Neighbours may stand nearer than the document's own least spacing, if the body is as wide as bodies may be. */
function findSpacingReason(
  { neighbours, spacing, thread, known }: FilledCase,
  standard: StandardName,
): readonly string[] {
  if (neighbours === 0 || known.bodyDiameter_mm !== null) return [];
  const widest = WIDEST_BODY * thread.diameter;
  const least = findEdition(standard).leastDistances?.(widest, false);
  if (least === undefined || least.spacing === null || spacing >= least.spacing) return [];
  return [
    `${spacing} mm to a neighbour: with a body of up to ${widest} mm that is below ${least.spacing} mm (${least.source}); say the true width of the body`,
  ];
}

function decideState(load: LoadRatio | null, reasons: readonly string[]): ConnectionState {
  if (load === null) return 'strength not checked';
  const verdict = decideVerdict(load.ratio, reasons.length === 0);
  if (verdict === 'fail') return 'fails';
  return verdict === 'pass' ? 'passes' : 'not covered';
}

/**
 * Answers for an insert that is not where it was drawn: what it carries at most, each way, by what is known of it, with the rest taken on
 * the safe side. A lifting or brace insert is not answered, and neither is a case in which something is missing that cannot be assumed.
 */
export function answerOutOfPlace(given: OutOfPlaceCase, settings: AnswerSettings): OutOfPlaceAnswer {
  if (given.role === 'lifting' || given.role === 'brace') return { kind: 'stopped', role: given.role };
  const faults = findCaseFaults(given, settings.known);
  if (faults.length > 0) return { kind: 'unanswered', faults };
  const { standard } = settings;
  const filled = fillCase(given, settings);
  const head = {
    kind: 'answer',
    standard,
    document: findEdition(standard).document,
    version: ENGINE_VERSION,
    given,
    filled,
  } as const;
  const possible = preparePossible(filled, standard);
  if (!possible.ok) {
    const state = 'cannot be computed';
    return {
      ...head,
      state,
      limits: [],
      load: null,
      reasons: possible.reasons,
      steps: listSteps(filled, state, possible.reasons),
    };
  }
  const limits = DIRECTIONS.map((direction) => findLimit(possible.all, direction, filled.shares));
  const load = filled.load === null ? null : findLoadRatio(possible.all, filled.load, filled.shares);
  const uncovered = [...limits, ...(load === null ? [] : [load])].flatMap((one) => one.uncovered);
  const reasons = [...new Set([...findFootReason(filled), ...findSpacingReason(filled, standard), ...uncovered])];
  const state = decideState(load, reasons);
  return {
    ...head,
    state,
    limits: limits.map(({ direction, force, mode }) => ({ direction, force, mode })),
    load: load === null ? null : { ratio: load.ratio, mode: load.mode, shear: load.shear },
    reasons,
    steps: listSteps(filled, state, reasons),
  };
}
