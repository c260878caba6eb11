import { proxy } from 'comlink';
import type { AssessOutcome, TellAnswers, TellProgress } from '../worker/assess-run.ts';
import type { JobWorker } from '../worker/job-worker.ts';
import { shareWorker } from './open-worker.ts';

/** Asks the worker that computes whole jobs: `askJobWorker((worker) => worker.open(file))`. Functions are handed over by comlink's `proxy`. */
export const askJobWorker = shareWorker<JobWorker>('onepour-worker');

/**
 * Has everything assessed that an edit touched since it was last, or the whole job the first time; answers come in lots, while they are found.
 * @param marks of the panels to look at; null: all
 */
export function assessInWorker(
  marks: readonly string[] | null,
  onAnswers: TellAnswers,
  onProgress: TellProgress,
): Promise<AssessOutcome> {
  return askJobWorker(async (worker) => worker.assess(marks, proxy(onAnswers), proxy(onProgress)));
}
