import styles from './number-picker.module.css';

export interface NumberPickerProps {
  readonly label: string;
  readonly numbers: readonly number[];
  readonly chosen?: number | null;
  /** What a number is, for readers aloud, and under it. */
  readonly tell?: (number: number) => string;
  readonly onPick: (number: number) => void;
}

/** Inserts by their numbers on the sheet, a key each. */
export function NumberPicker({ label, numbers, chosen = null, tell, onPick }: NumberPickerProps) {
  return (
    <fieldset class={styles.numbers}>
      <legend class="aloud">{label}</legend>
      {numbers.map((number) => (
        <button
          type="button"
          key={number}
          class={styles.number}
          data-main=""
          aria-pressed={chosen === number}
          onClick={() => onPick(number)}
        >
          {number}
          {tell !== undefined && <small>{tell(number)}</small>}
        </button>
      ))}
    </fieldset>
  );
}
