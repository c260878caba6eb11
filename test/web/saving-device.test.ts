import { expect, test } from 'vitest';
import type { OpenJob } from '../../src/wire/jobs.ts';
import type { Screen } from './harness/screen.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

async function readJob(): Promise<OpenJob> {
  const { jobs } = await (await fetch(`${office.server.address}/api/jobs`)).json();
  return (await fetch(`${office.server.address}/api/jobs/${jobs[0].id}`)).json();
}

const strengthOf = ({ file }: OpenJob) => file.job.pours.find(({ id }) => id === 'T14')?.strengthAtStrip_MPa;
const pourPath = async () => `/job/${(await readJob()).id}/pours/T14`;
const field = ({ page }: Screen) => page.getByLabel('Strength before it is lifted out');

async function type(screen: Screen, value: number): Promise<void> {
  await field(screen).fill(String(value));
  await field(screen).press('Enter');
}

async function isSaved(screen: Screen, value: number): Promise<void> {
  await expect.poll(async () => strengthOf(await readJob()), { timeout: 15_000 }).toBe(value);
  const saving = screen.page.getByRole('contentinfo').getByRole('status');
  await expect.poll(() => saving.textContent()).toMatch(/^Saved/);
}

/** Nothing of this tab reaches the server until the answer is called. */
async function cutOff({ page }: Screen): Promise<() => Promise<void>> {
  const pattern = '**/api/jobs/*/edits';
  await page.route(pattern, (route) => (route.request().method() === 'POST' ? route.abort() : route.continue()));
  return () => page.unroute(pattern);
}

const LOST = /ERR_FAILED|Failed to load resource/;

test('in a browser that keeps nothing edits reach the server, and the person is told', async () => {
  const screen = await office.open('/');
  await screen.context.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('not in this window', 'SecurityError');
    };
  });
  await screen.goto(await pourPath());
  await type(screen, 21);
  await isSaved(screen, 21);
  await screen.page.getByText(/keeps nothing on this device/).waitFor();
  await screen.shoot('keeps-nothing');
});

test('at an address of a network, where browsers give neither locks nor names by chance, a job is edited all the same', async () => {
  const screen = await office.open('/');
  await screen.context.addInitScript(() => {
    Reflect.deleteProperty(Navigator.prototype, 'locks');
    Reflect.deleteProperty(Navigator.prototype, 'serviceWorker');
    Reflect.deleteProperty(Crypto.prototype, 'randomUUID');
  });
  await screen.goto(await pourPath());
  await type(screen, 22);
  await isSaved(screen, 22);
});

test('an edit is on the device when the page is loaded anew in the same moment', async () => {
  const screen = await office.open(await pourPath());
  const restore = await cutOff(screen);
  await field(screen).fill('23');
  await screen.page.evaluate(() =>
    document.addEventListener('keydown', ({ key }) => {
      if (key === 'Enter') location.reload();
    }),
  );
  await Promise.all([screen.page.waitForEvent('load'), field(screen).press('Enter')]);
  expect(await field(screen).inputValue()).toBe('23');
  await restore();
  await isSaved(screen, 23);
  screen.faults.allow(LOST);
});

test('edits of an open tab are its own, and of a closed one the next takes them; a duplicated tab is another editor', async () => {
  const first = await office.open(await pourPath());
  const before = await field(first).inputValue();
  await cutOff(first);
  await type(first, 24);
  await first.page.getByText(/1 on this device only/).waitFor();
  const name = await first.page.evaluate(() => sessionStorage.getItem('onepour-editor'));
  // As a tab that was duplicated: it brings what the first one remembers.
  await first.context.addInitScript((kept) => {
    if (kept !== null && sessionStorage.getItem('onepour-editor') === null)
      sessionStorage.setItem('onepour-editor', kept);
  }, name);
  const second = await office.openBeside(first, await pourPath());
  expect(await field(second).inputValue()).toBe(before);
  expect(await second.page.evaluate(() => sessionStorage.getItem('onepour-editor'))).not.toBe(name);
  await first.page.close();
  // The browser lets go of what a closed tab held a moment later.
  const isHeld = () =>
    second.page.evaluate(async (editor) => {
      const { held = [] } = await navigator.locks.query();
      return held.some((lock) => lock.name === `onepour-editor-${editor}`);
    }, name);
  await expect.poll(isHeld).toBe(false);
  await second.page.reload();
  expect(await field(second).inputValue()).toBe('24');
  await isSaved(second, 24);
  first.faults.allow(LOST);
});

test('a version that the server does not keep is saved as a file before anything is decided', async () => {
  const ours = await office.open(await pourPath());
  const theirs = await office.open(await pourPath());
  const restore = await cutOff(ours);
  await ours.page.route('**/api/jobs/*/kept', (route) =>
    route.fulfill({ status: 422, json: { error: 'faults', message: 'the file is no sound job', faults: [] } }),
  );
  await type(ours, 26);
  await type(theirs, 25);
  await isSaved(theirs, 25);
  await restore();
  const dialog = ours.page.getByRole('dialog', { name: 'Edited here and elsewhere' });
  await dialog.getByText('the file is no sound job').waitFor();
  // A browser closes a dialog at the second Escape without asking; this one stays until it is decided.
  for (let k = 0; k < 4; k += 1) await ours.page.keyboard.press('Escape');
  await ours.page.waitForTimeout(200);
  await ours.checkAccess();
  await ours.shoot('conflict-not-kept');
  await dialog.getByRole('button', { name: 'Go on with theirs' }).click();
  await dialog.waitFor();
  const file = await ours.readDownload(() => dialog.getByRole('button', { name: 'Save mine as a file' }).click());
  expect(JSON.parse(new TextDecoder().decode(file.bytes)).job.pours.length).toBeGreaterThan(0);
  await dialog.getByRole('button', { name: 'Go on with theirs' }).click();
  await expect.poll(() => field(ours).inputValue()).toBe('25');
  ours.faults.allow(LOST);
  ours.faults.allow(/409|422/);
});
