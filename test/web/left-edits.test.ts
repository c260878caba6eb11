import { expect, test, vi } from 'vitest';
import { JobSession } from '../../src/web/office/state/session.ts';
import { sampleFile } from '../store/edits.ts';
import { HeldServer } from './harness/held-server.ts';
import { device, page } from './harness/memory-outbox.ts';
import { aMoment, isInConflict, isSaved, numberOf, renumber, told, usePages } from './harness/session-pages.ts';

vi.mock('../../src/web/office/state/outbox.ts', async () => ({
  Outbox: (await import('./harness/memory-outbox.ts')).MemoryOutbox,
}));
vi.mock('../../src/web/office/state/editor.ts', async () => (await import('./harness/memory-outbox.ts')).editors);

const pages = usePages();

const leave = () => {
  const event = new Event('beforeunload', { cancelable: true });
  dispatchEvent(event);
  return event.defaultPrevented;
};

test('a window tells of edits that another one left on the device when it was closed', async () => {
  const closed = await pages.open();
  page.editor = 'b';
  page.open = new Set(['a', 'b']);
  const other = await pages.open();
  pages.server.isAway = true;
  renumber(closed, 'left');
  closed.close();
  await aMoment();
  pages.server.isAway = false;
  await other.refresh();
  expect(told()).toBe('');
  page.open = new Set(['b']);
  await other.refresh();
  expect(told()).toMatch(/1 edit of a window that was closed/);
});

test('a lost acknowledgement, a reload and further edits: each edit is there once', async () => {
  const session = await pages.open();
  pages.server.isDeaf = true;
  renumber(session, 'one');
  await expect.poll(async () => (await pages.server.read(pages.id)).version, { timeout: 5000 }).toBe(1);
  renumber(session, 'two');
  await aMoment();
  pages.server.isDeaf = false;
  const again = await pages.reload(session);
  expect(numberOf(again)).toBe('two');
  renumber(again, 'three');
  await pages.agree(again);
  expect((await pages.server.read(pages.id)).version).toBe(3);
  await expect.poll(() => device.edits.size).toBe(0);
});

test('a lost acknowledgement, edits of others and a reload: what was there already is not in the conflict', async () => {
  const session = await pages.open();
  pages.server.isDeaf = true;
  renumber(session, 'one');
  await expect.poll(async () => (await pages.server.read(pages.id)).version, { timeout: 5000 }).toBe(1);
  renumber(session, 'two');
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  await aMoment();
  pages.server.isDeaf = false;
  const again = await pages.reload(session);
  await isInConflict(again);
  expect(numberOf(again)).toBe('two');
  expect(again.conflict.value?.theirs.file.job.project).toMatchObject({ name: 'Elsewhere', number: 'one' });
  // Once more, before anybody decides.
  const third = await pages.reload(again);
  await isInConflict(third);
  await third.takeMine();
  await pages.agree(third);
  expect(numberOf(third)).toBe('two');
});

test('an edit that reaches the server while the page is loaded anew is there at once', async () => {
  const session = await pages.open();
  const release = pages.server.hold(/POST .*edits/);
  renumber(session, 'late');
  await expect.poll(() => pages.server.asked.some((name) => /POST .*edits/.test(name))).toBe(true);
  // The page is gone; its call is not. The new page reads the job before it arrives, and the list of edits after.
  page.open = new Set();
  const holdList = pages.server.hold(/GET .*edits/);
  const opening = pages.open();
  await expect.poll(() => pages.server.asked.filter((name) => /GET .*edits/.test(name)).length).toBeGreaterThan(1);
  release();
  await expect.poll(async () => (await pages.server.read(pages.id)).version).toBe(1);
  holdList();
  const again = await opening;
  expect(numberOf(again)).toBe('late');
  await pages.agree(again);
});

test('nothing may be edited until it is known what the device still has', async () => {
  const session = await pages.open();
  pages.server.isAway = true;
  renumber(session, 'waiting');
  const again = pages.server.answer(/GET .*edits/, 500, 'out of order');
  await expect(pages.reload(session)).rejects.toThrow();
  pages.server.isAway = false;
  expect(await JobSession.open(pages.id)).toBe('out of order');
  again();
  const third = await pages.open();
  expect(numberOf(third)).toBe('waiting');
  await pages.agree(third);
});

