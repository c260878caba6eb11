import { META_KEY } from '../device-meta.ts';
import type { RecordDatabase } from '../record-db.ts';

const TEXTS_AT_ONCE = 500;

/**
 * Puts every text and photo, of all jobs, that this device holds, others' too, on the list of what is to be sent: the server was put back to an earlier
 * state, and what it has lost it gets again. What it has, it finds there.
 */
export async function sendAllAgain(db: RecordDatabase): Promise<void> {
  const waiting = new Set((await db.getAll('unsent')).map(({ id }) => id));
  const ids = (await db.getAllKeys('records')).filter((id) => !waiting.has(id));
  for (let from = 0; from < ids.length; from += TEXTS_AT_ONCE) {
    const transaction = db.transaction(['records', 'unsent'], 'readwrite');
    const asked: Promise<unknown>[] = [];
    for (const id of ids.slice(from, from + TEXTS_AT_ONCE)) {
      const kept = await transaction.objectStore('records').get(id);
      if (kept === undefined) continue;
      const { job, text, mine } = kept;
      asked.push(transaction.objectStore('unsent').add({ id, job, text, ...(mine === 1 ? { mine } : {}) }));
    }
    await Promise.all([...asked, transaction.done]);
  }
  const transaction = db.transaction(['photos', 'cursors', 'meta'], 'readwrite');
  const photos = transaction.objectStore('photos');
  const asked: Promise<unknown>[] = [];
  for (let at = await photos.openCursor(); at !== null; at = await at.continue())
    asked.push(at.update({ ...at.value, unsent: 1 }));
  // Last: interrupted before, it is found and done again; a text that is on the list twice is had the second time.
  asked.push(transaction.objectStore('cursors').clear());
  const metas = transaction.objectStore('meta');
  const { isLogOther: _, ...meta } = (await metas.get(META_KEY))!;
  asked.push(metas.put(meta, META_KEY));
  await Promise.all([...asked, transaction.done]);
}
