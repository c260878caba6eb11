import type { PieceState } from '../../records/fold/piece-state.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import type { YardContext } from '../yard/piece-report.ts';
import type { AsCastReport } from './as-cast-report.ts';
import { reportAsCast } from './report-as-cast.ts';

/** What a report rests on. */
interface Ground {
  readonly context: YardContext;
  readonly plan: PiecePlan;
  readonly state: PieceState;
}

interface Known extends Pick<Ground, 'context' | 'plan'> {
  readonly report: AsCastReport;
}

/** What was computed of a state of a piece: its flags and the screens that follow each other do not compute it anew. It goes when the state goes. */
const known = new WeakMap<PieceState, Known>();

/** What a piece was found to come to as cast; null: not computed yet of this state of its records. */
export function recallAsCast({ context, plan, state }: Ground): AsCastReport | null {
  const had = known.get(state);
  return had !== undefined && had.context === context && had.plan === plan ? had.report : null;
}

/** Where the inserts of a piece came out, and what that does to its connections; computed once for each state of its records. */
export function rememberAsCast(ground: Ground): AsCastReport {
  const had = recallAsCast(ground);
  if (had !== null) return had;
  const { context, plan, state } = ground;
  const report = reportAsCast(context, plan, state);
  known.set(state, { context, plan, report });
  return report;
}
