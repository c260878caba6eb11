import type { Asked, Capacities } from '../../../../assess/capacities.ts';
import type { ChooseOptions } from '../../../../assess/choose/choice.ts';
import type { Remedies } from '../../../../assess/remedies/remedy.ts';
import { askJobWorker } from '../../../parts/worker-client.ts';
import type { ChoiceAnswer, EditionsCompared } from '../../../worker/connection-questions.ts';

/** What a connection carries at most. */
export function askCapacities(mark: string): Promise<Asked<Capacities>> {
  return askJobWorker(async (worker) => worker.capacities(mark));
}

/** What would make a connection pass. */
export function askRemedies(mark: string): Promise<Remedies> {
  return askJobWorker((worker) => worker.remedies(mark));
}

/** A connection by every edition. */
export function askEditions(mark: string): Promise<EditionsCompared> {
  return askJobWorker((worker) => worker.editions(mark));
}

/** Every insert of the catalogue tried in a connection. */
export function askChoice(mark: string, options: ChooseOptions): Promise<ChoiceAnswer> {
  return askJobWorker((worker) => worker.choose(mark, options));
}
