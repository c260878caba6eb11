import { expect, test, vi } from 'vitest';
import { messages } from '../../src/web/office/state/messages.ts';
import { sampleFile } from '../store/edits.ts';
import { HeldServer } from './harness/held-server.ts';
import { aMoment, isInConflict, isSaved, numberOf, renumber, told, usePages } from './harness/session-pages.ts';

vi.mock('../../src/web/office/state/outbox.ts', async () => ({
  Outbox: (await import('./harness/memory-outbox.ts')).MemoryOutbox,
}));
vi.mock('../../src/web/office/state/editor.ts', async () => (await import('./harness/memory-outbox.ts')).editors);

const pages = usePages();

/** The numbers in all versions that the server keeps. */
async function readKept(): Promise<readonly (string | null)[]> {
  const list = await pages.server.store.listKept(pages.id);
  if (list.kind !== 'done') throw new Error('the job is not there');
  const opened = await Promise.all(list.value.map((kept) => pages.server.store.openKept(pages.id, kept.id)));
  return opened.map((one) => (one.kind === 'done' ? one.value.file.job.project.number : null));
}

test('an edit made at the moment when edits of others are taken stays', async () => {
  const session = await pages.open();
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  const state = { isMade: false };
  // As soon as theirs is there, in the same breath.
  const stop = session.saver.saving.subscribe(() => {
    if (session.saver.version !== 1 || state.isMade) return;
    state.isMade = true;
    queueMicrotask(() => renumber(session, 'mine'));
  });
  await session.refresh();
  await aMoment();
  stop();
  expect(numberOf(session)).toBe('mine');
  await pages.agree(session);
});

test('an edit that comes while edits of others are asked for is met as a conflict, not written over', async () => {
  const session = await pages.open();
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  const release = pages.server.hold(/GET .*edits/, 'after');
  const asked = session.refresh();
  renumber(session, 'mine');
  release();
  await asked;
  expect(numberOf(session)).toBe('mine');
  await isInConflict(session);
});

test('a drag that began while edits of others were asked for is not moved away from under the hand', async () => {
  const session = await pages.open();
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  const release = pages.server.hold(/GET .*edits/, 'after');
  const asked = session.refresh();
  session.preview(({ job }) => {
    job.project.number = 'in hand';
  });
  release();
  await asked;
  expect(session.saver.version).toBe(0);
  session.preview(null);
  await session.refresh();
  expect(session.file.job.project.name).toBe('Elsewhere');
});

test('what is edited between a conflict and its decision is kept with the rest', async () => {
  const session = await pages.open();
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  const release = pages.server.hold(new RegExp(`GET /api/jobs/${pages.id}$`));
  renumber(session, 'one');
  await expect.poll(() => session.saver.saving.value.kind).toBe('conflict');
  // The server has not said yet what theirs is: nothing is shown, and the person goes on.
  renumber(session, 'two');
  release();
  await isInConflict(session);
  renumber(session, 'three');
  await session.takeTheirs();
  await pages.agree(session);
  expect(await readKept()).toContain('three');
});

test('what is edited while the own version is being kept is kept too, before it counts as kept', async () => {
  const session = await pages.open();
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  const release = pages.server.hold(/POST .*kept/, 'after');
  renumber(session, 'one');
  await expect.poll(() => pages.server.asked.some((name) => /POST .*kept/.test(name))).toBe(true);
  renumber(session, 'two');
  release();
  await isInConflict(session);
  expect(await readKept()).toContain('two');
});

test('two conflicts in a row: the own version is taken in the end', async () => {
  const session = await pages.open();
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  renumber(session, 'mine');
  await isInConflict(session);
  await pages.server.renameElsewhere(pages.id, 'Elsewhere again');
  await session.takeMine();
  await expect.poll(() => session.conflict.value?.theirs.version).toBe(2);
  await isInConflict(session);
  await session.takeMine();
  await pages.agree(session);
  expect(numberOf(session)).toBe('mine');
});

