import type { JobFile } from '../job/documents/job-file.ts';
import { readJobDocument } from '../job/read-job-document.ts';
import type { JobAt, JobHead, OpenJob } from '../wire/jobs.ts';
import { type Access, describeFile, findJob, isAbsent, showHead } from './access.ts';
import type { Absent, Done, Faulty, Unknown } from './job-store.ts';
import { openDraft, rebuild, writeCopy } from './rebuild.ts';

/** See JobStore. */
export async function listJobs({ db }: Access, { removed }: { readonly removed: boolean }): Promise<JobHead[]> {
  const rows = await db
    .selectFrom('jobs')
    .selectAll()
    .where('removed_at', removed ? 'is not' : 'is', null)
    .orderBy('saved_at', 'desc')
    .orderBy('id')
    .execute();
  return rows.map(showHead);
}

/** See JobStore. */
export async function createJob({ db, drafts, now, newId }: Access, file: JobFile): Promise<JobHead> {
  const id = newId();
  const at = now();
  const row = {
    id,
    version: 0,
    saved_at: at,
    created_at: at,
    removed_at: null,
    issued: null,
    ...describeFile(file),
  };
  await db.transaction().execute(async (all) => {
    await all.insertInto('jobs').values(row).execute();
    await writeCopy(all, id, 0, file);
  });
  drafts.put(id, { version: 0, file });
  return showHead(row);
}

/** See JobStore. */
export async function readJobHead({ db }: Access, id: string): Promise<Done<JobHead> | Absent> {
  const row = await findJob(db, id);
  return isAbsent(row) ? row : { kind: 'done', value: showHead(row) };
}

/** See JobStore. */
export async function openJob(access: Access, id: string): Promise<Done<OpenJob> | Absent> {
  return access.db.transaction().execute(async (all): Promise<Done<OpenJob> | Absent> => {
    const row = await findJob(all, id);
    if (isAbsent(row)) return row;
    const file = await openDraft(access, all, row);
    return { kind: 'done', value: { id, version: row.version, savedAt: row.saved_at, file } };
  });
}

/** See JobStore. */
export async function jobAt(
  { db }: Access,
  id: string,
  version: number,
): Promise<Done<JobAt> | Absent | Unknown | Faulty> {
  return db.transaction().execute(async (all): Promise<Done<JobAt> | Absent | Unknown | Faulty> => {
    const row = await findJob(all, id);
    if (isAbsent(row)) return row;
    if (version > row.version) return { kind: 'unknown' };
    const read = readJobDocument(await rebuild(all, id, version));
    if (!read.ok) return { kind: 'faults', faults: read.faults };
    return { kind: 'done', value: { id, version, file: read.file } };
  });
}

/** See JobStore. */
export async function removeJob({ db, now }: Access, id: string): Promise<Done<{ removedAt: string }> | Absent> {
  return db.transaction().execute(async (all): Promise<Done<{ removedAt: string }> | Absent> => {
    const row = await findJob(all, id);
    if (isAbsent(row)) return row;
    const removedAt = now();
    await all.updateTable('jobs').set({ removed_at: removedAt }).where('id', '=', id).execute();
    return { kind: 'done', value: { removedAt } };
  });
}

/** See JobStore. */
export async function restoreJob({ db }: Access, id: string): Promise<Done<JobHead> | Absent> {
  return db.transaction().execute(async (all): Promise<Done<JobHead> | Absent> => {
    await all.updateTable('jobs').set({ removed_at: null }).where('id', '=', id).execute();
    const row = await findJob(all, id);
    return isAbsent(row) ? row : { kind: 'done', value: showHead(row) };
  });
}
