import type { IDBPObjectStore, StoreNames } from 'idb';
import { hashText } from '../../../job/fingerprint.ts';
import type { RecordSchema } from '../record-db.ts';

type Asides = IDBPObjectStore<RecordSchema, StoreNames<RecordSchema>[], 'asides', 'readwrite'>;

/** Keeps a text apart, within a transaction. One that is there already stays as it is: a person may have read of it. */
export async function putAside(
  asides: Asides,
  aside: { readonly id: string | null; readonly job: string; readonly text: string; readonly why: string },
): Promise<void> {
  const hash = hashText(aside.text);
  if ((await asides.getKey(hash)) !== undefined) return;
  const { id, job, text, why } = aside;
  await asides.add({ hash, id, job, text, why, at: new Date().toISOString(), isHeeded: false });
}
