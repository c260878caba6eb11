import type { ComponentChildren } from 'preact';
import { Link } from 'wouter-preact';
import styles from './big-key.module.css';
import { useSettled } from './use-settled.ts';

/**
 * `main`: the next step, at most one in sight. `plain`: other ways on. `quiet`: may be smaller, for what is seldom needed. `stop`: holds or refuses
 * something.
 */
export type KeyKind = 'main' | 'plain' | 'quiet' | 'stop';

interface KeyLook {
  readonly children: ComponentChildren;
  /** A second line that says more. */
  readonly more?: ComponentChildren;
  readonly kind?: KeyKind;
  /** Twice as high: the one key that is pressed again and again. */
  readonly isTall?: boolean;
  /** Read aloud in place of what is seen. */
  readonly name?: string;
}

export interface BigKeyProps extends KeyLook {
  /** Gets the key itself, so that what it opens can stand elsewhere. */
  readonly onPress: (key: HTMLElement) => void;
  readonly isDisabled?: boolean;
  /** Pressed and stays so; undefined: no switch. */
  readonly isOn?: boolean;
  /** A question that it asks is open. */
  readonly isAsking?: boolean;
  /** What it does now, of a key that writes at one tap: where that changes under the finger, a tap that bounces does nothing. */
  readonly meaning?: string;
}

function Words({ children, more }: Pick<KeyLook, 'children' | 'more'>) {
  return (
    <>
      <span>{children}</span>
      {more !== undefined && <span class={styles.more}>{more}</span>}
    </>
  );
}

/** A key large enough for a wet glove. */
export function BigKey({
  children,
  more,
  kind = 'plain',
  isTall = false,
  name,
  onPress,
  isDisabled,
  isOn,
  isAsking,
  meaning,
}: BigKeyProps) {
  const isSettled = useSettled(meaning ?? null);
  return (
    <button
      type="button"
      class={`${styles.key} ${styles[kind]} ${isTall ? styles.tall : ''}`}
      disabled={isDisabled}
      aria-disabled={isSettled ? undefined : true}
      aria-pressed={isOn}
      aria-expanded={isAsking}
      aria-label={name}
      data-main={kind === 'quiet' ? undefined : ''}
      onClick={({ currentTarget, detail }) => {
        // After a tap the focus does not stay: the next Enter of somebody who types digits would press this key again.
        if (detail > 0) currentTarget.blur();
        if (isSettled) onPress(currentTarget);
      }}
    >
      <Words more={more}>{children}</Words>
    </button>
  );
}

/** The same for what opens another screen. */
export function BigLink({
  children,
  more,
  kind = 'plain',
  isTall = false,
  name,
  to,
}: KeyLook & { readonly to: string }) {
  return (
    <Link
      href={to}
      class={`${styles.key} ${styles[kind]} ${isTall ? styles.tall : ''}`}
      aria-label={name}
      data-main={kind === 'quiet' ? undefined : ''}
    >
      <Words more={more}>{children}</Words>
    </Link>
  );
}

/** Keys below or beside each other, as the room allows, with room between them. */
export function KeyRow({ children }: { readonly children: ComponentChildren }) {
  return <div class={styles.row}>{children}</div>;
}
