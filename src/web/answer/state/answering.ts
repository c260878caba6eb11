import { effect, type ReadonlySignal, signal } from '@preact/signals';
import { answerOutOfPlace, type OutOfPlaceAnswer } from '../../../assess/out-of-place/answer.ts';
import { given, settings } from './case-state.ts';

/** From the last key to the answer: a hand that types on is not kept waiting [ms]. */
const PAUSE = 80;

/** The answer to what was said, computed anew a moment after each change. */
export function startAnswering(): ReadonlySignal<OutOfPlaceAnswer> {
  const answer = signal(answerOutOfPlace(given.value, settings.value));
  let waiting: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const [said, known] = [given.value, settings.value];
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      answer.value = answerOutOfPlace(said, known);
    }, PAUSE);
  });
  return answer;
}
