import type { ComponentChildren } from 'preact';
import styles from './answer.module.css';

/** How an answer is meant: told apart by colour, shape and word. `unsure` is never green. */
export type AnswerKind = 'good' | 'move' | 'wrong' | 'unsure' | 'ask' | 'plain';

/** Shape of each on a field of 32. */
const SHAPES: Readonly<Record<AnswerKind, string>> = {
  good: 'M6 17l7 7L26 9',
  move: 'M4 16h22M17 7l9 9-9 9',
  wrong: 'M7 7l18 18M25 7L7 25',
  unsure: 'M16 5v14M16 24v3',
  ask: 'M16 4L28 16 16 28 4 16z',
  plain: 'M6 16h20',
};

export interface AnswerProps {
  readonly kind: AnswerKind;
  /** The answer in a few words, large. */
  readonly words: string;
  /** What stands behind it. */
  readonly children?: ComponentChildren;
  /** Said in the middle of other things, such as what the insert before came to. */
  readonly isSmall?: boolean;
}

/** An answer: words first, large; then why. */
export function Answer({ kind, words, children, isSmall = false }: AnswerProps) {
  return (
    <section class={`${styles.answer} ${styles[kind]} ${isSmall ? styles.small : ''}`} role="status">
      <svg viewBox="0 0 32 32" class={styles.shape} aria-hidden="true">
        <path d={SHAPES[kind]} />
      </svg>
      <div class={styles.words}>
        <p class={styles.first}>{words}</p>
        {children}
      </div>
    </section>
  );
}
