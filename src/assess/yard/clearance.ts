import { ENGINE_VERSION } from '../../engine/version.ts';
import type { Person } from '../../records/person.ts';
import type { BodyOf } from '../../records/record.ts';
import { mayBePoured } from '../set-out/plan-pour.ts';
import type { OpenPoint, PieceReport, YardContext } from './piece-report.ts';
import { mayDo } from './rights.ts';

/** What a person may do about pouring a piece now. */
export interface ClearanceChoice {
  readonly may: 'clear' | 'clear with a condition' | 'only on an override' | 'refused';
  /** What stands against clearing, with who can lift it. */
  readonly because: readonly OpenPoint[];
  /** Why it is refused, or can only be overridden, beside the open points; null: nothing beside them. */
  readonly why: string | null;
  readonly mayOverride: boolean;
}

const CAST_PHASES: ReadonlySet<PieceReport['phase']> = new Set([
  'poured',
  'stripped',
  'opened up',
  'surveyed',
  'bolted up',
]);

/** Why nobody may clear or override: it would be nothing to pour by. Null: somebody may. */
function findRefusal({ index, revision }: YardContext, { phase }: PieceReport): string | null {
  const now = index.file.job.revision;
  if (!mayBePoured(now) || now?.letter !== revision.letter)
    return 'no revision for construction is in force: nothing may be cleared by it';
  if (phase === 'scrapped') return 'this piece is scrapped';
  if (CAST_PHASES.has(phase)) return 'it is poured: a clearance is too late';
  return null;
}

/**
 * Whether a person may clear a piece: without a condition where nothing is open; with one where what is open can be lifted by a condition; else only on
 * an override, by those who may.
 * @param person null: nobody on the people list
 */
export function judgeClearance(context: YardContext, report: PieceReport, person: Person | null): ClearanceChoice {
  const because = report.openPoints;
  const refusal = findRefusal(context, report);
  if (refusal !== null) return { may: 'refused', because, why: refusal, mayOverride: false };
  const mayOverride = mayDo(person, 'override').may;
  const right = mayDo(person, because.length === 0 ? 'clear' : 'clear with a condition');
  if (!right.may) return { may: mayOverride ? 'only on an override' : 'refused', because, why: right.why, mayOverride };
  if (because.some(({ isHard }) => isHard))
    return { may: mayOverride ? 'only on an override' : 'refused', because, why: null, mayOverride };
  return { may: because.length === 0 ? 'clear' : 'clear with a condition', because, why: null, mayOverride };
}

/** As many open points as a record holds. */
const MOST_POINTS = 500;
/** As long as a record lets words be. */
const LONGEST = 2000;

/**
 * What a clearance or an override is given on: enough to compute it again and to compare.
 * @param head of the server's log as the device knows it
 */
export function freeze(
  context: YardContext,
  report: PieceReport,
  head: BodyOf<'cleared'>['frozen']['head'],
): BodyOf<'cleared'>['frozen'] {
  return {
    revision: { ...context.revision },
    engine: ENGINE_VERSION,
    inputs: report.clearance.inputs,
    open: report.openPoints.slice(0, MOST_POINTS).map(({ words }) => words.slice(0, LONGEST)),
    head,
  };
}
