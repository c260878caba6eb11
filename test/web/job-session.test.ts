import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { messages } from '../../src/web/office/state/messages.ts';
import { JobSession } from '../../src/web/office/state/session.ts';
import { sampleFile } from '../store/edits.ts';
import { HeldServer } from './harness/held-server.ts';
import { device } from './harness/memory-outbox.ts';

const page = vi.hoisted(() => ({ editor: 'a', open: new Set<string>() }));

vi.mock('../../src/web/office/state/outbox.ts', async () => ({
  Outbox: (await import('./harness/memory-outbox.ts')).MemoryOutbox,
}));
vi.mock('../../src/web/office/state/editor.ts', () => ({
  takeEditor: async () => page.editor,
  listEditors: async () => page.open,
}));

let server: HeldServer;
let id: string;
const sessions: JobSession[] = [];

beforeEach(async () => {
  server = await HeldServer.start();
  id = await server.create(sampleFile());
  vi.stubGlobal('fetch', server.fetch);
  const events = new EventTarget();
  vi.stubGlobal('addEventListener', events.addEventListener.bind(events));
  vi.stubGlobal('removeEventListener', events.removeEventListener.bind(events));
  vi.stubGlobal('dispatchEvent', events.dispatchEvent.bind(events));
  Object.assign(page, { editor: 'a', open: new Set() });
  device.edits.clear();
  device.isBroken = false;
  messages.value = [];
});

afterEach(async () => {
  server.isAway = true;
  for (const session of sessions.splice(0)) session.close();
  await new Promise((resolve) => setTimeout(resolve, 20));
  vi.unstubAllGlobals();
  await server.end();
});

async function open(): Promise<JobSession> {
  const session = await JobSession.open(id);
  if (typeof session === 'string') throw new Error(`the job was not opened: ${session}`);
  sessions.push(session);
  return session;
}

/** Opens the job again as a page that was loaded anew does; nothing more comes of the one before. */
async function reload(session: JobSession): Promise<JobSession> {
  const wasAway = server.isAway;
  server.isAway = true;
  session.close();
  await new Promise((resolve) => setTimeout(resolve, 20));
  server.isAway = wasAway;
  return open();
}

const renumber = (session: JobSession, number: string) =>
  session.commit(`number ${number}`, ({ job }) => {
    job.project.number = number;
  });
const numberOf = (session: JobSession) => session.file.job.project.number;
const isSaved = (session: JobSession) =>
  expect.poll(() => session.saver.saving.value.kind, { timeout: 5000 }).toBe('saved');
const isInConflict = (session: JobSession) =>
  expect.poll(() => session.conflict.value?.kept, { timeout: 5000 }).toBe('on the server');
const told = () => messages.value.map(({ text }) => text).join('\n');

/** Page and server have the same job. */
async function agree(session: JobSession): Promise<void> {
  await isSaved(session);
  const { version, file } = await server.read(id);
  expect(session.saver.version).toBe(version);
  expect(session.file).toEqual(file);
}

/** The numbers in all versions that the server keeps. */
async function readKept(): Promise<readonly (string | null)[]> {
  const list = await server.store.listKept(id);
  if (list.kind !== 'done') throw new Error('the job is not there');
  const opened = await Promise.all(list.value.map((kept) => server.store.openKept(id, kept.id)));
  return opened.map((one) => (one.kind === 'done' ? one.value.file.job.project.number : null));
}

test('an edit made at the moment when edits of others are taken stays', async () => {
  const session = await open();
  await server.renameElsewhere(id, 'Elsewhere');
  const state = { isMade: false };
  // As soon as theirs is there, in the same breath.
  const stop = session.saver.saving.subscribe(() => {
    if (session.saver.version !== 1 || state.isMade) return;
    state.isMade = true;
    queueMicrotask(() => renumber(session, 'mine'));
  });
  await session.refresh();
  await new Promise((resolve) => setTimeout(resolve, 20));
  stop();
  expect(numberOf(session)).toBe('mine');
  await agree(session);
});

test('an edit that comes while edits of others are asked for is met as a conflict, not written over', async () => {
  const session = await open();
  await server.renameElsewhere(id, 'Elsewhere');
  const release = server.hold(/GET .*edits/, 'after');
  const asked = session.refresh();
  renumber(session, 'mine');
  release();
  await asked;
  expect(numberOf(session)).toBe('mine');
  await isInConflict(session);
});

