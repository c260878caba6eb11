import type { RecordDatabase } from './record-db.ts';

/** How much of what lies on this device. */
export interface KeptCounts {
  readonly unsent: number;
  /** Written here and acknowledged. */
  readonly sent: number;
  readonly held: number;
  readonly unsentPhotos: number;
  /** Of which nobody has read yet. */
  readonly asides: number;
  readonly unread: number;
}

export const NO_COUNTS: KeptCounts = { unsent: 0, sent: 0, held: 0, unsentPhotos: 0, asides: 0, unread: 0 };

/** Counts everything at one moment. */
export async function readCounts(db: RecordDatabase): Promise<KeptCounts> {
  const transaction = db.transaction(['records', 'unsent', 'photos', 'asides', 'unread']);
  const [records, texts] = [transaction.objectStore('records'), transaction.objectStore('unsent')];
  const [held, mine, unsent, mineUnsent, unsentPhotos, asides, unread] = await Promise.all([
    records.count(),
    records.index('mine').count(),
    texts.count(),
    texts.index('mine').count(),
    transaction.objectStore('photos').index('unsent').count(),
    transaction.objectStore('asides').getAll(),
    transaction.objectStore('unread').count(),
  ]);
  return {
    held,
    unsent,
    sent: mine - mineUnsent,
    unsentPhotos,
    asides: asides.filter(({ isHeeded }) => !isHeeded).length,
    unread,
  };
}
