import styles from './head.module.css';

/** The sign of the product: an insert in a slab, cut. */
export function ProductSign() {
  return (
    <svg viewBox="0 0 24 24" class={styles.sign} aria-hidden="true">
      <path d="M1 6h8v8H6v5h12v-5h-3V6h8v17H1z" class={styles.signConcrete} />
      <path d="M10 2h4v13h3v3H7v-3h3z" class={styles.signInsert} />
    </svg>
  );
}
