import type { Kysely } from 'kysely';
import type { JobFile } from '../job/documents/job-file.ts';
import { JOB_FILE_VERSION } from '../job/documents/job-file-version.ts';
import type { Edit } from '../job/edit/edit.ts';
import { applyEdit } from '../job/edit/edit-job.ts';
import { readJobDocument } from '../job/read-job-document.ts';
import type { Access } from './access.ts';
import { StoreError } from './job-store.ts';
import type { JobRow, Tables } from './tables.ts';

/** A full copy is stored when so many edits came after the last one. */
const EDITS_BETWEEN_COPIES = 50;

/** A job at a version: the last full copy before it, and the edits since. The shape is that of the time. */
export async function rebuild(db: Kysely<Tables>, id: string, version: number): Promise<JobFile> {
  const copy = await db
    .selectFrom('copies')
    .selectAll()
    .where('job', '=', id)
    .where('version', '<=', version)
    .orderBy('version', 'desc')
    .limit(1)
    .executeTakeFirstOrThrow();
  const edits = await db
    .selectFrom('edits')
    .select(['version', 'body'])
    .where('job', '=', id)
    .where('version', '>', copy.version)
    .where('version', '<=', version)
    .orderBy('version')
    .execute();
  // Bodies are what the store wrote: files and edits that were read before.
  if (copy.version + edits.length !== version)
    throw new StoreError(`job ${id}: edits between version ${copy.version} and ${version} are missing`);
  return edits.reduce((file, { body }) => applyEdit(file, JSON.parse(body) as Edit), JSON.parse(copy.body) as JobFile);
}

/** The job as it stands. */
export async function openDraft({ drafts }: Access, db: Kysely<Tables>, row: JobRow): Promise<JobFile> {
  const found = drafts.find(row.id, row.version);
  if (found !== null) return found;
  const file = await rebuild(db, row.id, row.version);
  drafts.put(row.id, { version: row.version, file });
  return file;
}

/** A stored file in today's shape. */
export function readStored(body: string): JobFile {
  const file = JSON.parse(body) as JobFile;
  if (file.version === JOB_FILE_VERSION) return file;
  const read = readJobDocument(file);
  if (!read.ok)
    throw new StoreError(`a stored file of version ${file.version} cannot be read: ${read.faults[0]?.text}`);
  return read.file;
}

export async function writeCopy(db: Kysely<Tables>, id: string, version: number, file: JobFile): Promise<void> {
  await db.deleteFrom('copies').where('job', '=', id).where('version', '=', version).execute();
  await db
    .insertInto('copies')
    .values({ job: id, version, body: JSON.stringify(file) })
    .execute();
}

/** Writes a full copy when the last one lies far enough back. */
export async function copyWhenDue(db: Kysely<Tables>, id: string, version: number, file: JobFile): Promise<void> {
  const { last } = await db
    .selectFrom('copies')
    .select(({ fn }) => fn.max('version').as('last'))
    .where('job', '=', id)
    .executeTakeFirstOrThrow();
  if (version - last >= EDITS_BETWEEN_COPIES) await writeCopy(db, id, version, file);
}

/**
 * Brings jobs of an earlier shape up to today's: a full copy in today's shape takes the place of the last state, so that edits to come
 * are made on it.
 * @throws StoreError for a job of a newer shape, or one that cannot be brought up; nothing is changed then
 */
export async function renewShapes(access: Access): Promise<void> {
  await access.db.transaction().execute(async (all) => {
    const rows = await all.selectFrom('jobs').selectAll().where('shape', '!=', JOB_FILE_VERSION).execute();
    for (const { id, version, name, shape } of rows) {
      const read = readJobDocument(await rebuild(all, id, version));
      if (!read.ok) throw new StoreError(`the job "${name}" has the shape ${shape}: ${read.faults[0]?.text}`);
      await writeCopy(all, id, version, read.file);
      await all.updateTable('jobs').set({ shape: read.file.version }).where('id', '=', id).execute();
    }
  });
}
