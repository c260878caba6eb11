import * as z from 'zod';
import { editList, newEdits, saved } from './edits.ts';
import { badInput, conflict, diskFull, failed, faults, issuedBefore, notFound, refused, tooLarge } from './errors.ts';
import { jobAt, jobHead, jobList, newJob, openJob, removed } from './jobs.ts';
import { keptHead, keptList, keptVersion, newKept } from './kept.ts';
import {
  newRecords,
  peopleList,
  personBody,
  photosAsked,
  photosHeld,
  recordList,
  recordsAfter,
  recordsAsked,
  tookRecords,
  yardJob,
  yardJobAsked,
} from './records.ts';
import { issued, issuedList, issuedRevision, newRevision } from './revisions.ts';
import { jobId, versionInAddress } from './values.ts';

/** One route: both ends read it, the server to check and to describe, the office to call. */
export interface Route {
  readonly method: 'GET' | 'POST' | 'DELETE';
  /** Path with its parameters as `:name`. */
  readonly path: string;
  readonly summary: string;
  readonly params?: z.ZodObject;
  readonly query?: z.ZodObject;
  readonly body?: z.ZodObject;
  /** Answers by status; the one of 2xx is what was asked for. */
  readonly answers: Readonly<Record<number, z.ZodType>>;
}

/** What any call may be answered with. */
const ANY = { 400: badInput, 403: refused, 500: failed } as const;
const OF_JOB = { ...ANY, 404: notFound } as const;
const WITH_BODY = { 413: tooLarge, 415: badInput, 507: diskFull } as const;
const job = z.strictObject({ id: jobId });

export const routes = {
  health: {
    method: 'GET',
    path: '/api/health',
    summary: 'Whether the server answers, and the version of the program',
    answers: { ...ANY, 200: z.strictObject({ ok: z.literal(true), version: z.string() }) },
  },
  listJobs: {
    method: 'GET',
    path: '/api/jobs',
    summary: 'All jobs, saved last first; with ?removed=yes those that were removed',
    query: z.strictObject({ removed: z.enum(['yes', 'no']).default('no') }),
    answers: { ...ANY, 200: jobList },
  },
  createJob: {
    method: 'POST',
    path: '/api/jobs',
    summary: 'A new job of a job file; faults of the file come all at once',
    body: newJob,
    answers: { ...ANY, ...WITH_BODY, 201: jobHead, 422: faults },
  },
  openJob: {
    method: 'GET',
    path: '/api/jobs/:id',
    summary: 'A job as it stands',
    params: job,
    answers: { ...OF_JOB, 200: openJob },
  },
  removeJob: {
    method: 'DELETE',
    path: '/api/jobs/:id',
    summary: 'Takes a job out of the list; nothing is deleted, and it can be restored',
    params: job,
    answers: { ...OF_JOB, 200: removed },
  },
  restoreJob: {
    method: 'POST',
    path: '/api/jobs/:id/restore',
    summary: 'Puts a removed job back into the list',
    params: job,
    answers: { ...OF_JOB, 200: jobHead },
  },
  saveEdits: {
    method: 'POST',
    path: '/api/jobs/:id/edits',
    summary: 'Stores edits made on version base; answered once they are on disk. Sent twice they count once',
    params: job,
    body: newEdits,
    answers: { ...OF_JOB, ...WITH_BODY, 200: saved, 409: conflict, 422: faults },
  },
  listEdits: {
    method: 'GET',
    path: '/api/jobs/:id/edits',
    summary: 'Edits after a version, the earliest first, at most 500 at once',
    params: job,
    query: z.strictObject({ after: versionInAddress.default(0) }),
    answers: { ...OF_JOB, 200: editList },
  },
  jobAt: {
    method: 'GET',
    path: '/api/jobs/:id/at/:version',
    summary: 'A job as it stood after so many edits',
    params: z.strictObject({ id: jobId, version: versionInAddress }),
    answers: { ...OF_JOB, 200: jobAt, 422: faults },
  },
  keepVersion: {
    method: 'POST',
    path: '/api/jobs/:id/kept',
    summary: 'Keeps the other version of a conflict whole',
    params: job,
    body: newKept,
    answers: { ...OF_JOB, ...WITH_BODY, 201: keptHead, 422: faults },
  },
  listKept: {
    method: 'GET',
    path: '/api/jobs/:id/kept',
    summary: 'The versions kept of conflicts, the latest first',
    params: job,
    answers: { ...OF_JOB, 200: keptList },
  },
  openKept: {
    method: 'GET',
    path: '/api/jobs/:id/kept/:kept',
    summary: 'A version kept of a conflict, with its file',
    params: z.strictObject({ id: jobId, kept: z.string().max(40) }),
    answers: { ...OF_JOB, 200: keptVersion },
  },
  issueRevision: {
    method: 'POST',
    path: '/api/jobs/:id/revisions',
    summary: 'Freezes version base under a letter, with its hash and who is handed it',
    params: job,
    body: newRevision,
    answers: { ...OF_JOB, ...WITH_BODY, 201: issued, 409: conflict, 422: z.union([faults, issuedBefore]) },
  },
  listRevisions: {
    method: 'GET',
    path: '/api/jobs/:id/revisions',
    summary: 'Issued revisions, the earliest first',
    params: job,
    answers: { ...OF_JOB, 200: issuedList },
  },
  openRevision: {
    method: 'GET',
    path: '/api/jobs/:id/revisions/:letter',
    summary: 'An issued revision, with the file as it was frozen',
    params: z.strictObject({ id: jobId, letter: z.string().max(60) }),
    answers: { ...OF_JOB, 200: issuedRevision },
  },
  yardJob: {
    method: 'GET',
    path: '/api/jobs/:id/yard',
    summary:
      'What a yard needs of a job: the revision in force with its file, all issued ones, people, what is kept aside',
    params: job,
    query: yardJobAsked,
    answers: { ...OF_JOB, 200: yardJob },
  },
  takeRecords: {
    method: 'POST',
    path: '/api/jobs/:id/records',
    summary:
      'Takes texts of records; answered once they are on disk. Sent twice they count once; nothing is refused for coming late',
    params: job,
    query: recordsAsked,
    body: newRecords,
    answers: { ...OF_JOB, ...WITH_BODY, 200: tookRecords },
  },
  listRecords: {
    method: 'GET',
    path: '/api/jobs/:id/records',
    summary: 'Records of a job after a number of the log, the earliest first, at most 500 at once',
    params: job,
    query: recordsAfter,
    answers: { ...OF_JOB, 200: recordList },
  },
  listPeople: {
    method: 'GET',
    path: '/api/people',
    summary: 'People whom records name',
    answers: { ...ANY, 200: peopleList },
  },
  savePerson: {
    method: 'POST',
    path: '/api/people',
    summary: 'Adds a person or changes one; a name may be erased, the records stay',
    body: personBody,
    answers: { ...ANY, ...WITH_BODY, 200: peopleList },
  },
  heldPhotos: {
    method: 'POST',
    path: '/api/photos/held',
    summary: 'Which of these photos the server has',
    body: photosAsked,
    answers: { ...ANY, ...WITH_BODY, 200: photosHeld },
  },
} as const satisfies Readonly<Record<string, Route>>;

export type RouteName = keyof typeof routes;
