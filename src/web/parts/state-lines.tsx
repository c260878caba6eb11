import styles from './state-lines.module.css';
import { type ShownState, StateMark } from './state-mark.tsx';

/** Which connections are in which state, a line a state. */
export function StateLines({
  lines,
}: {
  readonly lines: readonly { readonly state: ShownState; readonly text: string }[];
}) {
  return (
    <ul class={styles.lines}>
      {lines.map(({ state, text }) => (
        <li key={state}>
          <StateMark state={state} isBare /> {text}
        </li>
      ))}
    </ul>
  );
}
