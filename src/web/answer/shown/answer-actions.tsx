import { useSignal } from '@preact/signals';
import type { ComputedAnswer, StoppedAnswer } from '../../../assess/out-of-place/answer.ts';
import { writeOutOfPlaceText } from '../../../say/out-of-place-text.ts';
import { Button } from '../../parts/button.tsx';
import { units } from '../../parts/units.ts';
import { shareText } from './share-text.ts';
import styles from './shown.module.css';

const SAID = {
  sent: 'Handed on.',
  copied: 'The text is copied: paste it into a message.',
  'not sent': 'Nothing was sent.',
  shown: 'This browser does not let a page copy: mark the text below and copy it.',
} as const;

/** What can be done with an answer: send it, print it, go on with it. */
export function AnswerActions({ answer }: { readonly answer: ComputedAnswer | StoppedAnswer }) {
  const said = useSignal('');
  const text = useSignal<string | null>(null);
  const isBusy = useSignal(false);
  const share = async () => {
    const written = writeOutOfPlaceText(answer, units.value);
    if (written === null) return;
    const shared = await shareText(written);
    text.value = shared === 'shown' ? written : null;
    said.value = SAID[shared];
  };
  /** What takes longer, told while it goes on and when it fails. */
  const run = async (going: string, work: () => Promise<string>) => {
    isBusy.value = true;
    said.value = going;
    try {
      said.value = await work();
    } catch (error) {
      said.value = `It did not work: ${error instanceof Error ? error.message : String(error)}`;
    } finally {
      isBusy.value = false;
    }
  };
  const print = (computed: ComputedAnswer) =>
    run('The page is being written …', async () => {
      const { givePdf } = await import('./give-answer.ts');
      await givePdf(computed, units.value);
      return 'The page is with your downloads.';
    });
  const goOn = (computed: ComputedAnswer) =>
    run('The job is being made …', async () => {
      const { giveJob } = await import('./give-answer.ts');
      const made = await giveJob(computed, units.value);
      if (made.kind === 'refused') return made.why;
      if (made.kind === 'downloaded')
        return 'No server answers: the job is with your downloads. Drop it into the office later.';
      location.assign(made.address);
      return 'The job is made.';
    });
  return (
    <div class={`${styles.actions} not-printed`}>
      <div class={styles.buttons}>
        <Button kind="main" onPress={() => void share()}>
          Send as text
        </Button>
        {answer.kind === 'answer' && (
          <>
            <Button onPress={() => void print(answer)} isDisabled={isBusy.value}>
              Page as PDF
            </Button>
            <Button onPress={() => void goOn(answer)} isDisabled={isBusy.value}>
              Make a job of it
            </Button>
          </>
        )}
      </div>
      <p class={styles.told} role="status">
        {said.value}
      </p>
      {text.value !== null && (
        <textarea class={styles.text} readOnly rows={12} aria-label="The text to copy" value={text.value} />
      )}
    </div>
  );
}
