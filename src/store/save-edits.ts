import type { Kysely } from 'kysely';
import { writeCanonical } from '../job/canonical.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { applyEdits } from '../job/edit/apply-edits.ts';
import type { Edit } from '../job/edit/edit.ts';
import { type EditList, MOST_EDITS, type NewEdits } from '../wire/edits.ts';
import { type Access, describeFile, findJob, isAbsent, showConflict } from './access.ts';
import type { Absent, Conflicting, Done, Faulty, SavedState } from './job-store.ts';
import { copyWhenDue, openDraft } from './rebuild.ts';
import type { JobRow, Tables } from './tables.ts';

type Outcome = Done<SavedState> | Absent | Conflicting | Faulty;

interface NewRows {
  readonly editor: string;
  readonly edits: readonly Edit[];
  /** The file after them. */
  readonly file: JobFile;
}

/** Puts edits behind the last one: their rows, the head of the job and, when due, a full copy. Runs inside a transaction. */
export async function appendEdits(
  db: Kysely<Tables>,
  row: JobRow,
  { editor, edits, file }: NewRows,
  savedAt: string,
): Promise<SavedState> {
  const version = row.version + edits.length;
  const rows = edits.map((edit, index) => ({
    job: row.id,
    version: row.version + index + 1,
    edit_id: edit.id,
    editor,
    saved_at: savedAt,
    body: JSON.stringify(edit),
  }));
  if (rows.length > 0) await db.insertInto('edits').values(rows).execute();
  await db
    .updateTable('jobs')
    .set({ ...describeFile(file), version, saved_at: savedAt })
    .where('id', '=', row.id)
    .where('version', '=', row.version)
    .execute();
  await copyWhenDue(db, row.id, version, file);
  return { version, savedAt };
}

interface StoredBefore extends SavedState {
  readonly count: number;
}

/** How many of the edits were stored right after their base by an earlier call; null where others stand there. */
async function countStored(db: Kysely<Tables>, row: JobRow, { base, edits }: NewEdits): Promise<StoredBefore | null> {
  const stored = await db
    .selectFrom('edits')
    .select(['edit_id', 'body', 'saved_at'])
    .where('job', '=', row.id)
    .where('version', '>', base)
    .orderBy('version')
    .limit(edits.length)
    .execute();
  const isSame = stored.every(({ edit_id, body }, index) => {
    const edit = edits[index];
    return edit?.id === edit_id && writeCanonical(edit) === writeCanonical(JSON.parse(body));
  });
  if (!isSame) return null;
  return { count: stored.length, version: base + stored.length, savedAt: stored.at(-1)?.saved_at ?? row.saved_at };
}

async function hasAny(db: Kysely<Tables>, job: string, edits: readonly Edit[]): Promise<boolean> {
  const ids = edits.map(({ id }) => id);
  if (new Set(ids).size < ids.length) return true;
  const found = await db
    .selectFrom('edits')
    .select('edit_id')
    .where('job', '=', job)
    .where('edit_id', 'in', ids)
    .limit(1)
    .executeTakeFirst();
  return found !== undefined;
}

/** See JobStore. */
export async function saveEdits(access: Access, id: string, call: NewEdits): Promise<Outcome> {
  const made = await access.db.transaction().execute(async (all): Promise<{ outcome: Outcome; file?: JobFile }> => {
    const row = await findJob(all, id);
    if (isAbsent(row)) return { outcome: row };
    if (call.base > row.version) return { outcome: showConflict(row, 'ahead') };
    const before = await countStored(all, row, call);
    if (before === null) return { outcome: showConflict(row, 'behind') };
    const { count, version, savedAt } = before;
    if (count === call.edits.length) return { outcome: { kind: 'done', value: { version, savedAt } } };
    const edits = call.edits.slice(count);
    if (await hasAny(all, id, edits)) return { outcome: showConflict(row, 'same-id') };
    const applied = applyEdits(await openDraft(access, all, row), edits);
    if (!applied.ok) return { outcome: { kind: 'faults', faults: applied.faults } };
    const { file } = applied;
    const value = await appendEdits(all, row, { editor: call.editor, edits, file }, access.now());
    return { outcome: { kind: 'done', value }, file };
  });
  // Only what is on disk may be remembered.
  if (made.file !== undefined && made.outcome.kind === 'done')
    access.drafts.put(id, { version: made.outcome.value.version, file: made.file });
  return made.outcome;
}

/** See JobStore. */
export async function listEdits({ db }: Access, id: string, after: number): Promise<Done<EditList> | Absent> {
  return db.transaction().execute(async (all): Promise<Done<EditList> | Absent> => {
    const row = await findJob(all, id);
    if (isAbsent(row)) return row;
    const rows = await all
      .selectFrom('edits')
      .select(['version', 'editor', 'saved_at', 'body'])
      .where('job', '=', id)
      .where('version', '>', after)
      .orderBy('version')
      .limit(MOST_EDITS)
      .execute();
    const edits = rows.map(({ version, editor, saved_at, body }) => ({
      version,
      editor,
      savedAt: saved_at,
      // The body is an edit that was read before it was stored.
      edit: JSON.parse(body) as Edit,
    }));
    return { kind: 'done', value: { version: row.version, edits } };
  });
}
