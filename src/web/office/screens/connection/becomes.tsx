import { showRatio } from '../../../../say/numbers.ts';
import styles from './becomes.module.css';

/** A ratio as it is, and as it would be. */
export function Becomes({ before, after }: { readonly before: number | null; readonly after: number | null }) {
  return (
    <span class={styles.becomes}>
      {showRatio(before)}
      <svg viewBox="0 0 16 16" class={styles.arrow} aria-hidden="true">
        <path d="M1.5 8h12M9.5 4l4 4l-4 4" />
      </svg>
      <span class="aloud">then</span>
      {showRatio(after)}
    </span>
  );
}
