import type { CastIn } from '../documents/cast-in.ts';
import type { Concrete } from '../documents/concrete.ts';
import type { Connection } from '../documents/connection.ts';
import type { JobFile } from '../documents/job-file.ts';
import type { Panel } from '../documents/panel.ts';
import type { Recipe } from './edit-job.ts';

/** New values of one entry, found by its permanent key. */
export interface NewValues<T> {
  readonly key: string;
  readonly set: Partial<T>;
}

/** A change as data, so that it can be handed from one thread to another and made later. */
export interface ValueReplacement {
  readonly castIns: readonly NewValues<CastIn>[];
  readonly connections: readonly NewValues<Connection>[];
  readonly panels: readonly NewValues<Panel>[];
  /** Mixes that the job gets besides. */
  readonly concretes: readonly Concrete[];
}

export const NOTHING_REPLACED: ValueReplacement = { castIns: [], connections: [], panels: [], concretes: [] };

/** The job that a change was found for is no longer the one that it is made in. */
export class ReplacementError extends Error {
  override readonly name = 'ReplacementError';
}

function put<T extends { readonly key: string }>(
  list: readonly T[],
  values: readonly NewValues<T>[],
  what: string,
): void {
  for (const { key, set } of values) {
    const entry = list.find((one) => one.key === key);
    if (entry === undefined)
      throw new ReplacementError(`the ${what} to be changed is no longer in the job; look again`);
    Object.assign(entry, set);
  }
}

/**
 * The recipe of a change that is data. It throws a ReplacementError where an entry is no longer there, or a mix of that name is there already
 * with other values.
 */
export function replaceValues({ castIns, connections, panels, concretes }: ValueReplacement): Recipe {
  return (draft) => {
    const job = draft.job as JobFile['job'];
    put(job.castIns, castIns, 'insert');
    put(job.connections, connections, 'connection');
    put(job.panels, panels, 'panel');
    for (const mix of concretes) {
      const known = job.concretes.find(({ id }) => id === mix.id);
      if (known === undefined) draft.job.concretes.push(structuredClone(mix) as (typeof draft.job.concretes)[number]);
      else if (known.strength28_MPa !== mix.strength28_MPa)
        throw new ReplacementError(
          `concrete ${mix.id} is in the job already, of ${known.strength28_MPa} MPa; look again`,
        );
    }
  };
}
