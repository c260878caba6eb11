import type { ComponentChildren } from 'preact';
import styles from './button.module.css';

export interface ButtonProps {
  readonly children: ComponentChildren;
  readonly onPress: () => void;
  /** `main`: the next step of this screen; at most one is in sight. `plain`: the others. `quiet`: in rows and heads. */
  readonly kind?: 'main' | 'plain' | 'quiet' | 'danger';
  readonly isDisabled?: boolean;
  /** Pressed and stays so; undefined: no switch. */
  readonly isOn?: boolean;
  /** Read aloud in place of a sign. */
  readonly name?: string;
  readonly shortcut?: string;
  readonly type?: 'button' | 'submit';
}

/** Something that can be pressed. */
export function Button({
  children,
  onPress,
  kind = 'plain',
  isDisabled,
  isOn,
  name,
  shortcut,
  type = 'button',
}: ButtonProps) {
  return (
    <button
      type={type}
      class={`${styles.button} ${styles[kind]}`}
      disabled={isDisabled}
      aria-pressed={isOn}
      aria-label={name}
      title={shortcut === undefined ? name : `${name ?? ''} (${shortcut})`.trim()}
      aria-keyshortcuts={shortcut}
      onClick={onPress}
    >
      {children}
    </button>
  );
}
