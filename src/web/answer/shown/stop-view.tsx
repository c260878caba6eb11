import type { StoppedAnswer } from '../../../assess/out-of-place/answer.ts';
import { sayStop } from '../../../say/out-of-place-words.ts';
import { AnswerActions } from './answer-actions.tsx';
import styles from './shown.module.css';

/** A lifting or brace insert: why there is no number, and who answers. */
export function StopView({ answer }: { readonly answer: StoppedAnswer }) {
  const [first, ...rest] = sayStop(answer);
  return (
    <>
      <section class={styles.stop} role="alert">
        <h2>{first}</h2>
        {rest.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </section>
      <AnswerActions answer={answer} />
    </>
  );
}
