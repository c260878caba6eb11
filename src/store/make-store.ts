import type { Kysely } from 'kysely';
import { type Access, drawId } from './access.ts';
import { makeDraftCache } from './draft-cache.ts';
import { createJob, jobAt, listJobs, openJob, readJobHead, removeJob, restoreJob } from './jobs.ts';
import { keepVersion, listKept, openKept } from './kept.ts';
import type { PhotoFiles } from './photos/photo-files.ts';
import { renewShapes } from './rebuild.ts';
import { listAsides, readAsides } from './records/asides.ts';
import { listForks } from './records/forks.ts';
import { hasLine, listRecords, readHead, readLog } from './records/log.ts';
import { listPeople, savePerson } from './records/people.ts';
import { takeRecords } from './records/take-records.ts';
import { issueRevision, listRevisions, openRevision } from './revisions.ts';
import { listEdits, saveEdits } from './save-edits.ts';
import { takeSteps } from './steps.ts';
import type { Store } from './store.ts';
import type { Tables } from './tables.ts';

/** As many jobs are kept at hand; the others are read again when they are used. */
const DRAFTS = 8;

/** What an open database gives: one connection in use at a time, and a way to end. */
export interface Database {
  readonly db: Kysely<Tables>;
  readonly close: () => Promise<void>;
}

/**
 * A store on an open database, whichever it is: tables and files are brought up to date first.
 * @param photos where photos lie: files, whatever the database
 * @param now the clock; given in tests
 */
export async function makeStore(
  { db, close }: Database,
  photos: PhotoFiles,
  now: () => Date = () => new Date(),
): Promise<Store> {
  const access: Access = { db, drafts: makeDraftCache(DRAFTS), now: () => now().toISOString(), newId: drawId };
  await takeSteps(db, access.now());
  await renewShapes(access);
  return {
    listJobs: (which) => listJobs(access, which),
    createJob: (file) => createJob(access, file),
    readJobHead: (id) => readJobHead(access, id),
    openJob: (id) => openJob(access, id),
    removeJob: (id) => removeJob(access, id),
    restoreJob: (id) => restoreJob(access, id),
    saveEdits: (id, edits) => saveEdits(access, id, edits),
    listEdits: (id, after) => listEdits(access, id, after),
    jobAt: (id, version) => jobAt(access, id, version),
    keepVersion: (id, kept) => keepVersion(access, id, kept),
    listKept: (id) => listKept(access, id),
    openKept: (id, kept) => openKept(access, id, kept),
    issueRevision: (id, revision) => issueRevision(access, id, revision),
    listRevisions: (id) => listRevisions(access, id),
    openRevision: (id, letter) => openRevision(access, id, letter),
    takeRecords: (job, texts) => takeRecords(access, job, texts),
    listRecords: (job, after, pieces) => listRecords(access, job, after, pieces),
    listAsides: (job) => listAsides(access, job),
    readAsides: () => readAsides(access),
    listForks: (job) => listForks(access, job),
    readHead: () => readHead(access),
    hasLine: (line) => hasLine(access, line),
    readLog: (after) => readLog(access, after),
    listPeople: () => listPeople(access),
    savePerson: (person) => savePerson(access, person),
    keepPhoto: (photo) => photos.keep(photo),
    openPhoto: (hash) => photos.open(hash),
    heldPhotos: (hashes) => photos.held(hashes),
    close,
  };
}
