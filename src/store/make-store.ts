import type { Kysely } from 'kysely';
import { type Access, drawId } from './access.ts';
import { makeDraftCache } from './draft-cache.ts';
import type { JobStore } from './job-store.ts';
import { createJob, jobAt, listJobs, openJob, removeJob, restoreJob } from './jobs.ts';
import { keepVersion, listKept, openKept } from './kept.ts';
import { renewShapes } from './rebuild.ts';
import { issueRevision, listRevisions, openRevision } from './revisions.ts';
import { listEdits, saveEdits } from './save-edits.ts';
import { takeSteps } from './steps.ts';
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
 * @param now the clock; given in tests
 */
export async function makeStore({ db, close }: Database, now: () => Date = () => new Date()): Promise<JobStore> {
  const access: Access = { db, drafts: makeDraftCache(DRAFTS), now: () => now().toISOString(), newId: drawId };
  await takeSteps(db, access.now());
  await renewShapes(access);
  return {
    listJobs: (which) => listJobs(access, which),
    createJob: (file) => createJob(access, file),
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
    close,
  };
}
