import { useSignal } from '@preact/signals';
import { useLayoutEffect } from 'preact/hooks';
import { isFull, type PadKey, type PadRules, pressPad, readKeyboardKey, readTyped } from '../state/typed-length.ts';
import styles from './digit-pad.module.css';
import { useSettled } from './use-settled.ts';

export interface DigitPadProps {
  /** What is to be typed: `7 · x from the gate stop end`. */
  readonly label: string;
  readonly unit?: string;
  /** As many digits as the value can have; of a length that has a limit, `longest` says more. */
  readonly mostDigits?: number;
  /** No such value is greater. */
  readonly longest?: number;
  /** A value that no digit can follow goes on by itself. */
  readonly goesOn?: boolean;
  readonly hasMinus?: boolean;
  /** Stands there at first, to be changed. */
  readonly first?: string;
  /** Gets what was typed [mm], whole. */
  readonly onDone: (value: number) => void;
  /** What the done key says. */
  readonly doneWords?: string;
}

const ROWS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const;

/** Digits under a glove, and from a keyboard. It starts empty again when `key` changes. */
export function DigitPad({
  label,
  unit = 'mm',
  mostDigits = 6,
  longest = 10 ** mostDigits - 1,
  goesOn = false,
  hasMinus = false,
  first = '',
  onDone,
  doneWords = 'Next',
}: DigitPadProps) {
  const state = useSignal(first);
  const typed = state.value;
  const isSettled = useSettled(label);
  const rules: PadRules = { longest, hasMinus };
  const value = readTyped(typed);
  const finish = (text: string) => {
    const read = readTyped(text);
    if (read === null) return;
    state.value = '';
    onDone(read);
  };
  const press = (key: PadKey) => {
    const next = pressPad(state.peek(), key, rules);
    if (goesOn && key !== 'back' && key !== 'minus' && isFull(next, rules)) finish(next);
    else state.value = next;
  };
  // Before the next key, not after the next frame: a quick hand at the keyboard loses no digit.
  useLayoutEffect(() => {
    const listen = (event: KeyboardEvent) => {
      const { target } = event;
      if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
      // A field or a dialog has its own keys; a key that has the focus keeps its Enter.
      if (target instanceof HTMLElement && target.closest('input, textarea, dialog') !== null) return;
      const key = readKeyboardKey(event.key);
      if (key === null) return;
      if (key === 'done') {
        // With nothing typed, Enter is for the key that has the focus.
        if (state.peek() === '' && target instanceof HTMLElement && target.closest('button, a') !== null) return;
        finish(state.peek());
      } else press(key);
      event.preventDefault();
    };
    addEventListener('keydown', listen);
    return () => removeEventListener('keydown', listen);
  });
  const digit = (key: PadKey & string) => (
    <button
      type="button"
      key={key}
      class={styles.digit}
      data-digit=""
      aria-disabled={isSettled ? undefined : true}
      onClick={() => {
        // The tap that brought the pad here may bounce: it is not a first digit.
        if (isSettled) press(key);
      }}
    >
      {key}
    </button>
  );
  return (
    <section class={styles.pad} aria-label={label}>
      <p class={styles.label}>{label}</p>
      <output class={styles.value} aria-label={`${label}: typed`}>
        {typed === '' ? <span class={styles.empty}>–</span> : typed.replace('-', '−')}
        <small>{unit}</small>
      </output>
      <div class={styles.digits}>
        {ROWS.map(digit)}
        <button
          type="button"
          class={styles.digit}
          data-digit=""
          aria-label="Take the last digit back"
          disabled={typed === ''}
          onClick={() => press('back')}
        >
          <svg viewBox="0 0 32 24" class={styles.sign} aria-hidden="true">
            <path d="M11 3h18v18H11L2 12zM16 8l8 8M24 8l-8 8" />
          </svg>
        </button>
        {digit('0')}
        {hasMinus && (
          <button
            type="button"
            class={styles.digit}
            data-digit=""
            aria-label="Above the face (minus)"
            aria-pressed={typed.startsWith('-')}
            onClick={() => press('minus')}
          >
            ±
          </button>
        )}
        <button
          type="button"
          class={`${styles.digit} ${styles.done} ${hasMinus ? styles.wide : ''}`}
          data-main=""
          disabled={value === null}
          onClick={() => finish(typed)}
        >
          {doneWords}
        </button>
      </div>
    </section>
  );
}
