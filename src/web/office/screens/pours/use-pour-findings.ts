import { proxy } from 'comlink';
import { useEffect, useState } from 'preact/hooks';
import { askJobWorker } from '../../../parts/worker-client.ts';
import type { PourFindings } from '../../../worker/pour-findings.ts';
import { tell } from '../../state/messages.ts';
import type { JobSession } from '../../state/session.ts';
import { tellError } from '../../state/use-asked.ts';

/** What is found of each pour; one that is being looked at is missing, or has its findings of before the last edit. */
export interface PoursFound {
  readonly byPour: ReadonlyMap<string, PourFindings>;
  readonly isBusy: boolean;
}

/** Findings come one pour after the other; they are shown in lots [ms]. */
const LOT_MS = 200;

/** Keeps up with the edits of the job. */
export function usePourFindings(session: JobSession): PoursFound {
  const [found, setFound] = useState<PoursFound>({ byPour: new Map(), isBusy: true });
  const { file } = session;
  useEffect(() => {
    const state = { isGone: false };
    setFound((before) => ({ ...before, isBusy: true }));
    const waiting: PourFindings[] = [];
    const show = () => {
      const lot = waiting.splice(0);
      if (state.isGone || lot.length === 0) return;
      setFound((before) => ({
        ...before,
        byPour: new Map([...before.byPour, ...lot.map((one) => [one.pour, one] as const)]),
      }));
    };
    const take = (one: PourFindings) => {
      waiting.push(one);
      if (waiting.length === 1) setTimeout(show, LOT_MS);
    };
    askJobWorker(async (worker) => worker.pourFindings(proxy(take))).then(
      (isDone) => {
        show();
        if (isDone && !state.isGone) setFound((before) => ({ ...before, isBusy: false }));
      },
      (error: unknown) => {
        if (state.isGone) return;
        setFound((before) => ({ ...before, isBusy: false }));
        tell('fault', `The pours could not be looked at: ${tellError(error)}`);
      },
    );
    return () => {
      state.isGone = true;
    };
  }, [file]);
  return found;
}
