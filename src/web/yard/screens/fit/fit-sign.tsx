import type { FitKind } from '../../../../say/fit-answer.ts';
import styles from './fit.module.css';

/** Shape of each answer on a field of 32, as answers themselves have them. */
const SHAPES: Readonly<Record<FitKind, string>> = {
  good: 'M6 17l7 7L26 9',
  move: 'M4 16h22M17 7l9 9-9 9',
  wrong: 'M7 7l18 18M25 7L7 25',
  unsure: 'M16 5v14M16 24v3',
  ask: 'M16 4L28 16 16 28 4 16z',
};

/** The sign of an answer in a row; the words stand beside it. */
export function FitSign({ kind }: { readonly kind: FitKind }) {
  return (
    <svg viewBox="0 0 32 32" class={styles.sign} aria-hidden="true">
      <path d={SHAPES[kind]} />
    </svg>
  );
}
