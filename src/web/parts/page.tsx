import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import styles from './page.module.css';

/** A screen of lists and fields: what it is, what can be done with it, then its sections. */
export function Page({
  title,
  lead,
  actions,
  children,
}: {
  readonly title: string;
  /** What the screen is for, in a sentence. */
  readonly lead?: ComponentChildren;
  readonly actions?: ComponentChildren;
  readonly children: ComponentChildren;
}) {
  return (
    <div class={styles.page}>
      <header class={styles.head}>
        <div class={styles.words}>
          <h1>{title}</h1>
          {lead !== undefined && <p class={styles.lead}>{lead}</p>}
        </div>
        {actions !== undefined && <div class={`${styles.actions} not-printed`}>{actions}</div>}
      </header>
      {children}
    </div>
  );
}

/** A part of a screen under a heading of its own. */
export function Section({
  title,
  lead,
  actions,
  anchor,
  children,
}: {
  readonly title: string;
  readonly lead?: ComponentChildren;
  readonly actions?: ComponentChildren;
  /** Name by which links of the same screen reach it. */
  readonly anchor?: string;
  readonly children: ComponentChildren;
}) {
  const id = useId();
  return (
    <section class={styles.section} id={anchor} aria-labelledby={id}>
      <div class={styles.sectionHead}>
        <div class={styles.words}>
          <h2 id={id}>{title}</h2>
          {lead !== undefined && <p class={styles.lead}>{lead}</p>}
        </div>
        {actions !== undefined && <div class={`${styles.actions} not-printed`}>{actions}</div>}
      </div>
      {children}
    </section>
  );
}

/** Fields side by side, as many as there is room for. */
export function Fields({ children }: { readonly children: ComponentChildren }) {
  return <div class={styles.fields}>{children}</div>;
}
