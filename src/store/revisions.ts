import { writeCanonical } from '../job/canonical.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { editJob } from '../job/edit/edit-job.ts';
import { hashText } from '../job/fingerprint.ts';
import { readJobDocument } from '../job/read-job-document.ts';
import type { Issued, IssuedRevision, NewRevision } from '../wire/revisions.ts';
import { type Access, findJob, isAbsent, showConflict } from './access.ts';
import type { Absent, Done, JobStore, Unknown } from './job-store.ts';
import { openDraft, readStored } from './rebuild.ts';
import { appendEdits } from './save-edits.ts';
import type { Tables } from './tables.ts';

/** Who makes the edit that sets the letter: the act of issuing, not a tab of a browser. */
const ISSUING = 'issuing';

const HEAD = ['letter', 'version', 'issued_at', 'fingerprint', 'transmittal'] as const;

function showIssued({ issued_at, transmittal, ...head }: Pick<Tables['issues'], (typeof HEAD)[number]>): Issued {
  return { ...head, ...JSON.parse(transmittal), issuedAt: issued_at };
}

type Outcome = Awaited<ReturnType<JobStore['issueRevision']>>;

/** See JobStore. */
export async function issueRevision(access: Access, id: string, call: NewRevision): Promise<Outcome> {
  const made = await access.db.transaction().execute(async (all): Promise<{ outcome: Outcome; file?: JobFile }> => {
    const row = await findJob(all, id);
    if (isAbsent(row)) return { outcome: row };
    const { base, letter, ...transmittal } = call;
    const before = await all
      .selectFrom('issues')
      .select('issued_at')
      .where('job', '=', id)
      .where('letter', '=', letter)
      .executeTakeFirst();
    if (before !== undefined) return { outcome: { kind: 'issued-before', issuedAt: before.issued_at } };
    if (base !== row.version) return { outcome: showConflict(row, base > row.version ? 'ahead' : 'behind') };

    const now = access.now();
    const { status, date } = transmittal;
    const draft = await openDraft(access, all, row);
    const lettered = editJob(
      draft,
      `Revision ${letter} issued`,
      ({ job }) => {
        if (writeCanonical(job.revision) !== writeCanonical({ letter, status, date }))
          job.revision = { letter, status, date };
      },
      { id: access.newId(), at: now },
    );
    const file = lettered?.file ?? draft;
    const read = readJobDocument(file);
    if (!read.ok) return { outcome: { kind: 'faults', faults: read.faults } };

    const edits = lettered === null ? [] : [lettered.edit];
    const { version } = await appendEdits(all, row, { editor: ISSUING, edits, file }, now);
    const body = writeCanonical(file);
    const head = {
      letter,
      version,
      issued_at: now,
      fingerprint: hashText(body),
      transmittal: JSON.stringify(transmittal),
    };
    await all
      .insertInto('issues')
      .values({ ...head, job: id, body })
      .execute();
    await all.updateTable('jobs').set({ issued: letter }).where('id', '=', id).execute();
    return { outcome: { kind: 'done', value: showIssued(head) }, file };
  });
  if (made.file !== undefined && made.outcome.kind === 'done')
    access.drafts.put(id, { version: made.outcome.value.version, file: made.file });
  return made.outcome;
}

/** See JobStore. */
export async function listRevisions({ db }: Access, id: string): Promise<Done<readonly Issued[]> | Absent> {
  return db.transaction().execute(async (all): Promise<Done<readonly Issued[]> | Absent> => {
    const row = await findJob(all, id);
    if (isAbsent(row)) return row;
    // A letter is set by an edit, so that two letters never stand at one version.
    const rows = await all.selectFrom('issues').select(HEAD).where('job', '=', id).orderBy('version').execute();
    return { kind: 'done', value: rows.map(showIssued) };
  });
}

/** See JobStore. */
export async function openRevision(
  { db }: Access,
  id: string,
  letter: string,
): Promise<Done<IssuedRevision> | Absent | Unknown> {
  return db.transaction().execute(async (all): Promise<Done<IssuedRevision> | Absent | Unknown> => {
    const row = await findJob(all, id);
    if (isAbsent(row)) return row;
    const found = await all
      .selectFrom('issues')
      .select([...HEAD, 'body'])
      .where('job', '=', id)
      .where('letter', '=', letter)
      .executeTakeFirst();
    if (found === undefined) return { kind: 'unknown' };
    const { body, ...head } = found;
    return { kind: 'done', value: { ...showIssued(head), file: readStored(body) } };
  });
}
