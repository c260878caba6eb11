import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import styles from './field.module.css';
import { type Quantity, readQuantity, unitOf, writeValue } from './units.ts';

interface Frame {
  readonly label: string;
  readonly hint?: string | undefined;
  /** Why the value cannot be taken, in one sentence. */
  readonly fault?: string | null | undefined;
  /** In a table, whose heads say it: the label is read aloud only. */
  readonly isInTable?: boolean | undefined;
}

function Framed({
  label,
  hint,
  fault,
  isInTable,
  id,
  children,
}: Frame & { readonly id: string; readonly children: ComponentChildren }) {
  const hasFault = fault !== null && fault !== undefined;
  return (
    <div class={`${styles.field} ${hasFault ? styles.wrong : ''}`}>
      <label class={isInTable ? 'aloud' : styles.label} for={id}>
        {label}
      </label>
      {children}
      {hasFault ? (
        <p class={styles.fault} id={`${id}-fault`} role="alert">
          {fault}
        </p>
      ) : (
        hint !== undefined && (
          <p class={styles.hint} id={`${id}-fault`}>
            {hint}
          </p>
        )
      )}
    </div>
  );
}

/**
 * What is typed into a box and not taken yet, and why it was not.
 * @param take gets the text when the person is done (Enter, or leaving the box); null: taken
 */
function useTyped(take: (text: string) => string | null) {
  const typed = useSignal<string | null>(null);
  const refused = useSignal<string | null>(null);
  const finish = () => {
    if (typed.value === null) return;
    refused.value = take(typed.value);
    if (refused.value === null) typed.value = null;
  };
  return {
    text: typed.value,
    refused: refused.value,
    listeners: {
      onInput: (event: { readonly currentTarget: HTMLInputElement }) => {
        typed.value = event.currentTarget.value;
      },
      onBlur: finish,
      onKeyDown: (event: KeyboardEvent) => {
        if (event.key === 'Enter') finish();
        if (event.key !== 'Escape') return;
        typed.value = null;
        refused.value = null;
      },
    },
  };
}

/** How a box says that it has a fault or a hint, for readers aloud. */
function describeBox(id: string, why: string | null | undefined, hint: string | undefined) {
  const hasFault = why !== null && why !== undefined;
  return {
    'aria-invalid': hasFault,
    'aria-describedby': hasFault || hint !== undefined ? `${id}-fault` : undefined,
  };
}

export interface QuantityFieldProps extends Frame {
  readonly quantity: Quantity;
  /** In the document's unit; null: nothing given. */
  readonly value: number | null;
  /** Called when the person is done (Enter, or leaving the field). A text: why the value cannot be taken; what was typed then stays in the field. */
  readonly onChange: (value: number | null) => string | null;
  /** Nothing may be given; what then holds, in a word or two. */
  readonly whenEmpty?: string;
  readonly isReadOnly?: boolean;
  /** The head of its column says the unit. */
  readonly isBare?: boolean;
}

/** A number with its unit, typed in the units of this person. What is typed wrong stays in the field, with the reason below. */
export function QuantityField({
  label,
  hint,
  fault,
  quantity,
  value,
  onChange,
  whenEmpty,
  isReadOnly,
  isInTable,
  isBare,
}: QuantityFieldProps) {
  const id = useId();
  const { text, refused, listeners } = useTyped((typed) => {
    if (typed.trim() === '' && whenEmpty !== undefined) return onChange(null);
    const read = readQuantity(quantity, typed);
    if (!read.ok)
      return typed.trim() === ''
        ? `expected ${read.expected}`
        : `“${typed}” is no value here; expected ${read.expected}`;
    return read.value === value ? null : onChange(read.value);
  });
  const shown = text ?? (value === null ? '' : writeValue(quantity, value));
  const unit = unitOf(quantity);
  const why = refused ?? fault;
  return (
    <Framed id={id} label={label} hint={hint} fault={why} isInTable={isInTable}>
      <div class={styles.box}>
        <input
          id={id}
          class={`${styles.input} ${styles.number}`}
          inputMode={quantity === 'length' && unit === 'in' ? 'text' : 'decimal'}
          autocomplete="off"
          value={shown}
          placeholder={whenEmpty ?? ''}
          readOnly={isReadOnly}
          {...describeBox(id, why, hint)}
          {...listeners}
        />
        {unit !== '' && isBare !== true && <span class={styles.unit}>{unit}</span>}
      </div>
    </Framed>
  );
}

export interface TextFieldProps extends Frame {
  readonly value: string;
  /** As for `QuantityField`. */
  readonly onChange: (value: string) => string | null;
  readonly placeholder?: string;
  readonly isReadOnly?: boolean;
}

/** A line of text, taken when the person is done. */
export function TextField({ label, hint, fault, value, onChange, placeholder, isReadOnly, isInTable }: TextFieldProps) {
  const id = useId();
  const { text, refused, listeners } = useTyped((typed) => (typed === value ? null : onChange(typed.trim())));
  const why = refused ?? fault;
  return (
    <Framed id={id} label={label} hint={hint} fault={why} isInTable={isInTable}>
      <div class={styles.box}>
        <input
          id={id}
          class={styles.input}
          autocomplete="off"
          value={text ?? value}
          placeholder={placeholder}
          readOnly={isReadOnly}
          {...describeBox(id, why, hint)}
          {...listeners}
        />
      </div>
    </Framed>
  );
}

export interface ChoiceFieldProps<T extends string> extends Frame {
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly text: string; readonly isDisabled?: boolean }[];
  readonly onChange: (value: T) => string | null;
}

/** One of a few. */
export function ChoiceField<T extends string>({
  label,
  hint,
  fault,
  value,
  options,
  onChange,
  isInTable,
}: ChoiceFieldProps<T>) {
  const id = useId();
  const refused = useSignal<string | null>(null);
  return (
    <Framed id={id} label={label} hint={hint} fault={refused.value ?? fault} isInTable={isInTable}>
      <div class={styles.box}>
        <select
          id={id}
          class={styles.select}
          value={value}
          onChange={(event) => {
            const chosen = options.find((option) => option.value === event.currentTarget.value);
            if (chosen === undefined) return;
            refused.value = onChange(chosen.value) ?? null;
            // What was refused is not shown as taken.
            if (refused.value !== null) event.currentTarget.value = value;
          }}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value} disabled={option.isDisabled}>
              {option.text}
            </option>
          ))}
        </select>
      </div>
    </Framed>
  );
}

/** Yes or no. */
export function CheckField({
  label,
  isOn,
  onChange,
  isDisabled,
}: {
  readonly label: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
  readonly isDisabled?: boolean;
}) {
  return (
    <label class={styles.check}>
      <input
        type="checkbox"
        checked={isOn}
        disabled={isDisabled}
        onChange={(event) => onChange(event.currentTarget.checked)}
      />
      {label}
    </label>
  );
}
