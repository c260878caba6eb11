import styles from './state-mark.module.css';

/** What can be said of a connection, and of anything made of connections. */
export type ShownState =
  | 'passes'
  | 'fails'
  | 'not covered'
  | 'cannot be computed'
  | 'strength not checked'
  | 'computing';

/** Shape of each state on a field of 16: told apart without colour, and in grey print. */
export const STATE_SHAPES: Readonly<Record<ShownState, string>> = {
  passes: 'M3 8.5l3.2 3.3L13 4.6',
  fails: 'M3.5 3.5l9 9M12.5 3.5l-9 9',
  'not covered': 'M3 13L13 3M3 8l5-5M8 13l5-5',
  'cannot be computed': 'M8 3v6M8 12v1.2',
  'strength not checked': 'M8 3.2a4.8 4.8 0 1 0 .01 0',
  computing: 'M3.5 8h1.5M7.2 8h1.6M11 8h1.5',
};

/** The class of each state, the same in every style sheet that colours states. */
export const STATE_CLASSES: Readonly<Record<ShownState, string>> = {
  passes: 'passes',
  fails: 'fails',
  'not covered': 'uncovered',
  'cannot be computed': 'stuck',
  'strength not checked': 'unchecked',
  computing: 'computing',
};

export interface StateMarkProps {
  readonly state: ShownState;
  /** Other words in place of the state's own, such as `2 fail`. */
  readonly words?: string;
  /** The shape alone is seen; the words are read aloud. */
  readonly isBare?: boolean;
}

/** A state as shape, colour and word. */
export function StateMark({ state, words = state, isBare = false }: StateMarkProps) {
  return (
    <span class={`${styles.mark} ${styles[STATE_CLASSES[state]]} ${isBare ? styles.bare : ''}`}>
      <svg viewBox="0 0 16 16" aria-hidden="true" class={styles.shape}>
        <path d={STATE_SHAPES[state]} />
      </svg>
      <span class={isBare ? 'aloud' : ''}>{words}</span>
    </span>
  );
}
