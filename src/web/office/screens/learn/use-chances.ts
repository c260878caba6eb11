import { proxy } from 'comlink';
import { useEffect, useState } from 'preact/hooks';
import type { ConnectionChance } from '../../../../assess/learn/connection-chance.ts';
import type { Learned } from '../../../../assess/learn/learn-scatter.ts';
import type { JobFile } from '../../../../job/documents/job-file.ts';
import { askJobWorker } from '../../../parts/worker-client.ts';
import { tellError } from '../../state/use-asked.ts';

/** Chances as far as they are found. */
export interface Chances {
  readonly found: readonly ConnectionChance[];
  readonly done: number;
  readonly of: number;
  readonly isBusy: boolean;
  readonly why: string | null;
}

const NONE: Chances = { found: [], done: 0, of: 0, isBusy: true, why: null };

/** A chance needs the scatter by way of holding only: no points go to the worker. */
function takeGroups({ groups }: Pick<Learned, 'groups'>): Pick<Learned, 'groups'> {
  return { groups: groups.filter(({ by }) => by === 'method').map((group) => ({ ...group, points: [], bins: [] })) };
}

/** Has the chance of every connection's plate found in the worker, anew after each edit and each record that teaches. @param learned null: still to come */
export function useChances(learned: Pick<Learned, 'groups'> | null, file: JobFile): Chances {
  const [chances, setChances] = useState<Chances>(NONE);
  useEffect(() => {
    if (learned === null) return;
    const state = { isGone: false };
    setChances(NONE);
    const take = (more: readonly ConnectionChance[], done: number, of: number) => {
      if (!state.isGone) setChances((had) => ({ ...had, found: [...had.found, ...more], done, of }));
    };
    askJobWorker((worker) => worker.plateChances(takeGroups(learned), proxy(take))).then(
      () => {
        if (!state.isGone) setChances((had) => ({ ...had, isBusy: false }));
      },
      (error: unknown) => {
        if (!state.isGone) setChances((had) => ({ ...had, isBusy: false, why: tellError(error) }));
      },
    );
    return () => {
      state.isGone = true;
    };
  }, [learned, file]);
  return chances;
}
