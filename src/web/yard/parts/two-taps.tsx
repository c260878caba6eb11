import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import { BigKey, type KeyKind } from './big-key.tsx';
import styles from './two-taps.module.css';

export interface TwoTapsProps {
  /** On the key. */
  readonly children: ComponentChildren;
  readonly more?: ComponentChildren;
  readonly kind?: KeyKind;
  readonly isDisabled?: boolean;
  /** The question that the second tap answers. */
  readonly question: string;
  /** What is said beside the question, such as what is left. */
  readonly says?: ComponentChildren;
  /** On the second key: what it does. */
  readonly yes: string;
  readonly yesKind?: KeyKind;
  readonly onYes: () => void;
}

/** A key for what cannot be taken lightly: a second tap, in another place, does it. A wet sleeve does not clear a panel. */
export function TwoTaps({ question, says, yes, yesKind, onYes, ...key }: TwoTapsProps) {
  const isAsking = useSignal(false);
  return (
    <>
      <BigKey {...key} onPress={() => (isAsking.value = true)} />
      {isAsking.value && (
        <Question
          question={question}
          yes={yes}
          kind={yesKind ?? 'main'}
          onNo={() => (isAsking.value = false)}
          onYes={onYes}
        >
          {says}
        </Question>
      )}
    </>
  );
}

interface QuestionProps {
  readonly question: string;
  readonly yes: string;
  readonly kind?: KeyKind;
  readonly no?: string;
  readonly children?: ComponentChildren;
  readonly onYes: () => void;
  /** Takes the question away: called after yes too. */
  readonly onNo: () => void;
}

/** A question over the screen, away from where keys are; Escape is no. */
export function Question({ question, yes, kind = 'main', no = 'No, back', children, onYes, onNo }: QuestionProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      class={styles.question}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onNo();
      }}
    >
      <h2 id={id}>{question}</h2>
      {children !== undefined && <div class={styles.says}>{children}</div>}
      <div class={styles.keys}>
        <BigKey
          kind={kind}
          onPress={() => {
            onYes();
            onNo();
          }}
        >
          {yes}
        </BigKey>
        <BigKey onPress={onNo}>{no}</BigKey>
      </div>
    </dialog>
  );
}
