import styles from './signs.module.css';

const PATHS = {
  cross: 'M3.5 3.5l9 9M12.5 3.5l-9 9',
  before: 'M10 3L5 8l5 5',
  next: 'M6 3l5 5l-5 5',
  more: 'M3 8h.01M8 8h.01M13 8h.01',
} as const;

/** A sign drawn as lines, since fonts lack such signs here and there. Its button says what it means. */
export function Sign({ name }: { readonly name: keyof typeof PATHS }) {
  return (
    <svg viewBox="0 0 16 16" class={`${styles.sign} ${name === 'more' ? styles.more : ''}`} aria-hidden="true">
      <path d={PATHS[name]} />
    </svg>
  );
}
