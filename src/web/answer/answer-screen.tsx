import type { ReadonlySignal } from '@preact/signals';
import type { OutOfPlaceAnswer } from '../../assess/out-of-place/answer.ts';
import { sayLeast } from '../../say/out-of-place-words.ts';
import { writerOf } from '../../say/quantities.ts';
import { Button } from '../parts/button.tsx';
import { StateMark } from '../parts/state-mark.tsx';
import { units } from '../parts/units.ts';
import styles from './answer-screen.module.css';
import { CaseForm } from './form/case-form.tsx';
import { KnownForm, RulesForm } from './form/known-form.tsx';
import { AnswerView } from './shown/answer-view.tsx';
import { MissingView } from './shown/missing-view.tsx';
import { StopView } from './shown/stop-view.tsx';
import { clearCase } from './state/case-state.ts';

/** The answer in one line, in sight while the values are typed. */
function InSight({ answer }: { readonly answer: OutOfPlaceAnswer }) {
  if (answer.kind !== 'answer') return null;
  const least = sayLeast(answer, writerOf(units.value));
  return (
    <a class={`${styles.inSight} not-printed`} href="#answer">
      <StateMark state={answer.state} />
      {least !== null && <span class={styles.most}>{least}</span>}
    </a>
  );
}

/** The whole page: what is said beside, or on a phone above, what follows from it. */
export function AnswerScreen({ answer }: { readonly answer: ReadonlySignal<OutOfPlaceAnswer> }) {
  const shown = answer.value;
  const faults = shown.kind === 'unanswered' ? shown.faults : [];
  return (
    <div class={styles.screen}>
      <header class={`${styles.head} not-printed`}>
        <h1>Insert out of place</h1>
        <a class={styles.office} href="/">
          Office
        </a>
        <Button kind="quiet" onPress={clearCase}>
          Clear
        </Button>
      </header>
      <main class={styles.main}>
        <section class={`${styles.said} not-printed`} aria-label="What is said of the insert">
          <CaseForm faults={faults} />
          {shown.kind !== 'stopped' && <KnownForm faults={faults} />}
          <RulesForm />
        </section>
        <section class={styles.answer} id="answer" aria-label="The answer" tabIndex={-1}>
          {shown.kind === 'answer' && <AnswerView answer={shown} />}
          {shown.kind === 'stopped' && <StopView answer={shown} />}
          {shown.kind === 'unanswered' && <MissingView answer={shown} />}
        </section>
      </main>
      <InSight answer={shown} />
    </div>
  );
}
