import { findRevisionInForce } from '../job/revision-in-force.ts';
import type { Store } from '../store/store.ts';
import type { YardJob } from '../wire/records.ts';
import type { Issued } from '../wire/revisions.ts';
import type { HandlersOf } from './handler.ts';
import { replyAbsent } from './reply.ts';

/** The clock as the yard hears it, to know its own by. */
function tellTime(): string {
  return new Date().toISOString();
}

/** The revision in force, with its file where the caller does not have it. */
async function openInForce(
  store: Store,
  id: string,
  issued: readonly Issued[],
  have: string | undefined,
): Promise<YardJob['inForce']> {
  const found = findRevisionInForce(issued);
  if (found === null) return null;
  const { letter, fingerprint } = found;
  if (fingerprint === have) return { letter, fingerprint, file: null };
  const opened = await store.openRevision(id, letter);
  if (opened.kind !== 'done') throw new Error(`revision ${letter} of job ${id} is listed and cannot be opened`);
  return { letter, fingerprint, file: opened.value.file };
}

/** Whether the log is the one that the caller knew; so where he knew none. */
async function isLogOf(store: Store, known: { readonly number: number; readonly hash: string } | undefined) {
  return known === undefined || (await store.hasLine(known));
}

/** What the routes of records, people and photos do. */
export function makeRecordHandlers(
  store: Store,
): HandlersOf<'yardJob' | 'takeRecords' | 'listRecords' | 'listPeople' | 'savePerson' | 'heldPhotos'> {
  return {
    yardJob: async ({ params: { id }, query }) => {
      const job = await store.readJobHead(id);
      if (job.kind !== 'done') return replyAbsent(id, job);
      const revisions = await store.listRevisions(id);
      if (revisions.kind !== 'done') return replyAbsent(id, revisions);
      // The head first: what else is told is at least as late as it.
      const head = await store.readHead();
      const body = {
        id,
        name: job.value.name,
        revisions: revisions.value,
        inForce: await openInForce(store, id, revisions.value, query.have),
        people: await store.listPeople(),
        asides: await store.listAsides(id),
        forks: await store.listForks(id),
        head,
        isKnown: await isLogOf(store, query.known),
        now: tellTime(),
      };
      return { status: 200, body };
    },

    takeRecords: async ({ params: { id }, query, body }) => {
      const answer = await store.takeRecords(id, body.texts);
      if (answer.kind !== 'done') return replyAbsent(id, answer);
      const isKnown = await isLogOf(store, query.known);
      return { status: 200, body: { ...answer.value, isKnown, now: tellTime() } };
    },

    listRecords: async ({ params: { id }, query }) => {
      const answer = await store.listRecords(id, query.after, query.pieces ?? null);
      if (answer.kind !== 'done') return replyAbsent(id, answer);
      const isKnown = await isLogOf(store, query.known);
      return { status: 200, body: { ...answer.value, isKnown, now: tellTime() } };
    },

    listPeople: async () => ({ status: 200, body: { people: await store.listPeople() } }),

    savePerson: async ({ body }) => ({ status: 200, body: { people: await store.savePerson(body) } }),

    heldPhotos: async ({ body }) => ({ status: 200, body: { held: await store.heldPhotos(body.photos) } }),
  };
}
