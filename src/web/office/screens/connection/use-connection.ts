import { type ReadonlySignal, useComputed } from '@preact/signals';
import { type LookedAt, lookAtConnection } from '../../../../assess/look-at-connection.ts';
import type { Recipe } from '../../../../job/edit/edit-job.ts';
import { useOffice } from '../../state/office.ts';

/** Makes an edit; a text says why it may not stand. */
export type Commit = (label: string, recipe: Recipe) => string | null;

/** A connection as it is shown at this moment, worked out; null where the job has none of that mark. */
export function useConnection(mark: string): ReadonlySignal<LookedAt | null> {
  const { session } = useOffice();
  return useComputed(() => lookAtConnection(session.shown.value, mark));
}
