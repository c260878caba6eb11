import { expect, test } from 'vitest';
import type { OpenJob } from '../../src/wire/jobs.ts';
import type { Screen } from './harness/screen.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

/** The demo job as the server has it. */
async function readJob(): Promise<OpenJob> {
  const { jobs } = await (await fetch(`${office.server.address}/api/jobs`)).json();
  const demo = jobs.find(
    ({ name }: { name: string }) => name.startsWith('Boat store') && !name.endsWith('(own version)'),
  );
  return (await fetch(`${office.server.address}/api/jobs/${demo.id}`)).json();
}

const strengthOf = ({ file }: OpenJob) => file.job.pours.find(({ id }) => id === 'T14')?.strengthAtStrip_MPa;

/** The address of a screen with one field that is easily typed into. */
const pourPath = async () => `/job/${(await readJob()).id}/pours/T14`;

const field = ({ page }: Screen) => page.getByLabel('Strength before it is lifted out');

async function type(screen: Screen, value: number): Promise<void> {
  await field(screen).fill(String(value));
  await field(screen).press('Enter');
}

const saving = ({ page }: Screen) => page.getByRole('contentinfo').getByRole('status');

async function waitForSaving(screen: Screen, words: RegExp): Promise<void> {
  await expect.poll(() => saving(screen).textContent(), { timeout: 15_000 }).toMatch(words);
}

test('an edit is saved by itself, survives a reload, and can be undone after it', async () => {
  const screen = await office.open(await pourPath());
  const before = await field(screen).inputValue();
  await type(screen, 21);
  await waitForSaving(screen, /^Saved/);
  expect(strengthOf(await readJob())).toBe(21);
  await screen.page.reload();
  expect(await field(screen).inputValue()).toBe('21');
  await screen.page.getByRole('button', { name: /^Undo:/ }).click();
  expect(await field(screen).inputValue()).toBe(before);
  await screen.page.keyboard.press('Control+Shift+Z');
  expect(await field(screen).inputValue()).toBe('21');
  await waitForSaving(screen, /^Saved/);
  expect(strengthOf(await readJob())).toBe(21);
});

test('with the server gone edits stay on the device, through a reload too, and reach it when it is back', async () => {
  const screen = await office.open(await pourPath());
  await screen.page.evaluate(() => navigator.serviceWorker.ready.then(() => {}));
  await field(screen).waitFor();
  await screen.page.waitForLoadState('networkidle');
  await office.server.kill();
  await type(screen, 23);
  await waitForSaving(screen, /1 on this device only/);
  // The page itself comes from the service worker; the job cannot be opened until the server is back.
  await screen.page.reload();
  await screen.page.getByText('This job cannot be opened').waitFor();
  await office.server.restart();
  await screen.page.getByRole('button', { name: 'Try again' }).click();
  await field(screen).waitFor();
  expect(await field(screen).inputValue()).toBe('23');
  await waitForSaving(screen, /^Saved/);
  expect(strengthOf(await readJob())).toBe(23);
  screen.faults.expect(
    /ERR_CONNECTION_REFUSED|ERR_FAILED|ERR_INTERNET_DISCONNECTED|Failed to load resource|Failed to fetch/,
  );
  // What a worker was reading at that moment.
  screen.faults.allow(/\/assets\/.*ERR_CONNECTION_RESET/);
});

test('what is done in one window shows in the other', async () => {
  const first = await office.open(await pourPath());
  const second = await office.openBeside(first, await pourPath());
  await type(first, 25);
  await expect.poll(() => field(second).inputValue(), { timeout: 15_000 }).toBe('25');
});

/** Two windows that went on from the same state; the second one's calls were held until the first had saved. */
async function makeConflict(
  first: number,
  second: number,
): Promise<{ readonly ours: Screen; readonly theirs: Screen }> {
  const theirs = await office.open(await pourPath());
  const ours = await office.open(await pourPath());
  const held: (() => void)[] = [];
  const gate = { isOpen: false };
  await ours.page.route('**/api/jobs/*/edits*', async (route) => {
    if (!gate.isOpen && route.request().method() === 'POST') await new Promise<void>((resolve) => held.push(resolve));
    await route.continue();
  });
  await type(ours, second);
  await type(theirs, first);
  await waitForSaving(theirs, /^Saved/);
  await expect.poll(() => held.length).toBeGreaterThan(0);
  gate.isOpen = true;
  for (const release of held) release();
  await ours.page.getByRole('dialog', { name: 'Edited here and elsewhere' }).waitFor();
  ours.faults.expect(/409/);
  return { ours, theirs };
}

test('two people in conflict: it is shown with the difference, both versions are kept, and theirs can be taken', async () => {
  const { ours } = await makeConflict(31, 32);
  const dialog = ours.page.getByRole('dialog');
  await expect.poll(() => dialog.textContent()).toMatch(/yours is kept on the server/);
  expect(await dialog.textContent()).toMatch(/pours changed/);
  await ours.checkAccess();
  await ours.shoot('conflict');
  await dialog.getByRole('button', { name: 'Go on with theirs' }).click();
  await expect.poll(() => field(ours).inputValue()).toBe('31');
  const job = await readJob();
  expect(strengthOf(job)).toBe(31);
  const { kept } = await (await fetch(`${office.server.address}/api/jobs/${job.id}/kept`)).json();
  const mine = await (await fetch(`${office.server.address}/api/jobs/${job.id}/kept/${kept[0].id}`)).json();
  expect(strengthOf(mine)).toBe(32);
});

test('in a conflict one can go on with the own version; theirs stays in the list of edits', async () => {
  const { ours } = await makeConflict(33, 34);
  await ours.page.getByRole('button', { name: 'Go on with mine' }).click();
  await waitForSaving(ours, /^Saved/);
  const job = await readJob();
  expect(strengthOf(job)).toBe(34);
  const before = await (await fetch(`${office.server.address}/api/jobs/${job.id}/at/${job.version - 1}`)).json();
  expect(strengthOf(before)).toBe(33);
});

test('in a conflict both can go on, as two jobs', async () => {
  const { ours } = await makeConflict(35, 36);
  await ours.page.getByRole('button', { name: 'Keep both as two jobs' }).click();
  await ours.page.getByText('(own version)').first().waitFor();
  expect(strengthOf(await readJob())).toBe(35);
  const { jobs } = await (await fetch(`${office.server.address}/api/jobs`)).json();
  const copy = jobs.find(({ name }: { name: string }) => name.endsWith('(own version)'));
  expect(strengthOf(await (await fetch(`${office.server.address}/api/jobs/${copy.id}`)).json())).toBe(36);
});
