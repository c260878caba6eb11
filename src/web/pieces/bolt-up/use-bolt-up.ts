import { useMemo } from 'preact/hooks';
import type { BoltUpReport } from '../../../assess/bolt-up/bolt-up-report.ts';
import { reportBoltUp } from '../../../assess/bolt-up/report-bolt-up.ts';
import { useAsCast } from '../as-cast/use-as-cast.ts';
import type { OpenPiece } from '../read-piece.ts';

/** How a piece is bolted up, from where its inserts came out; null: still to be computed. */
export function useBoltUp({
  context,
  plan,
  state,
}: Pick<OpenPiece, 'context' | 'plan' | 'state'>): BoltUpReport | null {
  const asCast = useAsCast({ context, plan, state });
  return useMemo(
    () => (asCast === null ? null : reportBoltUp(context, plan, state, asCast)),
    [context, plan, state, asCast],
  );
}
