import { useEffect, useState } from 'preact/hooks';
import type { AsCastReport } from '../../../assess/as-cast/as-cast-report.ts';
import { recallAsCast, rememberAsCast } from '../../../assess/as-cast/remember-as-cast.ts';
import type { OpenPiece } from '../read-piece.ts';

type Ground = Pick<OpenPiece, 'context' | 'plan' | 'state'>;

/** Where the inserts of a piece came out, and what that does to its connections; computed once for each state of its records. */
export function reportPieceAsCast(ground: Ground): AsCastReport {
  return rememberAsCast(ground);
}

/** The same for a screen: it is drawn first, then computed. Null: still to come; what was known before stays meanwhile. */
export function useAsCast(piece: Ground): AsCastReport | null {
  const { context, plan, state } = piece;
  const [shown, setShown] = useState<AsCastReport | null>(() => recallAsCast(piece));
  useEffect(() => {
    const had = recallAsCast({ context, plan, state });
    if (had !== null) {
      setShown(had);
      return;
    }
    const timer = setTimeout(() => setShown(reportPieceAsCast({ context, plan, state })));
    return () => clearTimeout(timer);
  }, [context, plan, state]);
  return shown;
}
