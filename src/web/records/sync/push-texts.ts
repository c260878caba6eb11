import type { TookRecords } from '../../../wire/records.ts';
import { META_KEY, readMeta, startAnew } from '../device-meta.ts';
import type { RecordDatabase, UnsentText } from '../record-db.ts';
import { putAside } from './put-aside.ts';
import { recordCalls, TEXTS_A_CALL, TEXTS_ON_WEAK_LINE } from './record-calls.ts';
import { haltOf, type Step } from './step.ts';

/** What sending came to: the server's answers as they came, and pieces of which a text was put aside. */
export interface Pushed {
  readonly pieces: readonly string[];
  /** Texts that the server would not even look at; they stay unsent. */
  readonly refused: string | null;
}

interface Batch {
  readonly keys: readonly number[];
  readonly texts: readonly UnsentText[];
}

/** Jobs of which something waits, in the order in which it began to. */
export async function listUnsentJobs(db: RecordDatabase): Promise<readonly string[]> {
  const jobs: string[] = [];
  const index = db.transaction('unsent').store.index('job');
  for (let at = await index.openKeyCursor(null, 'nextunique'); at !== null; at = await at.continue()) jobs.push(at.key);
  return jobs;
}

/**
 * Sends what waits of a job, oldest first, until the server has acknowledged all of it. A text leaves the device's list only on the server's word
 * that it has it: interrupted anywhere, the next round sends again what is not acknowledged, and the server finds it there.
 * @param onAnswer each answer with the clock when the call went out [ms]
 */
export async function pushTexts(
  db: RecordDatabase,
  job: string,
  onAnswer: (answer: TookRecords, sentAt: number) => Promise<void>,
): Promise<Step<Pushed>> {
  const pieces = new Set<string>();
  /** Refused by itself: the others go on without it. */
  const left = new Set<number>();
  let refused: string | null = null;
  let most = TEXTS_A_CALL;
  let size = most;
  for (;;) {
    const batch = await readBatch(db, job, size, left);
    if (batch.keys.length === 0) return { kind: 'done', value: { pieces: [...pieces], refused } };
    const sentAt = Date.now();
    const { head } = await readMeta(db);
    const called = await recordCalls.takeRecords(
      job,
      batch.texts.map(({ text }) => text),
      head,
    );
    if (called.kind === 'answered') {
      for (const piece of await settle(db, batch, called.value)) pieces.add(piece);
      await onAnswer(called.value, sentAt);
      size = most;
    } else if (called.kind === 'refused' && isOfContent(called.status)) {
      if (batch.keys.length === 1) {
        left.add(batch.keys[0]!);
        refused = called.error.message;
      }
      size = Math.max(1, Math.ceil(batch.keys.length / 2));
    } else if (called.kind === 'away' && batch.keys.length > TEXTS_ON_WEAK_LINE) {
      // A line that is too weak for all of it looks like none: once more with less, which it may carry.
      most = TEXTS_ON_WEAK_LINE;
      size = most;
    } else return haltOf(called);
  }
}

/** Statuses that speak of what was sent, so that sending less of it may do: 400, 413, 422. */
function isOfContent(status: number): boolean {
  return status === 400 || status === 413 || status === 422;
}

async function readBatch(db: RecordDatabase, job: string, size: number, left: ReadonlySet<number>): Promise<Batch> {
  const index = db.transaction('unsent').store.index('job');
  const most = size + left.size;
  const [keys, texts] = await Promise.all([index.getAllKeys(job, most), index.getAll(job, most)]);
  const places = keys.map((_, place) => place).filter((place) => !left.has(keys[place]!));
  const taken = places.slice(0, size);
  return { keys: taken.map((place) => keys[place]!), texts: taken.map((place) => texts[place]!) };
}

/** Takes off the list what the server has, keeps apart what it put aside, and gives the pieces of that. */
async function settle(db: RecordDatabase, batch: Batch, { took, forks }: TookRecords): Promise<readonly string[]> {
  const transaction = db.transaction(['unsent', 'asides', 'meta', 'records'], 'readwrite');
  const [unsent, asides, metas, records] = [
    transaction.objectStore('unsent'),
    transaction.objectStore('asides'),
    transaction.objectStore('meta'),
    transaction.objectStore('records'),
  ];
  const pieces: string[] = [];
  const asked: Promise<unknown>[] = [];
  for (const [place, { state, why }] of took.entries()) {
    const key = batch.keys[place];
    const sent = batch.texts[place];
    if (key === undefined || sent === undefined) continue;
    asked.push(unsent.delete(key));
    if (state !== 'aside') continue;
    const { id, job, text } = sent;
    asked.push(putAside(asides, { id, job, text, why: why ?? 'the server gave no reason' }));
    const kept = id === null ? undefined : await records.get(id);
    if (kept !== undefined) pieces.push(kept.piece);
  }
  const meta = await metas.get(META_KEY);
  if (meta !== undefined && forks.includes(meta.id)) asked.push(metas.put(startAnew(meta), META_KEY));
  await Promise.all([...asked, transaction.done]);
  return pieces;
}
