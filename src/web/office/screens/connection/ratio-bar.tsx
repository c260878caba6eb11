import type { ConnectionState } from '../../../../assess/connection-answer.ts';
import { showRatio } from '../../../../say/numbers.ts';
import styles from './ratio-bar.module.css';

/** A bar is full at this ratio; the line stands where the resistance is used up. */
const FULL = 1.5;

/** How much of a resistance is used: as a length, and as a number. */
export function RatioBar({
  ratio,
  state,
  isLarge = false,
}: {
  readonly ratio: number | null;
  readonly state: ConnectionState;
  readonly isLarge?: boolean;
}) {
  const share = ratio === null ? 0 : Math.min(1, ratio / FULL);
  const kind = state === 'passes' || state === 'fails' ? styles[state] : '';
  return (
    <div class={`${styles.ratio} ${kind} ${isLarge ? styles.large : ''}`}>
      <div class={styles.track} aria-hidden="true">
        <div class={styles.fill} style={{ width: `${100 * share}%` }} />
        <div class={styles.full} />
      </div>
      <span class={styles.number}>{ratio === null ? '–' : showRatio(ratio)}</span>
    </div>
  );
}
