import type { KeptHead, KeptVersion } from '../wire/kept.ts';
import { type Access, findJob, isAbsent } from './access.ts';
import type { Absent, Done, KeptInput, Unknown } from './job-store.ts';
import { readStored } from './rebuild.ts';
import type { Tables } from './tables.ts';

const HEAD = ['id', 'base', 'editor', 'reason', 'kept_at'] as const;

function showKept({ kept_at, ...head }: Pick<Tables['kept'], (typeof HEAD)[number]>): KeptHead {
  return { ...head, keptAt: kept_at };
}

/** See JobStore. */
export async function keepVersion(
  { db, now, newId }: Access,
  job: string,
  kept: KeptInput,
): Promise<Done<KeptHead> | Absent> {
  return db.transaction().execute(async (all): Promise<Done<KeptHead> | Absent> => {
    const row = await findJob(all, job);
    if (isAbsent(row)) return row;
    const { file, ...rest } = kept;
    const head = { id: newId(), ...rest, kept_at: now() };
    await all
      .insertInto('kept')
      .values({ ...head, job, body: JSON.stringify(file) })
      .execute();
    return { kind: 'done', value: showKept(head) };
  });
}

/** See JobStore. */
export async function listKept({ db }: Access, job: string): Promise<Done<readonly KeptHead[]> | Absent> {
  return db.transaction().execute(async (all): Promise<Done<readonly KeptHead[]> | Absent> => {
    const row = await findJob(all, job);
    if (isAbsent(row)) return row;
    const rows = await all.selectFrom('kept').select(HEAD).where('job', '=', job).orderBy('kept_at', 'desc').execute();
    return { kind: 'done', value: rows.map(showKept) };
  });
}

/** See JobStore. */
export async function openKept({ db }: Access, job: string, id: string): Promise<Done<KeptVersion> | Absent | Unknown> {
  return db.transaction().execute(async (all): Promise<Done<KeptVersion> | Absent | Unknown> => {
    const row = await findJob(all, job);
    if (isAbsent(row)) return row;
    const found = await all
      .selectFrom('kept')
      .select([...HEAD, 'body'])
      .where('job', '=', job)
      .where('id', '=', id)
      .executeTakeFirst();
    if (found === undefined) return { kind: 'unknown' };
    const { body, ...head } = found;
    return { kind: 'done', value: { ...showKept(head), file: readStored(body) } };
  });
}