test('a drag that began while edits of others were asked for is not moved away from under the hand', async () => {
  const session = await open();
  await server.renameElsewhere(id, 'Elsewhere');
  const release = server.hold(/GET .*edits/, 'after');
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
  const session = await open();
  await server.renameElsewhere(id, 'Elsewhere');
  const release = server.hold(new RegExp(`GET /api/jobs/${id}$`));
  renumber(session, 'one');
  await expect.poll(() => session.saver.saving.value.kind).toBe('conflict');
  // The server has not said yet what theirs is: nothing is shown, and the person goes on.
  renumber(session, 'two');
  release();
  await isInConflict(session);
  renumber(session, 'three');
  await session.takeTheirs();
  await agree(session);
  expect(await readKept()).toContain('three');
});

test('what is edited while the own version is being kept is kept too, before it counts as kept', async () => {
  const session = await open();
  await server.renameElsewhere(id, 'Elsewhere');
  const release = server.hold(/POST .*kept/, 'after');
  renumber(session, 'one');
  await expect.poll(() => server.asked.some((name) => /POST .*kept/.test(name))).toBe(true);
  renumber(session, 'two');
  release();
  await isInConflict(session);
  expect(await readKept()).toContain('two');
});

test('two conflicts in a row: the own version is taken in the end', async () => {
  const session = await open();
  await server.renameElsewhere(id, 'Elsewhere');
  renumber(session, 'mine');
  await isInConflict(session);
  await server.renameElsewhere(id, 'Elsewhere again');
  await session.takeMine();
  await expect.poll(() => session.conflict.value?.theirs.version).toBe(2);
  await isInConflict(session);
  await session.takeMine();
  await agree(session);
  expect(numberOf(session)).toBe('mine');
});

test('an own version that is taken after theirs was issued goes on under the next letter', async () => {
  const session = await open();
  const revision = { letter: 'B', status: 'preliminary', date: '2026-11-30' } as const;
  session.commit('revision', ({ job }) => {
    job.revision = revision;
  });
  await isSaved(session);
  await server.renameElsewhere(id, 'Elsewhere');
  await server.store.issueRevision(id, { base: 2, ...revision, note: null, recipients: [] });
  renumber(session, 'mine');
  await isInConflict(session);
  await session.takeMine();
  await agree(session);
  expect(numberOf(session)).toBe('mine');
  expect(session.file.job.revision?.letter).toBe('C');
});

test('a window tells of edits that another one left on the device when it was closed', async () => {
  const closed = await open();
  page.editor = 'b';
  page.open = new Set(['a', 'b']);
  const other = await open();
  server.isAway = true;
  renumber(closed, 'left');
  closed.close();
  await new Promise((resolve) => setTimeout(resolve, 20));
  server.isAway = false;
  await other.refresh();
  expect(told()).toBe('');
  page.open = new Set(['b']);
  await other.refresh();
  expect(told()).toMatch(/1 edit of a window that was closed/);
});

test('in a conflict that the server cannot keep nothing is decided until the own version is safe', async () => {
  const session = await open();
  await server.renameElsewhere(id, 'Elsewhere');
  server.answer(/POST .*kept/, 422, 'not sound');
  renumber(session, 'mine');
  await expect.poll(() => session.conflict.value?.why).toBe('not sound');
  await session.takeTheirs();
  expect(session.conflict.value?.mine.job.project.number).toBe('mine');
});

test('a lost acknowledgement, a reload and further edits: each edit is there once', async () => {
  const session = await open();
  server.isDeaf = true;
  renumber(session, 'one');
  await expect.poll(async () => (await server.read(id)).version, { timeout: 5000 }).toBe(1);
  renumber(session, 'two');
  await new Promise((resolve) => setTimeout(resolve, 20));
  server.isDeaf = false;
  const again = await reload(session);
  expect(numberOf(again)).toBe('two');
  renumber(again, 'three');
  await agree(again);
  expect((await server.read(id)).version).toBe(3);
  await expect.poll(() => device.edits.size).toBe(0);
});

test('a lost acknowledgement, edits of others and a reload: what was there already is not in the conflict', async () => {
  const session = await open();
  server.isDeaf = true;
  renumber(session, 'one');
  await expect.poll(async () => (await server.read(id)).version, { timeout: 5000 }).toBe(1);
  renumber(session, 'two');
  await server.renameElsewhere(id, 'Elsewhere');
  await new Promise((resolve) => setTimeout(resolve, 20));
  server.isDeaf = false;
  const again = await reload(session);
  await isInConflict(again);
  expect(numberOf(again)).toBe('two');
  expect(again.conflict.value?.theirs.file.job.project).toMatchObject({ name: 'Elsewhere', number: 'one' });
  // Once more, before anybody decides.
  const third = await reload(again);
  await isInConflict(third);
  await third.takeMine();
  await agree(third);
  expect(numberOf(third)).toBe('two');
});

