import { Link } from 'wouter-preact';
import { places } from '../../pieces/places.ts';
import { tellSync } from '../../pieces/sync-words.ts';
import { useYard } from '../../pieces/yard.ts';
import styles from './sync-chip.module.css';

const CLASSES = { 'all sent': 'sent', 'here only': 'here', problem: 'problem' } as const;

/** Where the records are; leads to the screen of this device. */
export function SyncChip() {
  const { first, second, kind } = tellSync(useYard().device.sync.value);
  return (
    <Link href={places.device()} class={`${styles.chip} ${styles[CLASSES[kind]]}`}>
      <span class={styles.first}>{first}</span>
      <span class={styles.second}>{second}</span>
    </Link>
  );
}
