import type { ComponentChildren } from 'preact';
import styles from './notice.module.css';

/** `caution`: where work can hurt someone. `fault`: something must be put right. `note`: to know. `good`: done. */
export type NoticeKind = 'caution' | 'fault' | 'note' | 'good';

const WORDS: Readonly<Record<NoticeKind, string>> = {
  caution: 'Caution',
  fault: 'To put right',
  note: 'Note',
  good: 'Done',
};

/** A few sentences that must not be passed over. */
export function Notice({
  kind,
  title,
  children,
}: {
  readonly kind: NoticeKind;
  readonly title?: string;
  readonly children: ComponentChildren;
}) {
  return (
    <div class={`${styles.notice} ${styles[kind]}`} role={kind === 'fault' ? 'alert' : 'note'}>
      <strong class={styles.title}>{title ?? WORDS[kind]}</strong>
      <div>{children}</div>
    </div>
  );
}

/** What an empty place says: what is missing and the next step. */
export function Empty({ title, children }: { readonly title: string; readonly children: ComponentChildren }) {
  return (
    <div class={styles.empty}>
      <h2>{title}</h2>
      <div class={styles.emptyText}>{children}</div>
    </div>
  );
}