test('an edit that reaches the server while the page is loaded anew is there at once', async () => {
  const session = await open();
  const release = server.hold(/POST .*edits/);
  renumber(session, 'late');
  await expect.poll(() => server.asked.some((name) => /POST .*edits/.test(name))).toBe(true);
  // The page is gone; its call is not. The new page reads the job before it arrives, and the list of edits after.
  page.open = new Set();
  const holdList = server.hold(/GET .*edits/);
  const opening = open();
  await expect.poll(() => server.asked.filter((name) => /GET .*edits/.test(name)).length).toBeGreaterThan(1);
  release();
  await expect.poll(async () => (await server.read(id)).version).toBe(1);
  holdList();
  const again = await opening;
  expect(numberOf(again)).toBe('late');
  await agree(again);
});

test('nothing may be edited until it is known what the device still has', async () => {
  const session = await open();
  server.isAway = true;
  renumber(session, 'waiting');
  const again = server.answer(/GET .*edits/, 500, 'out of order');
  await expect(reload(session)).rejects.toThrow();
  server.isAway = false;
  expect(await JobSession.open(id)).toBe('out of order');
  again();
  const third = await open();
  expect(numberOf(third)).toBe('waiting');
  await agree(third);
});

test('what waited when a page was loaded anew is undone first, and once', async () => {
  const session = await open();
  renumber(session, 'saved');
  await isSaved(session);
  server.isAway = true;
  renumber(session, 'waiting');
  await new Promise((resolve) => setTimeout(resolve, 20));
  server.isAway = false;
  const release = server.hold(/POST .*edits/);
  const again = await reload(session);
  const labels = () => again.history.stacks.value.done.map(({ label }) => label);
  await expect.poll(labels).toEqual(['number saved', 'number waiting']);
  release();
  again.undo();
  expect(numberOf(again)).toBe('saved');
  again.undo();
  expect(numberOf(again)).toBe(sampleFile().job.project.number);
  await agree(again);
});

test('what is made and saved while the history is loaded counts once', async () => {
  const session = await open();
  renumber(session, 'one');
  await isSaved(session);
  const release = server.hold(/GET .*edits\?after=0/);
  const again = await reload(session);
  renumber(again, 'two');
  await expect.poll(() => again.saver.version).toBe(2);
  release();
  const labels = () => again.history.stacks.value.done.map(({ label }) => label);
  await expect.poll(labels).toEqual(['number one', 'number two']);
});

test('what others did while the history was loaded ends what can be undone', async () => {
  const session = await open();
  renumber(session, 'saved');
  await isSaved(session);
  const release = server.hold(/GET .*edits\?after=0/, 'after');
  const again = await reload(session);
  await server.renameElsewhere(id, 'Elsewhere');
  await again.refresh();
  release();
  await new Promise((resolve) => setTimeout(resolve, 30));
  expect(again.history.stacks.value.done).toEqual([]);
});

test('edits of a page that was closed are taken over with those made on them', async () => {
  const closed = await open();
  server.isAway = true;
  renumber(closed, 'one');
  await new Promise((resolve) => setTimeout(resolve, 20));
  server.isAway = false;
  const posts = server.answer(/POST .*edits/, 500, 'out of order');
  page.editor = 'b';
  const other = await reload(closed);
  renumber(other, 'two');
  await new Promise((resolve) => setTimeout(resolve, 20));
  const again = await reload(other);
  expect(numberOf(again)).toBe('two');
  posts();
  again.saver.sendNow();
  await agree(again);
  expect((await server.read(id)).version).toBe(2);
});

test('edits keep their order when the clock is put back between two pages', async () => {
  const session = await open();
  server.isAway = true;
  renumber(session, 'one');
  await new Promise((resolve) => setTimeout(resolve, 20));
  server.isAway = false;
  const posts = server.answer(/POST .*edits/, 500, 'out of order');
  vi.spyOn(Date, 'now').mockReturnValue(1000);
  const again = await reload(session);
  renumber(again, 'two');
  vi.mocked(Date.now).mockRestore();
  await new Promise((resolve) => setTimeout(resolve, 20));
  const third = await reload(again);
  expect(numberOf(third)).toBe('two');
  posts();
});