test('an own version that is taken after theirs was issued goes on under the next letter', async () => {
  const session = await pages.open();
  const revision = { letter: 'B', status: 'preliminary', date: '2026-11-30' } as const;
  session.commit('revision', ({ job }) => {
    job.revision = revision;
  });
  await isSaved(session);
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  await pages.server.store.issueRevision(pages.id, { base: 2, ...revision, note: null, recipients: [] });
  renumber(session, 'mine');
  await isInConflict(session);
  await session.takeMine();
  await pages.agree(session);
  expect(numberOf(session)).toBe('mine');
  expect(session.file.job.revision?.letter).toBe('C');
});

test('in a conflict that the server cannot keep nothing is decided until the own version is safe', async () => {
  const session = await pages.open();
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  pages.server.answer(/POST .*kept/, 422, 'not sound');
  renumber(session, 'mine');
  await expect.poll(() => session.conflict.value?.why).toBe('not sound');
  await session.takeTheirs();
  expect(session.conflict.value?.mine.job.project.number).toBe('mine');
});

test('a server that was put back to an earlier state is a conflict, not "saved"', async () => {
  const session = await pages.open();
  renumber(session, 'one');
  await isSaved(session);
  const { file } = await pages.server.read(pages.id);
  // The same job before the edit, as a copy of the data that was put back.
  const earlier = await HeldServer.start();
  const before = await earlier.create(sampleFile());
  const swap = (url: string, init: Parameters<typeof earlier.fetch>[1]) =>
    earlier.fetch(url.replace(pages.id, before), init);
  vi.stubGlobal('fetch', swap);
  await session.refresh();
  await isInConflict(session);
  expect(session.conflict.value?.isEarlier).toBe(true);
  await session.takeMine();
  await isSaved(session);
  expect((await earlier.read(before)).file).toEqual(file);
  session.close();
  await earlier.end();
});

test('a job that was removed elsewhere can be put back, with the edits that waited', async () => {
  const session = await pages.open();
  await pages.server.store.removeJob(pages.id);
  renumber(session, 'mine');
  await expect.poll(told).toMatch(/removed elsewhere/);
  messages.value.at(-1)?.action?.run();
  await pages.agree(session);
});

test('what the server refuses is told, and goes when it is undone', async () => {
  const session = await pages.open();
  const refuse = pages.server.answer(/POST .*edits/, 422, 'the job would not be sound');
  renumber(session, 'bad');
  await expect.poll(told).toMatch(/would not be sound.*Undo them/);
  refuse();
  session.undo();
  await pages.agree(session);
});

test('a call that is too long is sent in parts', async () => {
  const session = await pages.open();
  pages.server.answer(/POST .*edits.*(?:"label".*){3}/, 413, 'too long');
  for (const number of ['1', '2', '3', '4', '5']) renumber(session, number);
  await pages.agree(session);
  expect((await pages.server.read(pages.id)).version).toBe(5);
});

test('edits of others that do not fit what the page has bring the job as the server has it', async () => {
  const session = await pages.open();
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  // An edit of another job, as it comes when a page and its server have gone apart.
  const foreign = { op: 'replace', path: ['job', 'panels', 900, 'mark'], value: 'P900' } as const;
  const edit = { id: 'x', label: 'lost', at: '2026-11-30T08:00:00.000Z', changes: [foreign], back: [foreign] };
  const savedAt = '2026-11-30T08:00:00.000Z';
  const body = { version: 1, edits: [{ version: 1, editor: 'x', savedAt, edit }] };
  pages.server.answerWith(/GET .*edits/, 200, body);
  await session.refresh();
  expect(session.file.job.project.name).toBe('Elsewhere');
});

test('a letter that is issued without an edit is known in every window', async () => {
  const first = await pages.open();
  first.commit('revision', ({ job }) => {
    job.revision = { letter: 'B', status: 'preliminary', date: '2026-11-30' };
  });
  await isSaved(first);
  const { version } = await pages.server.read(pages.id);
  await pages.server.store.issueRevision(pages.id, {
    base: version,
    letter: 'B',
    status: 'preliminary',
    date: '2026-11-30',
    note: null,
    recipients: [],
  });
  await first.refresh();
  renumber(first, 'after');
  expect(first.file.job.revision?.letter).toBe('C');
});
