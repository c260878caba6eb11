import type { IDBPObjectStore, StoreNames } from 'idb';
import { readRecord } from '../../../records/record-text.ts';
import type { RecordList } from '../../../wire/records.ts';
import { readMeta } from '../device-meta.ts';
import type { KeptRecord, RecordDatabase, RecordSchema } from '../record-db.ts';
import { putAside } from './put-aside.ts';
import { recordCalls } from './record-calls.ts';
import { haltOf, type Step } from './step.ts';

/** Texts that are read before the page is let go on [pieces of work of some 10 ms on a slow tablet]. */
const TEXTS_AT_ONCE = 50;

/** Ids of records are rising with their time, so that a page of them has few others in between. */
const KEYS_AT_ONCE = 2000;

type Records = IDBPObjectStore<RecordSchema, StoreNames<RecordSchema>[], 'records', 'readwrite'>;

/** Is told which pieces have new or other texts on the device. */
type OnPieces = (pieces: ReadonlySet<string>) => Promise<void>;

/**
 * Fetches what the server has of a job from where this device stopped the last time, page by page; each page is on the device together with the
 * place up to which it goes.
 */
export async function pullTexts(
  db: RecordDatabase,
  job: string,
  onAnswer: (answer: RecordList, sentAt: number) => Promise<void>,
  onPieces: OnPieces,
): Promise<Step<null>> {
  for (;;) {
    const after = (await db.get('cursors', job)) ?? 0;
    const sentAt = Date.now();
    const called = await recordCalls.listRecords(job, after, (await readMeta(db)).head);
    if (called.kind !== 'answered') return haltOf(called);
    const { records, isAll } = called.value;
    await onAnswer(called.value, sentAt);
    const kept = await keepTexts(db, job, records, records.at(-1)?.number ?? null);
    if (kept.size > 0) await onPieces(kept);
    if (isAll || records.length === 0) return { kind: 'done', value: null };
  }
}

/** Fetches these pieces from the beginning: a text of theirs may stand here otherwise than on the server. */
export async function pullPieces(
  db: RecordDatabase,
  job: string,
  pieces: readonly string[],
  onPieces: OnPieces,
): Promise<Step<null>> {
  for (let after = 0; pieces.length > 0; ) {
    const called = await recordCalls.listOfPieces(job, after, pieces);
    if (called.kind !== 'answered') return haltOf(called);
    const { records, isAll } = called.value;
    const kept = await keepTexts(db, job, records, null);
    if (kept.size > 0) await onPieces(kept);
    if (isAll || records.length === 0) break;
    after = records.at(-1)!.number;
  }
  return { kind: 'done', value: null };
}

/** Reads once more what an older version of this program could not read. */
export async function readUnread(db: RecordDatabase): Promise<void> {
  for (const { job, number, text } of await db.getAll('unread')) {
    if (!readRecord(text).ok) continue;
    await keepTexts(db, job, [{ number, text }], null);
    await db.delete('unread', [job, number]);
  }
}

/**
 * Puts texts of the server beside those of this device, and gives the pieces of which something is new or other. Where an id stands here for other bytes, the server's count, since every device gets those;
 * the ones from here are kept apart.
 * @param upTo the place that the device then has come to; null: leaves it
 */
async function keepTexts(
  db: RecordDatabase,
  job: string,
  lines: RecordList['records'],
  upTo: number | null,
): Promise<ReadonlySet<string>> {
  const found: KeptRecord[] = [];
  const unread: RecordList['records'][number][] = [];
  for (const [place, line] of lines.entries()) {
    if (place > 0 && place % TEXTS_AT_ONCE === 0) await new Promise((resolve) => setTimeout(resolve));
    const read = readRecord(line.text);
    if (!read.ok) unread.push(line);
    else found.push({ id: read.stored.record.id, job, piece: read.stored.record.piece, text: line.text });
  }
  const transaction = db.transaction(['records', 'pieces', 'asides', 'unread', 'cursors'], 'readwrite');
  const [records, asides] = [transaction.objectStore('records'), transaction.objectStore('asides')];
  const known = await readKnown(
    records,
    found.map(({ id }) => id),
  );
  const pieces = new Set<string>();
  const asked: Promise<unknown>[] = [];
  for (const one of found) {
    const before = known.get(one.id);
    if (before?.text === one.text) continue;
    pieces.add(one.piece);
    if (before !== undefined) {
      const why = 'a record of the server has the same id and other bytes';
      asked.push(putAside(asides, { id: one.id, job, text: before.text, why }));
      pieces.add(before.piece);
    }
    asked.push(records.put(before?.mine === 1 ? { ...one, mine: 1 } : one));
  }
  for (const piece of new Set(found.map((one) => one.piece)))
    asked.push(transaction.objectStore('pieces').put({ job, piece }));
  for (const { number, text } of unread) asked.push(transaction.objectStore('unread').put({ job, number, text }));
  if (upTo !== null) asked.push(transaction.objectStore('cursors').put(upTo, job));
  await Promise.all([...asked, transaction.done]);
  return pieces;
}

/** Which of these this device has. On a tablet that is filled for the first time that is none: their keys are asked for at once, not one by one. */
async function readKnown(records: Records, ids: readonly string[]): Promise<ReadonlyMap<string, KeptRecord>> {
  const sorted = [...ids].sort();
  const [least, most] = [sorted[0], sorted.at(-1)];
  if (least === undefined || most === undefined) return new Map();
  const between = new Set(await records.getAllKeys(IDBKeyRange.bound(least, most), KEYS_AT_ONCE));
  const possible = between.size < KEYS_AT_ONCE ? ids.filter((id) => between.has(id)) : ids;
  const found = await Promise.all(possible.map((id) => records.get(id)));
  return new Map(found.flatMap((one) => (one === undefined ? [] : [[one.id, one]])));
}
