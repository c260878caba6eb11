import type { Asked, Capacities } from '../../../../assess/capacities.ts';
import type { ChooseOptions } from '../../../../assess/choose/choice.ts';
import type { Remedies } from '../../../../assess/remedies/remedy.ts';
import type { NoZone, PositionZone, ZoneSubject } from '../../../../assess/zone/trace-position-zone.ts';
import { askJobWorker } from '../../../parts/worker-client.ts';
import type { ChoiceAnswer, EditionsCompared } from '../../../worker/connection-questions.ts';
import type { FoundBox } from '../../../worker/zone-questions.ts';

/** What a connection carries at most. */
export function askCapacities(mark: string): Promise<Asked<Capacities>> {
  return askJobWorker(async (worker) => worker.capacities(mark));
}

/** What would make a connection pass. */
export function askRemedies(mark: string): Promise<Remedies> {
  return askJobWorker((worker) => worker.remedies(mark));
}

/** Where an insert of a connection, or all together, may sit. */
export function askZone(mark: string, subject: ZoneSubject): Promise<PositionZone | NoZone> {
  return askJobWorker(async (worker) => worker.positionZone(mark, subject));
}

/** The box that holds for all inserts of a connection at once. */
export function askBox(mark: string): Promise<FoundBox> {
  return askJobWorker((worker) => worker.positionBox(mark));
}

/** A connection by every edition. */
export function askEditions(mark: string): Promise<EditionsCompared> {
  return askJobWorker((worker) => worker.editions(mark));
}

/** Every insert of the catalogue tried in a connection. */
export function askChoice(mark: string, options: ChooseOptions): Promise<ChoiceAnswer> {
  return askJobWorker((worker) => worker.choose(mark, options));
}
