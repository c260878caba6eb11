import type { Bed } from '../../job/documents/yard.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { setOutPanel } from '../set-out/set-out-panel.ts';
import { findCheckKey, findFormKey } from './check-key.ts';
import type { PiecePlan } from './piece-plan.ts';
import { planStops } from './stops.ts';

/** A casting that is planned: its id, the mark that it is cast by, and the bed that it lies on (null: none is named). */
export interface PlannedPiece {
  readonly id: string;
  readonly mark: string;
  readonly bed: Bed | null;
}

/**
 * What the yard must do and check for one piece, from the job alone: nothing of what happened is in it, so that the same piece of the same
 * revision has the same plan on every device.
 * @throws Error when the job has no panel of that mark
 */
export function planPiece(index: JobIndex, { id, mark, bed }: PlannedPiece): PiecePlan {
  const setOut = setOutPanel(index, mark, bed);
  return {
    piece: id,
    setOut,
    keys: new Map(setOut.items.map((item) => [item.castIn.key, findCheckKey(setOut, item)])),
    formKey: findFormKey(setOut),
    stops: planStops(setOut, id),
    afterScreed: setOut.items.filter(({ place }) => place === 'trowelled face'),
  };
}
