import { readExport, writeExport } from '../../records/export.ts';
import { readRecord } from '../../records/record-text.ts';
import type { RecordDatabase, UnsentText } from './record-db.ts';
import type { RecordDevice } from './record-device.ts';

/** What is unsent, as a file a job: a file says of which one it is. */
export async function exportUnsent(db: RecordDatabase, device: string): ReturnType<RecordDevice['exportUnsent']> {
  const unsent = await db.getAll('unsent');
  return Promise.all(
    [...new Set(unsent.map(({ job }) => job))].map(async (job) => {
      const texts = unsent.filter((one) => one.job === job).map(({ text }) => text);
      const name = (await db.get('jobs', job))?.name ?? job;
      return { job, name, text: writeExport({ job, device, texts }) };
    }),
  );
}

export interface TakenIn {
  readonly job: string;
  readonly taken: number;
  readonly had: number;
  readonly unreadable: number;
  readonly pieces: ReadonlySet<string>;
}

/**
 * Takes in what another device exported: to be sent with what waits here. A text that this version cannot read, or whose id stands here for other
 * bytes, is sent all the same: the server keeps it and says so.
 * @throws Error where it is no such file
 */
export async function takeIn(db: RecordDatabase, text: string): Promise<TakenIn> {
  const read = readExport(text);
  if (!read.ok) throw new Error(`This file cannot be taken in: ${read.why}`);
  const { job, texts } = read.value;
  const readings = texts.map((one) => ({ text: one, reading: readRecord(one) }));
  const transaction = db.transaction(['records', 'pieces', 'unsent'], 'readwrite', { durability: 'strict' });
  const [records, unsent] = [transaction.objectStore('records'), transaction.objectStore('unsent')];
  const waiting = new Set((await unsent.index('job').getAll(job)).map((one) => one.text));
  const asked: Promise<unknown>[] = [];
  const pieces = new Set<string>();
  let [taken, had, unreadable] = [0, 0, 0];
  for (const { text: one, reading } of readings) {
    const record = reading.ok && reading.stored.record.job === job ? reading.stored.record : null;
    const kept = record === null ? undefined : await records.get(record.id);
    if (waiting.has(one) || kept?.text === one) {
      had += 1;
      continue;
    }
    waiting.add(one);
    if (record === null) unreadable += 1;
    else if (kept === undefined) {
      taken += 1;
      pieces.add(record.piece);
      asked.push(records.add({ id: record.id, job, piece: record.piece, text: one }));
    } else unreadable += 1;
    const text: UnsentText = { id: record?.id ?? null, job, text: one };
    asked.push(unsent.add(text));
  }
  for (const piece of pieces) asked.push(transaction.objectStore('pieces').put({ job, piece }));
  await Promise.all([...asked, transaction.done]);
  return { job, taken, had, unreadable, pieces };
}
