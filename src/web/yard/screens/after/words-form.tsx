import { useSignal } from '@preact/signals';
import { BigKey } from '../../parts/big-key.tsx';
import { FrameKeys } from '../../parts/frame-keys.tsx';
import styles from './after.module.css';

/** Asks for a few words: a comment, or where the piece stands. */
export function WordsForm({
  title,
  take,
  onWords,
  onBack,
}: {
  readonly title: string;
  readonly take: string;
  readonly onWords: (words: string) => void;
  readonly onBack: () => void;
}) {
  const typed = useSignal('');
  const words = typed.value.trim();
  return (
    <form
      class={styles.form}
      onSubmit={(event) => {
        event.preventDefault();
        if (words !== '') onWords(words);
      }}
    >
      <label class={styles.field}>
        {title}
        <input
          type="text"
          maxLength={500}
          autocomplete="off"
          value={typed.value}
          onInput={({ currentTarget }) => (typed.value = currentTarget.value)}
        />
      </label>
      <FrameKeys>
        <BigKey onPress={onBack}>Back</BigKey>
        <BigKey kind="main" isDisabled={words === ''} onPress={() => onWords(words)}>
          {take}
        </BigKey>
      </FrameKeys>
    </form>
  );
}
