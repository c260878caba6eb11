import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import { Button } from './button.tsx';
import styles from './dialog.module.css';
import { Sign } from './signs.tsx';

export interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
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
        onClose();
      }}
    >
      <header class={styles.head}>
        <h2 id={id}>{title}</h2>
        <Button kind="quiet" name="Close" onPress={onClose}>
          <Sign name="cross" />
        </Button>
      </header>
      <div class={styles.body}>{children}</div>
      {foot !== undefined && <footer class={styles.foot}>{foot}</footer>}
    </dialog>
  );
}
