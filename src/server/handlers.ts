import { ENGINE_VERSION } from '../engine/version.ts';
import { readJobDocument } from '../job/read-job-document.ts';
import type { Store } from '../store/store.ts';
import type { Handlers } from './handler.ts';
import { makeRecordHandlers } from './record-handlers.ts';
import { replyAbsent, replyConflict, replyFaults, replyNotFound } from './reply.ts';

/** What each route does: ask the store, word the answer. */
export function makeHandlers(store: Store): Handlers {
  return {
    ...makeRecordHandlers(store),

    health: async () => ({ status: 200, body: { ok: true, version: ENGINE_VERSION } }),

    listJobs: async ({ query }) => ({
      status: 200,
      body: { jobs: await store.listJobs({ removed: query.removed === 'yes' }) },
    }),

    createJob: async ({ body }) => {
      const read = readJobDocument(body.file);
      if (!read.ok) return replyFaults('the file is no sound job, and nothing was stored', read);
      return { status: 201, body: await store.createJob(read.file) };
    },

    openJob: async ({ params: { id } }) => {
      const answer = await store.openJob(id);
      return answer.kind === 'done' ? { status: 200, body: answer.value } : replyAbsent(id, answer);
    },

    removeJob: async ({ params: { id } }) => {
      const answer = await store.removeJob(id);
      return answer.kind === 'done' ? { status: 200, body: answer.value } : replyAbsent(id, answer);
    },

    restoreJob: async ({ params: { id } }) => {
      const answer = await store.restoreJob(id);
      return answer.kind === 'done' ? { status: 200, body: answer.value } : replyAbsent(id, answer);
    },

    saveEdits: async ({ params: { id }, body }) => {
      const answer = await store.saveEdits(id, body);
      if (answer.kind === 'done') return { status: 200, body: answer.value };
      if (answer.kind === 'conflict') return replyConflict(answer);
      if (answer.kind === 'faults') return replyFaults('the job would not be sound, and nothing was stored', answer);
      return replyAbsent(id, answer);
    },

    listEdits: async ({ params: { id }, query }) => {
      const answer = await store.listEdits(id, query.after);
      return answer.kind === 'done' ? { status: 200, body: answer.value } : replyAbsent(id, answer);
    },

    jobAt: async ({ params: { id, version } }) => {
      const answer = await store.jobAt(id, version);
      if (answer.kind === 'done') return { status: 200, body: answer.value };
      if (answer.kind === 'faults')
        return replyFaults(`version ${version} lies between edits that only together made a sound job`, answer);
      if (answer.kind === 'unknown') return replyNotFound(`job ${id} has not reached version ${version}`);
      return replyAbsent(id, answer);
    },

    keepVersion: async ({ params: { id }, body: { file, ...kept } }) => {
      const read = readJobDocument(file);
      if (!read.ok) return replyFaults('the file is no sound job, and nothing was stored', read);
      const answer = await store.keepVersion(id, { ...kept, file: read.file });
      return answer.kind === 'done' ? { status: 201, body: answer.value } : replyAbsent(id, answer);
    },

    listKept: async ({ params: { id } }) => {
      const answer = await store.listKept(id);
      return answer.kind === 'done' ? { status: 200, body: { kept: answer.value } } : replyAbsent(id, answer);
    },

    openKept: async ({ params: { id, kept } }) => {
      const answer = await store.openKept(id, kept);
      if (answer.kind === 'done') return { status: 200, body: answer.value };
      if (answer.kind === 'unknown') return replyNotFound(`job ${id} has no kept version ${kept}`);
      return replyAbsent(id, answer);
    },

    issueRevision: async ({ params: { id }, body }) => {
      const answer = await store.issueRevision(id, body);
      if (answer.kind === 'done') return { status: 201, body: answer.value };
      if (answer.kind === 'conflict') return replyConflict(answer);
      if (answer.kind === 'faults') return replyFaults('the job would not be sound, and nothing was issued', answer);
      if (answer.kind === 'absent') return replyAbsent(id, answer);
      const message = `revision ${body.letter} was issued on ${answer.issuedAt.slice(0, 10)}; a letter is issued once, take the next one`;
      return { status: 422, body: { error: 'issued-before', message } };
    },

    listRevisions: async ({ params: { id } }) => {
      const answer = await store.listRevisions(id);
      return answer.kind === 'done' ? { status: 200, body: { revisions: answer.value } } : replyAbsent(id, answer);
    },

    openRevision: async ({ params: { id, letter } }) => {
      const answer = await store.openRevision(id, letter);
      if (answer.kind === 'done') return { status: 200, body: answer.value };
      if (answer.kind === 'unknown') return replyNotFound(`revision ${letter} of job ${id} was not issued`);
      return replyAbsent(id, answer);
    },
  };
}