test('a server that was put back to an earlier state is a conflict, not "saved"', async () => {
  const session = await open();
  renumber(session, 'one');
  await isSaved(session);
  const { file } = await server.read(id);
  // The same job before the edit, as a copy of the data that was put back.
  const earlier = await HeldServer.start();
  const before = await earlier.create(sampleFile());
  const swap = (url: string, init: Parameters<typeof earlier.fetch>[1]) => earlier.fetch(url.replace(id, before), init);
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

test('edits made on a state that the server no longer has are not put on another one', async () => {
  const session = await open();
  renumber(session, 'one');
  await isSaved(session);
  server.isAway = true;
  renumber(session, 'two');
  await new Promise((resolve) => setTimeout(resolve, 20));
  session.close();
  const earlier = await HeldServer.start();
  const before = await earlier.create(sampleFile());
  const waiting = [...device.edits.values()];
  for (const one of waiting) device.edits.set(one.id, { ...one, job: before });
  vi.stubGlobal('fetch', earlier.fetch);
  const again = await JobSession.open(before);
  if (typeof again === 'string') throw new Error(again);
  expect(numberOf(again)).toBe(sampleFile().job.project.number);
  expect(told()).toMatch(/1 edit of this device .* no longer has.*number two/);
  expect(device.edits.size).toBe(1);
  again.close();
  await earlier.end();
});

test('a browser that keeps nothing: edits reach the server, and the person is told', async () => {
  device.isBroken = true;
  const session = await open();
  renumber(session, 'one');
  await agree(session);
  expect(told()).toMatch(/keeps nothing on this device/);
  renumber(session, 'two');
  await agree(session);
});

const leave = () => {
  const event = new Event('beforeunload', { cancelable: true });
  dispatchEvent(event);
  return event.defaultPrevented;
};

test('a page is left without a question, unless it has edits that are not on the server', async () => {
  const session = await open();
  expect(leave()).toBe(false);
  server.isAway = true;
  renumber(session, 'one');
  await expect.poll(() => session.saver.saving.value.kind).toBe('waiting');
  expect(leave()).toBe(true);
  server.isAway = false;
  await isSaved(session);
  expect(leave()).toBe(false);
});

test('what was edited last is sent when the job is left for another screen', async () => {
  const session = await open();
  renumber(session, 'last');
  session.close();
  await expect.poll(async () => (await server.read(id)).file.job.project.number).toBe('last');
  const asked = server.asked.length;
  await new Promise((resolve) => setTimeout(resolve, 1500));
  expect(server.asked.length).toBe(asked);
});

test('a job that was removed elsewhere can be put back, with the edits that waited', async () => {
  const session = await open();
  await server.store.removeJob(id);
  renumber(session, 'mine');
  await expect.poll(told).toMatch(/removed elsewhere/);
  messages.value.at(-1)?.action?.run();
  await agree(session);
});

test('what the server refuses is told, and goes when it is undone', async () => {
  const session = await open();
  const refuse = server.answer(/POST .*edits/, 422, 'the job would not be sound');
  renumber(session, 'bad');
  await expect.poll(told).toMatch(/would not be sound.*Undo them/);
  refuse();
  session.undo();
  await agree(session);
});

test('a call that is too long is sent in parts', async () => {
  const session = await open();
  server.answer(/POST .*edits.*(?:"label".*){3}/, 413, 'too long');
  for (const number of ['1', '2', '3', '4', '5']) renumber(session, number);
  await agree(session);
  expect((await server.read(id)).version).toBe(5);
});

test('edits of others that do not fit what the page has bring the job as the server has it', async () => {
  const session = await open();
  await server.renameElsewhere(id, 'Elsewhere');
  // An edit of another job, as it comes when a page and its server have gone apart.
  const foreign = { op: 'replace', path: ['job', 'panels', 900, 'mark'], value: 'P900' } as const;
  const edit = { id: 'x', label: 'lost', at: '2026-11-30T08:00:00.000Z', changes: [foreign], back: [foreign] };
  const savedAt = '2026-11-30T08:00:00.000Z';
  const body = { version: 1, edits: [{ version: 1, editor: 'x', savedAt, edit }] };
  server.answerWith(/GET .*edits/, 200, body);
  await session.refresh();
  expect(session.file.job.project.name).toBe('Elsewhere');
});

test('a letter that is issued without an edit is known in every window', async () => {
  const first = await open();
  first.commit('revision', ({ job }) => {
    job.revision = { letter: 'B', status: 'preliminary', date: '2026-11-30' };
  });
  await isSaved(first);
  const { version } = await server.read(id);
  await server.store.issueRevision(id, {
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
