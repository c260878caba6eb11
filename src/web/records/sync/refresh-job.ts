import { JOB_FILE_VERSION } from '../../../job/documents/job-file-version.ts';
import type { YardJob } from '../../../wire/records.ts';
import { changeMeta, readMeta, startAnew } from '../device-meta.ts';
import type { RecordDatabase } from '../record-db.ts';
import { recordCalls } from './record-calls.ts';
import { haltOf, type Step } from './step.ts';

/**
 * Fetches what a yard needs of a job beside its records: revisions, people, what is kept aside; the file only where this device has not got it.
 * @param onAnswer the answer with the clock when the call went out [ms]
 */
export async function refreshJob(
  db: RecordDatabase,
  job: string,
  onAnswer: (answer: YardJob, sentAt: number) => Promise<void>,
): Promise<Step<null>> {
  const have = await findKeptFile(db, job);
  const sentAt = Date.now();
  const called = await recordCalls.yardJob(job, have, (await readMeta(db)).head);
  if (called.kind !== 'answered') return haltOf(called);
  const version: number = called.value.inForce?.file?.version ?? JOB_FILE_VERSION;
  if (version > JOB_FILE_VERSION)
    return { kind: 'refused', why: 'the job is of a newer version than this page: take the newer page first.' };
  await keepJob(db, called.value);
  await onAnswer(called.value, sentAt);
  return { kind: 'done', value: null };
}

/** Fingerprint of the revision in force as last heard, where its file is on this device in today's shape. */
async function findKeptFile(db: RecordDatabase, job: string): Promise<string | null> {
  const kept = await db.get('jobs', job);
  if (kept?.inForce == null) return null;
  const found = await db.get('files', kept.inForce.fingerprint);
  // One of an earlier shape is fetched anew.
  return found?.file.version === JOB_FILE_VERSION ? found.fingerprint : null;
}

/** Job and file in one transaction, so that the revision in force always has its file; files of revisions before it go. */
async function keepJob(db: RecordDatabase, { inForce, now: _, isKnown: __, ...rest }: YardJob): Promise<void> {
  const transaction = db.transaction(['jobs', 'files'], 'readwrite', { durability: 'strict' });
  const [jobs, files] = [transaction.objectStore('jobs'), transaction.objectStore('files')];
  const asked: Promise<unknown>[] = [];
  const head = inForce === null ? null : { letter: inForce.letter, fingerprint: inForce.fingerprint };
  asked.push(jobs.put({ ...rest, inForce: head, fetchedAt: new Date().toISOString() }));
  if (inForce !== null && inForce.file !== null)
    asked.push(files.put({ fingerprint: inForce.fingerprint, job: rest.id, file: inForce.file }));
  for (let at = await files.openCursor(); at !== null; at = await at.continue())
    if (at.value.job === rest.id && at.value.fingerprint !== inForce?.fingerprint) asked.push(at.delete());
  await Promise.all([...asked, transaction.done]);
  await changeMeta(db, (meta) => (rest.forks.some(({ device }) => device === meta.id) ? startAnew(meta) : meta));
}
