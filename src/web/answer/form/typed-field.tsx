import { useSignal } from '@preact/signals';
import type { CaseField, KnownField } from '../../../assess/out-of-place/case.ts';
import { type Quantity, readQuantity, unitOf, writeValue } from '../../parts/units.ts';
import { clearings } from '../state/case-state.ts';
import { idOf } from '../state/go-to-field.ts';
import styles from './form.module.css';

interface TypedFieldProps {
  readonly field: CaseField | KnownField;
  readonly label: string;
  readonly quantity: Quantity;
  /** In the document's unit; null: not said. */
  readonly value: number | null;
  /** Called at every key with what is typed so far; null while it is no value. */
  readonly onType: (value: number | null) => void;
  readonly whenEmpty: string;
  /** Why the value cannot be, as the answer found it. */
  readonly fault: string | null;
  /** A value of one press. */
  readonly quick?: { readonly text: string; readonly value: number };
}

/** A number with its unit, taken as it is typed. */
export function TypedField(props: TypedFieldProps) {
  return <OpenField key={clearings.value} {...props} />;
}

function OpenField({ field, label, quantity, value, onType, whenEmpty, fault, quick }: TypedFieldProps) {
  const typed = useSignal<string | null>(null);
  const id = idOf(field);
  const read = typed.value === null || typed.value.trim() === '' ? null : readQuantity(quantity, typed.value);
  const why = read?.ok === false ? `Expected ${read.expected}` : fault;
  const take = (text: string) => {
    typed.value = text;
    const now = text.trim() === '' ? null : readQuantity(quantity, text);
    onType(now?.ok === true ? now.value : null);
  };
  const unit = unitOf(quantity);
  return (
    <div class={styles.field}>
      <label class={styles.label} for={id}>
        {label}
      </label>
      <div class={`${styles.box} ${why === null ? '' : styles.wrong}`}>
        <input
          id={id}
          class={styles.input}
          inputMode="decimal"
          autocomplete="off"
          value={typed.value ?? (value === null ? '' : writeValue(quantity, value))}
          placeholder={whenEmpty}
          aria-invalid={why !== null}
          aria-describedby={why === null ? undefined : `${id}-why`}
          onInput={(event) => take(event.currentTarget.value)}
          onBlur={() => {
            // What is no value stays in sight until it is one.
            if (read?.ok !== false) typed.value = null;
          }}
        />
        <span class={styles.unit}>{unit}</span>
        {quick !== undefined && (
          <button
            type="button"
            class={styles.quick}
            aria-label={`${label}: ${quick.text}`}
            onClick={() => {
              typed.value = null;
              onType(quick.value);
            }}
          >
            {quick.text}
          </button>
        )}
      </div>
      {why !== null && (
        <p class={styles.why} id={`${id}-why`}>
          {why}
        </p>
      )}
    </div>
  );
}
