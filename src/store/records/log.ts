import type { Kysely } from 'kysely';
import { LOG_START } from '../../records/log-line.ts';
import { type LogHead, MOST_RECORDS, type RecordList } from '../../wire/records.ts';
import { type Access, findJob, isAbsent } from '../access.ts';
import type { Absent, Done } from '../job-store.ts';
import type { LogRow } from '../record-store.ts';
import type { Tables } from '../tables.ts';

/** Where the log ends, for the next line to be chained to; LOG_START stands for the line before the first. */
export async function findLogEnd(db: Kysely<Tables>): Promise<{ readonly number: number; readonly hash: string }> {
  const last = await db
    .selectFrom('records')
    .select(['number', 'log_hash as hash'])
    .orderBy('number', 'desc')
    .limit(1)
    .executeTakeFirst();
  return last ?? { number: 0, hash: LOG_START };
}

export function showLogHead({ number, hash }: { readonly number: number; readonly hash: string }): LogHead {
  return { number, hash: number === 0 ? null : hash };
}

/** See RecordStore. */
export async function readHead({ db }: Access): Promise<LogHead> {
  return showLogHead(await findLogEnd(db));
}

/** See RecordStore. */
export async function hasLine(
  { db }: Access,
  { number, hash }: { readonly number: number; readonly hash: string },
): Promise<boolean> {
  const line = await db.selectFrom('records').select('log_hash').where('number', '=', number).executeTakeFirst();
  return line?.log_hash === hash;
}

/** See RecordStore. */
export async function listRecords(
  { db }: Access,
  job: string,
  after: number,
  pieces: readonly string[] | null,
): Promise<Done<Pick<RecordList, 'records' | 'isAll' | 'head'>> | Absent> {
  return db.transaction().execute(async (all) => {
    const row = await findJob(all, job);
    if (isAbsent(row)) return row;
    const lines = all
      .selectFrom('records')
      .select(['number', 'text'])
      .orderBy('number')
      // One more than is given tells whether more follow.
      .limit(MOST_RECORDS + 1);
    const rows = await (pieces === null
      ? lines.where('job', '=', job).where('number', '>', after)
      : // Numbers by the index of pieces first, then the texts: else the whole log of the job is gone through for the sake of the order.
        lines.where('number', 'in', (inner) =>
          inner
            .selectFrom('records')
            .select('number')
            .where('job', '=', job)
            .where('piece', 'in', pieces)
            .where('number', '>', after),
        )
    ).execute();
    const head = showLogHead(await findLogEnd(all));
    return {
      kind: 'done',
      value: { records: rows.slice(0, MOST_RECORDS), isAll: rows.length <= MOST_RECORDS, head },
    };
  });
}

/** See RecordStore. */
export async function readLog({ db }: Access, after: number): Promise<readonly LogRow[]> {
  return db
    .selectFrom('records')
    .select([
      'number',
      'job',
      'id',
      'piece',
      'item',
      'kind',
      'device',
      'device_number as deviceNumber',
      'previous',
      'hash',
    ])
    .select(['log_hash as logHash', 'text', 'received_at as receivedAt'])
    .where('number', '>', after)
    .orderBy('number')
    .limit(MOST_RECORDS)
    .execute();
}
