import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { Modal } from '../../parts/modal.tsx';
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

/** Where the question stands: over what the screen shows, or in the half of it where the key is not. */
type QuestionPlace = 'middle' | 'top' | 'bottom';

/** A place that a finger on the key does not reach. */
function findPlace(key: HTMLElement): QuestionPlace {
  const { top, height } = key.getBoundingClientRect();
  if (key.closest('main > :last-child:not(:first-child)') !== null) return 'middle';
  return top + height / 2 > innerHeight / 2 ? 'top' : 'bottom';
}

/** A key for what cannot be taken lightly: a second tap, in another place, does it. A wet sleeve does not clear a panel. */
export function TwoTaps({ question, says, yes, yesKind, onYes, ...key }: TwoTapsProps) {
  const asking = useSignal<QuestionPlace | null>(null);
  return (
    <>
      <BigKey {...key} isAsking={asking.value !== null} onPress={(pressed) => (asking.value = findPlace(pressed))} />
      {asking.value !== null && (
        <Question
          question={question}
          yes={yes}
          kind={yesKind ?? 'main'}
          place={asking.value}
          onNo={() => (asking.value = null)}
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
  /** `middle`: the key that asks is one of the screen's keys. */
  readonly place?: QuestionPlace;
  readonly no?: string;
  readonly children?: ComponentChildren;
  readonly onYes: () => void;
  /** Takes the question away: called after yes too. */
  readonly onNo: () => void;
}

/** A question over the screen, away from where keys are; Escape is no. */
export function Question({
  question,
  yes,
  kind = 'main',
  place = 'middle',
  no = 'No, back',
  children,
  onYes,
  onNo,
}: QuestionProps) {
  const id = useId();
  return (
    <Modal class={`${styles.question} ${styles[place]}`} labelledBy={id} onClose={onNo}>
      <h2 id={id}>{question}</h2>
      {children !== undefined && <div class={styles.says}>{children}</div>}
      <div class={styles.keys}>
        <BigKey onPress={onNo}>{no}</BigKey>
        <BigKey
          kind={kind}
          meaning={question}
          onPress={() => {
            onYes();
            onNo();
          }}
        >
          {yes}
        </BigKey>
      </div>
    </Modal>
  );
}
