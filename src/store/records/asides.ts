import type { Kysely } from 'kysely';
import { hashText } from '../../job/fingerprint.ts';
import type { AsideLine } from '../../records/verify/check-asides.ts';
import type { AsideRecord } from '../../wire/records.ts';
import type { Access } from '../access.ts';
import type { Tables } from '../tables.ts';
import type { NoRecord } from './sort-texts.ts';

/** Keeps texts aside; one that is kept already is not kept again. */
export async function keepAsides(
  db: Kysely<Tables>,
  job: string,
  asides: readonly NoRecord[],
  at: string,
): Promise<void> {
  if (asides.length === 0) return;
  const rows = asides.map(({ text, id, piece, why }) => {
    const body = JSON.stringify(text);
    return { job, hash: hashText(body), id, piece, why, body, at };
  });
  await db
    .insertInto('asides')
    .values(rows)
    .onConflict((conflict) => conflict.columns(['job', 'hash']).doNothing())
    .execute();
}

/** See RecordStore. */
export async function listAsides({ db }: Access, job: string): Promise<readonly AsideRecord[]> {
  const rows = await db
    .selectFrom('asides')
    .select(['id', 'piece', 'why', 'body', 'at'])
    .where('job', '=', job)
    .orderBy('at')
    .orderBy('hash')
    .execute();
  // The body is a text that keepAsides wrote.
  return rows.map(({ body, ...aside }) => ({ ...aside, text: JSON.parse(body) as string }));
}

/** See RecordStore. */
export async function readAsides({ db }: Access): Promise<readonly AsideLine[]> {
  return db
    .selectFrom('asides')
    .select(['hash', 'id', 'piece', 'why', 'body', 'at'])
    .orderBy('at')
    .orderBy('job')
    .orderBy('hash')
    .execute();
}
