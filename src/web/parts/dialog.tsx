import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { Button } from './button.tsx';
import styles from './dialog.module.css';
import { Modal } from './modal.tsx';
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
  const id = useId();
  return (
    <Modal class={`${styles.dialog} ${isWide ? styles.wide : ''}`} labelledBy={id} onClose={onClose}>
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
    </Modal>
  );
}
