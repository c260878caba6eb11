import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

export interface ModalProps {
  readonly class: string;
  /** Id of what names it, and of what describes it. */
  readonly labelledBy: string;
  readonly describedBy?: string;
  readonly role?: 'alertdialog';
  /** What Escape does; null: nothing, it stays until one of its own buttons was pressed. */
  readonly onClose: (() => void) | null;
  readonly children: ComponentChildren;
}

/** Something over the screen that nothing behind can be reached through; the focus goes back when it is taken away. */
export function Modal({ class: name, labelledBy, describedBy, role, onClose, children }: ModalProps) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = ref.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      class={name}
      role={role}
      aria-labelledby={labelledBy}
      aria-describedby={describedBy}
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
      {children}
    </dialog>
  );
}
