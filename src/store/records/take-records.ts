import type { Kysely } from 'kysely';
import { hashLogLine } from '../../records/log-line.ts';
import type { StoredRecord } from '../../records/record-text.ts';
import type { TookRecords } from '../../wire/records.ts';
import { type Access, findJob, isAbsent } from '../access.ts';
import type { Absent, Done } from '../job-store.ts';
import type { RecordRow, Tables } from '../tables.ts';
import { keepAsides } from './asides.ts';
import { findForked, noteForks } from './forks.ts';
import { findLogEnd, showLogHead } from './log.ts';
import { type NoRecord, type SortedText, sortText } from './sort-texts.ts';

type Took = TookRecords['took'][number];
type Outcome = Done<Pick<TookRecords, 'took' | 'forks' | 'head'>> | Absent;
type Known = Pick<RecordRow, 'id' | 'hash' | 'number'>;

interface LogEnd {
  readonly number: number;
  readonly hash: string;
}

interface Sorting {
  readonly took: readonly Took[];
  readonly fresh: readonly RecordRow[];
  readonly asides: readonly NoRecord[];
  /** Where the log ends with the new ones. */
  readonly end: LogEnd;
}

/** Which of the ids stand in the log, in whatever job. */
async function findKnown(db: Kysely<Tables>, ids: readonly string[]): Promise<Known[]> {
  if (ids.length === 0) return [];
  return db.selectFrom('records').select(['id', 'hash', 'number']).where('id', 'in', ids).execute();
}

function makeRow({ record, text, hash }: StoredRecord, before: LogEnd, receivedAt: string): RecordRow {
  const { job, id, piece, item, kind, device, chain } = record;
  return {
    number: before.number + 1,
    job,
    id,
    piece,
    item,
    kind,
    device,
    device_number: chain.number,
    previous: chain.previous,
    hash,
    log_hash: hashLogLine(before.hash, job, hash),
    text,
    received_at: receivedAt,
  };
}

/** What becomes of each text, one after another, so that one that comes twice in a call is had the second time. */
function sortBatch(
  texts: readonly SortedText[],
  stored: readonly Known[],
  before: LogEnd,
  receivedAt: string,
): Sorting {
  const known = new Map(stored.map((row) => [row.id, row]));
  const took: Took[] = [];
  const fresh: RecordRow[] = [];
  const asides: NoRecord[] = [];
  let end = before;
  const putAside = (aside: NoRecord): void => {
    asides.push(aside);
    took.push({ id: aside.id, state: 'aside', number: null, why: aside.why });
  };
  for (const text of texts) {
    if (text.kind === 'aside') {
      putAside(text);
      continue;
    }
    const { record, hash } = text.stored;
    const { id, piece } = record;
    const there = known.get(id);
    if (there === undefined) {
      const row = makeRow(text.stored, end, receivedAt);
      end = { number: row.number, hash: row.log_hash };
      known.set(id, row);
      fresh.push(row);
      took.push({ id, state: 'stored', number: row.number, why: null });
    } else if (there.hash === hash) took.push({ id, state: 'had', number: there.number, why: null });
    else {
      const why = `the id stands for another text already, number ${there.number} of the log`;
      putAside({ kind: 'aside', text: text.stored.text, id, piece, why });
    }
  }
  return { took, fresh, asides, end };
}

/** See RecordStore. */
export async function takeRecords({ db, now }: Access, job: string, texts: readonly string[]): Promise<Outcome> {
  // Read before the transaction, so that it is short.
  const sorted = texts.map((text) => sortText(job, text));
  const records = sorted.flatMap((text) => (text.kind === 'record' ? [text.stored.record] : []));
  const devices = [...new Set(records.map(({ device }) => device))];
  return db.transaction().execute(async (all): Promise<Outcome> => {
    const row = await findJob(all, job);
    if (isAbsent(row) && !row.isRemoved) return row;
    const receivedAt = now();
    const known = await findKnown(
      all,
      records.map(({ id }) => id),
    );
    // Transactions come one after another, so that no other gives the same number.
    const { took, fresh, asides, end } = sortBatch(sorted, known, await findLogEnd(all), receivedAt);
    if (fresh.length > 0) {
      await all.insertInto('records').values(fresh).execute();
      await noteForks(all, fresh, receivedAt);
    }
    await keepAsides(all, job, asides, receivedAt);
    const forks = await findForked(all, devices);
    return { kind: 'done', value: { took, forks, head: showLogHead(end) } };
  });
}
