import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import { Button } from './button.tsx';
import styles from './dialog.module.css';
import { Sign } from './signs.tsx';

export interface DialogProps {
  readonly title: string;
  /** Null: it stays until one of its own buttons was pressed. */
  readonly onClose: (() => void) | null;
  readonly children: ComponentChildren;
  /** The row of buttons at its foot. */
  readonly foot?: ComponentChildren;
  readonly isWide?: boolean;
}

/** A question or a form over the screen; Escape closes it and the focus goes back. */
export function Dialog({ title, onClose, children, foot, isWide }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      class={`${styles.dialog} ${isWide ? styles.wide : ''}`}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose?.();
      }}
      onClose={({ currentTarget }) => {
        // Browsers close it at a second Escape without asking.
        if (!currentTarget.isConnected) return;
        if (onClose === null) currentTarget.showModal();
        else onClose();
      }}
    >
      <header class={styles.head}>
        <h2 id={id}>{title}</h2>
        {onClose !== null && (
          <Button kind="quiet" name="Close" onPress={onClose}>
            <Sign name="cross" />
          </Button>
        )}
      </header>
      <div class={styles.body}>{children}</div>
      {foot !== undefined && <footer class={styles.foot}>{foot}</footer>}
    </dialog>
  );
}
