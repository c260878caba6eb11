import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import styles from './disclosure.module.css';

/** A part of a page that opens where it is asked for; what is in it is made then. */
export function Disclosure({
  title,
  hint,
  isOpen = false,
  children,
}: {
  readonly title: string;
  /** What is in it, in a few words beside its title. */
  readonly hint?: string | undefined;
  readonly isOpen?: boolean;
  readonly children: () => ComponentChildren;
}) {
  const open = useSignal(isOpen);
  const id = useId();
  return (
    <section class={styles.part}>
      <h2>
        <button
          type="button"
          class={styles.head}
          aria-expanded={open.value}
          aria-controls={id}
          onClick={() => {
            open.value = !open.value;
          }}
        >
          <svg viewBox="0 0 12 12" class={styles.sign} aria-hidden="true">
            <path d="M4 1.5L8.5 6L4 10.5" />
          </svg>
          {title}
          {hint !== undefined && <span class={styles.hint}>{hint}</span>}
        </button>
      </h2>
      <div id={id} class={styles.body} hidden={!open.value}>
        {open.value && children()}
      </div>
    </section>
  );
}
