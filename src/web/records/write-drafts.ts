import { findSeen } from '../../records/fold/find-seen.ts';
import { foldPiece } from '../../records/fold/fold-piece.ts';
import { linkOf, makeRecord } from '../../records/make-record.ts';
import type { FactRecord, RecordDraft } from '../../records/record.ts';
import { LONGEST_TEXT, writeRecord } from '../../records/record-text.ts';
import { makeUuidV7 } from '../../records/uuid-v7.ts';
import { META_KEY } from './device-meta.ts';
import { parseKept } from './kept-records.ts';
import type { RecordDatabase } from './record-db.ts';
import { tellWriteFault } from './tell-write-fault.ts';

/** What the device adds to every draft. */
export interface WriteContext {
  readonly person: string;
  readonly app: string;
}

/**
 * Writes records down in one transaction, in their order: each takes the end of the device's chain and what is known of its piece at that moment,
 * so that two pages of one browser never write under one number. On disk when it resolves; with an error nothing of it is.
 * @throws Error where there is no room, or a draft is no record
 */
export async function writeDrafts(
  db: RecordDatabase,
  drafts: readonly RecordDraft[],
  { person, app }: WriteContext,
): Promise<readonly FactRecord[]> {
  const transaction = db.transaction(['meta', 'records', 'pieces', 'unsent'], 'readwrite', { durability: 'strict' });
  const [metas, records, unsent] = [
    transaction.objectStore('meta'),
    transaction.objectStore('records'),
    transaction.objectStore('unsent'),
  ];
  const ended = transaction.done.catch((error: unknown) => {
    throw tellWriteFault(error);
  });
  // Waited for below; should an await before it throw, the browser need not tell of it as nobody's.
  ended.catch(() => {});
  const asked: Promise<unknown>[] = [];
  const written: FactRecord[] = [];
  try {
    const meta = await metas.get(META_KEY);
    if (meta === undefined) throw new Error('This device has lost its name: load the page anew.');
    let { chain } = meta;
    const known = new Map<string, FactRecord[]>();
    // One moment for all, each a millisecond after the one before: their ids rise in the order in which they are written.
    const first = Date.now();
    for (const [at, draft] of drafts.entries()) {
      const own = known.get(draft.piece) ?? (await records.index('piece').getAll(draft.piece)).map(parseKept);
      known.set(draft.piece, own);
      const now = new Date(first + at);
      const record = makeRecord(draft, {
        id: makeUuidV7(now.getTime(), (bytes) => crypto.getRandomValues(bytes)),
        seen: findSeen(foldPiece(draft.piece, own), draft),
        now: now.toISOString(),
        clock_s: meta.clock_s,
        person,
        device: meta.id,
        app,
        previous: chain,
      });
      const stored = writeRecord(record);
      if (stored.text.length > LONGEST_TEXT)
        throw new Error(
          `This is too long to be written down: ${stored.text.length} characters, ${LONGEST_TEXT} at most.`,
        );
      chain = linkOf(stored);
      own.push(record);
      written.push(record);
      const kept = { id: record.id, job: record.job, text: stored.text, mine: 1 } as const;
      asked.push(records.add({ ...kept, piece: record.piece }), unsent.add(kept));
    }
    for (const { job, piece } of written) asked.push(transaction.objectStore('pieces').put({ job, piece }));
    asked.push(metas.put({ ...meta, chain }, META_KEY));
    // Not left to the page, which may be gone before it hears of the last request.
    transaction.commit();
  } catch (error) {
    abort(transaction);
    throw tellWriteFault(error);
  }
  // A request that fails ends the transaction; the reason is that of the transaction.
  await Promise.allSettled(asked);
  await ended;
  return written;
}

function abort(transaction: { abort(): void }): void {
  try {
    transaction.abort();
  } catch {
    // It has ended already.
  }
}
