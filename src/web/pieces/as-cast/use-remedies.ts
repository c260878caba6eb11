import { useEffect, useState } from 'preact/hooks';
import type { AsCastConnection, AsCastReport } from '../../../assess/as-cast/as-cast-report.ts';

/** Connections whose remedies are computed: they are when they are first read, which takes its time. */
const computed = new WeakSet<AsCastConnection>();

/** How far the remedies of a report are computed. */
export interface RemedyProgress {
  readonly done: number;
  readonly of: number;
  readonly isReady: boolean;
}

/** Those of which somebody must choose a remedy. */
function wantsRemedies({ state }: AsCastConnection): boolean {
  return state !== 'fine' && state !== 'not surveyed';
}

/** Computes remedies one connection after the other and lets the page breathe between. @param isWanted the same function each time */
export function useRemedies(
  report: AsCastReport | null,
  isWanted: (connection: AsCastConnection) => boolean = wantsRemedies,
): RemedyProgress {
  const [, setCount] = useState(0);
  const wanted = report === null ? [] : report.connections.filter(isWanted);
  const done = wanted.filter((one) => computed.has(one)).length;
  useEffect(() => {
    const next = wanted.find((one) => !computed.has(one));
    if (next === undefined) return;
    const timer = setTimeout(() => {
      // Read so that it is computed.
      const { remedies } = next;
      computed.add(next);
      setCount((count) => count + remedies.length + 1);
    });
    return () => clearTimeout(timer);
  }, [report, isWanted, done]);
  return { done, of: wanted.length, isReady: report !== null && done === wanted.length };
}
