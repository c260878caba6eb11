import { useEffect, useState } from 'preact/hooks';
import type { AsCastReport } from '../../../assess/as-cast/as-cast-report.ts';
import { reportAsCast } from '../../../assess/as-cast/report-as-cast.ts';
import type { PieceState } from '../../../records/fold/piece-state.ts';
import type { OpenPiece } from '../read-piece.ts';

type Ground = Pick<OpenPiece, 'context' | 'plan' | 'state'>;

interface Known extends Pick<Ground, 'context' | 'plan'> {
  readonly report: AsCastReport;
}

/** What was computed of a state of a piece: screens that follow each other do not compute it anew. It goes when the state goes. */
const known = new WeakMap<PieceState, Known>();

function recall({ context, plan, state }: Ground): AsCastReport | null {
  const had = known.get(state);
  return had !== undefined && had.context === context && had.plan === plan ? had.report : null;
}

/** Where the inserts of a piece came out, and what that does to its connections; computed once for each state of its records. */
export function reportPieceAsCast(ground: Ground): AsCastReport {
  const had = recall(ground);
  if (had !== null) return had;
  const { context, plan, state } = ground;
  const report = reportAsCast(context, plan, state);
  known.set(state, { context, plan, report });
  return report;
}

/** The same for a screen: it is drawn first, then computed. Null: still to come; what was known before stays meanwhile. */
export function useAsCast(piece: Ground): AsCastReport | null {
  const { context, plan, state } = piece;
  const [shown, setShown] = useState<AsCastReport | null>(() => recall(piece));
  useEffect(() => {
    const had = recall({ context, plan, state });
    if (had !== null) {
      setShown(had);
      return;
    }
    const timer = setTimeout(() => setShown(reportPieceAsCast({ context, plan, state })));
    return () => clearTimeout(timer);
  }, [context, plan, state]);
  return shown;
}
