import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { DifferenceOutline } from '../../../job/difference/outline-difference.ts';
import { askJobWorker } from '../../parts/worker-client.ts';
import type { StateOfJob } from '../../worker/compare-states.ts';

/** A difference that is being found by the worker. */
export type AskedDifference =
  | { readonly kind: 'asked' }
  | { readonly kind: 'found'; readonly outline: DifferenceOutline }
  | { readonly kind: 'failed'; readonly why: string };

/**
 * In what a later state of a job differs from an earlier one, found by the worker; the last answer stays while the next is on its way.
 * @param name of the question: it is asked anew when this is another
 */
export function useDifference(job: string, before: StateOfJob, after: StateOfJob, name: unknown): AskedDifference {
  const asked = useSignal<AskedDifference>({ kind: 'asked' });
  useEffect(() => {
    const question = { isLeft: false };
    const take = (answer: AskedDifference) => {
      if (!question.isLeft) asked.value = answer;
    };
    askJobWorker((worker) => worker.compare(job, before, after)).then(
      (outline) => take({ kind: 'found', outline }),
      (error: unknown) => take({ kind: 'failed', why: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      question.isLeft = true;
    };
  }, [job, name]);
  return asked.value;
}
