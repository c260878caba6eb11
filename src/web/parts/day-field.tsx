import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import styles from './field.module.css';

export interface DayFieldProps {
  readonly label: string;
  /** YYYY-MM-DD. */
  readonly value: string;
  /** A text: why the day cannot be taken. */
  readonly onChange: (value: string) => string | null;
  readonly hint?: string;
}

/** A day of the calendar. */
export function DayField({ label, value, onChange, hint }: DayFieldProps) {
  const id = useId();
  const refused = useSignal<string | null>(null);
  const why = refused.value;
  return (
    <div class={`${styles.field} ${why === null ? '' : styles.wrong}`}>
      <label class={styles.label} for={id}>
        {label}
      </label>
      <div class={styles.box}>
        <input
          id={id}
          type="date"
          class={styles.input}
          value={value}
          aria-invalid={why !== null}
          aria-describedby={why === null && hint === undefined ? undefined : `${id}-fault`}
          onChange={(event) => {
            const typed = event.currentTarget.value;
            refused.value = typed === '' ? 'expected a day of the calendar' : typed === value ? null : onChange(typed);
          }}
        />
      </div>
      {why === null ? (
        hint !== undefined && (
          <p class={styles.hint} id={`${id}-fault`}>
            {hint}
          </p>
        )
      ) : (
        <p class={styles.fault} id={`${id}-fault`} role="alert">
          {why}
        </p>
      )}
    </div>
  );
}

/** A day in words: `Mon 14 Dec 2026`; what is no day, as it is. */
export function writeDay(day: string): string {
  const date = new Date(`${day}T00:00:00Z`);
  if (Number.isNaN(date.getTime())) return day;
  return date.toLocaleDateString('en-GB', {
    timeZone: 'UTC',
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  });
}

/** Today by the calendar of this device, YYYY-MM-DD. */
export function findToday(): string {
  const now = new Date();
  const pad = (value: number, digits: number) => String(value).padStart(digits, '0');
  return `${pad(now.getFullYear(), 4)}-${pad(now.getMonth() + 1, 2)}-${pad(now.getDate(), 2)}`;
}
