import type { CaseField, KnownField } from '../../../assess/out-of-place/case.ts';
import { idOf } from '../state/go-to-field.ts';
import styles from './form.module.css';

interface Option<T> {
  readonly value: T;
  readonly text: string;
}

/** One of a few, in a list that folds out. */
export function ListField<T extends string | number>({
  field,
  label,
  value,
  options,
  whenEmpty,
  onPick,
}: {
  readonly field: CaseField | KnownField | 'standard';
  readonly label: string;
  readonly value: T | null;
  readonly options: readonly Option<T>[];
  /** Null: one of them is always picked. */
  readonly whenEmpty: string | null;
  readonly onPick: (value: T | null) => void;
}) {
  const id = field === 'standard' ? 'field-standard' : idOf(field);
  return (
    <div class={styles.field}>
      <label class={styles.label} for={id}>
        {label}
      </label>
      <div class={styles.box}>
        <select
          id={id}
          class={styles.select}
          value={value === null ? '' : String(value)}
          onChange={(event) => {
            const picked = options.find((option) => String(option.value) === event.currentTarget.value);
            onPick(picked?.value ?? null);
          }}
        >
          {whenEmpty !== null && <option value="">{whenEmpty}</option>}
          {options.map((option) => (
            <option key={option.value} value={String(option.value)}>
              {option.text}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}

/** One of two or three, all in sight. */
export function SideField<T extends string | boolean>({
  field,
  label,
  value,
  options,
  onPick,
}: {
  readonly field: CaseField | 'units' | 'theme';
  readonly label: string;
  readonly value: T | null;
  readonly options: readonly Option<T>[];
  readonly onPick: (value: T) => void;
}) {
  return (
    <fieldset class={styles.side}>
      <legend class={styles.label}>{label}</legend>
      <div class={styles.sides}>
        {options.map((option, i) => (
          <label key={String(option.value)} class={styles.one}>
            <input
              id={i === 0 ? `field-${field}` : undefined}
              type="radio"
              name={field}
              class="aloud"
              checked={value === option.value}
              onChange={() => onPick(option.value)}
            />
            <span>{option.text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