test('what waited when a page was loaded anew is undone first, and once', async () => {
  const session = await pages.open();
  renumber(session, 'saved');
  await isSaved(session);
  pages.server.isAway = true;
  renumber(session, 'waiting');
  await aMoment();
  pages.server.isAway = false;
  const release = pages.server.hold(/POST .*edits/);
  const again = await pages.reload(session);
  const labels = () => again.history.stacks.value.done.map(({ label }) => label);
  await expect.poll(labels).toEqual(['number saved', 'number waiting']);
  release();
  again.undo();
  expect(numberOf(again)).toBe('saved');
  again.undo();
  expect(numberOf(again)).toBe(sampleFile().job.project.number);
  await pages.agree(again);
});

test('what is made and saved while the history is loaded counts once', async () => {
  const session = await pages.open();
  renumber(session, 'one');
  await isSaved(session);
  const release = pages.server.hold(/GET .*edits\?after=0/);
  const again = await pages.reload(session);
  renumber(again, 'two');
  await expect.poll(() => again.saver.version).toBe(2);
  release();
  const labels = () => again.history.stacks.value.done.map(({ label }) => label);
  await expect.poll(labels).toEqual(['number one', 'number two']);
});

test('what others did while the history was loaded ends what can be undone', async () => {
  const session = await pages.open();
  renumber(session, 'saved');
  await isSaved(session);
  const release = pages.server.hold(/GET .*edits\?after=0/, 'after');
  const again = await pages.reload(session);
  await pages.server.renameElsewhere(pages.id, 'Elsewhere');
  await again.refresh();
  release();
  await aMoment();
  expect(again.history.stacks.value.done).toEqual([]);
});

test('edits of a page that was closed are taken over with those made on them', async () => {
  const closed = await pages.open();
  pages.server.isAway = true;
  renumber(closed, 'one');
  await aMoment();
  pages.server.isAway = false;
  const posts = pages.server.answer(/POST .*edits/, 500, 'out of order');
  page.editor = 'b';
  const other = await pages.reload(closed);
  renumber(other, 'two');
  await aMoment();
  const again = await pages.reload(other);
  expect(numberOf(again)).toBe('two');
  posts();
  again.saver.sendNow();
  await pages.agree(again);
  expect((await pages.server.read(pages.id)).version).toBe(2);
});

test('edits keep their order when the clock is put back between two pages', async () => {
  const session = await pages.open();
  pages.server.isAway = true;
  renumber(session, 'one');
  await aMoment();
  pages.server.isAway = false;
  const posts = pages.server.answer(/POST .*edits/, 500, 'out of order');
  vi.spyOn(Date, 'now').mockReturnValue(1000);
  const again = await pages.reload(session);
  renumber(again, 'two');
  vi.mocked(Date.now).mockRestore();
  await aMoment();
  const third = await pages.reload(again);
  expect(numberOf(third)).toBe('two');
  posts();
});

test('edits made on a state that the server no longer has are not put on another one', async () => {
  const session = await pages.open();
  renumber(session, 'one');
  await isSaved(session);
  pages.server.isAway = true;
  renumber(session, 'two');
  await aMoment();
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
  const session = await pages.open();
  renumber(session, 'one');
  await pages.agree(session);
  expect(told()).toMatch(/keeps nothing on this device/);
  renumber(session, 'two');
  await pages.agree(session);
});

test('a page is left without a question, unless it has edits that are not on the server', async () => {
  const session = await pages.open();
  expect(leave()).toBe(false);
  pages.server.isAway = true;
  renumber(session, 'one');
  await expect.poll(() => session.saver.saving.value.kind).toBe('waiting');
  expect(leave()).toBe(true);
  pages.server.isAway = false;
  await isSaved(session);
  expect(leave()).toBe(false);
});

test('what was edited last is sent when the job is left for another screen', async () => {
  const session = await pages.open();
  renumber(session, 'last');
  session.close();
  await expect.poll(async () => (await pages.server.read(pages.id)).file.job.project.number).toBe('last');
});

test('a job that was left while the server was away does not go on calling it; its edits come when it is opened', async () => {
  const session = await pages.open();
  pages.server.isAway = true;
  renumber(session, 'last');
  session.close();
  await aMoment();
  const asked = pages.server.asked.length;
  await new Promise((resolve) => setTimeout(resolve, 1500));
  expect(pages.server.asked.length).toBe(asked);
  pages.server.isAway = false;
  await pages.agree(await pages.open());
  expect((await pages.server.read(pages.id)).file.job.project.number).toBe('last');
});
