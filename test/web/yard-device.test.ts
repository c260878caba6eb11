import { describe, expect, it } from 'vitest';
import type { SyncState } from '../../src/web/records/record-device.ts';
import { countRecords, tellAge, tellRoom, tellServer } from '../../src/web/yard/screens/device/device-words.ts';
import {
  checkTargets,
  checkWidth,
  findYardPiece,
  openYard,
  readServerRecords,
  setLight,
  TABLET,
} from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 20_000 };
const NOW = Date.parse('2026-11-30T10:00:00Z');

const SYNC: SyncState = {
  unsent: 3,
  sent: 12,
  held: 415,
  unsentPhotos: 1,
  state: 'idle',
  isServerThere: false,
  lastSyncAt: '2026-11-30T08:30:00.000Z',
  head: null,
  clock_s: null,
  problem: null,
};

describe('where the records are, in words', () => {
  it('says first what could be lost with the tablet', () => {
    const counts = countRecords(SYNC);
    expect(counts.map(({ count, isAtRisk }) => [count, isAtRisk])).toEqual([
      [3, true],
      [1, true],
      [12, false],
      [412, false],
    ]);
    expect(countRecords({ ...SYNC, unsent: 0, unsentPhotos: 0 }).some(({ isAtRisk }) => isAtRisk)).toBe(false);
  });

  it('tells when the server was heard', () => {
    expect(tellServer(SYNC, NOW)).toBe('The server does not answer. Last heard 1 h ago; it is tried again by itself.');
    expect(tellServer({ ...SYNC, lastSyncAt: null }, NOW)).toContain('never heard');
    expect(tellAge('2026-11-27T09:00:00Z', NOW)).toBe('3 days ago');
  });

  it('warns before there is no room', () => {
    const room = { used_bytes: 850e6, quota_bytes: 1e9, isKept: false, isNearlyFull: true };
    expect(tellRoom(room).warning).toMatch(/^Nearly full/);
    expect(tellRoom(room).used).toBe('850 MB used of 1.0 GB that the browser allows.');
    expect(tellRoom({ ...room, isNearlyFull: false, isKept: true })).toMatchObject({ warning: null });
  });
});

describe('the screen of this device', () => {
  it('shows what is here only while the server is away, saves it to a file, and another device takes it in', async () => {
    const { id } = await findYardPiece(office, 'P08');
    const screen = await openYard(office, `/yard/piece/${id}/after`, { person: 'setter' });
    const { page, context } = screen;
    await page.getByRole('button', { name: 'Comment', exact: true }).waitFor();
    await context.setOffline(true);
    for (const words of ['first', 'second']) {
      await page.getByRole('button', { name: 'Comment', exact: true }).tap();
      await page.getByLabel('What is to be said about this piece?').fill(words);
      await page.getByRole('button', { name: 'Write it down' }).tap();
    }
    await page.getByRole('link', { name: /2 on this device only/ }).tap();
    const here = page.getByRole('listitem').filter({ hasText: 'on this device only' });
    await expect.poll(() => here.first().textContent()).toMatch(/^2\s*on this device only/);
    await screen.shoot('device-unsent');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    const { name, bytes } = await screen.readDownload(() =>
      page.getByRole('button', { name: /^Save unsent to a file/ }).tap(),
    );
    expect(name).toMatch(/^onepour-unsent-.*\.json$/);
    expect(JSON.parse(new TextDecoder().decode(bytes))).toMatchObject({ format: 'onepour-records' });
    expect((await readServerRecords(office)).filter(({ piece }) => piece === id)).toEqual([]);
    await setLight(page, 'sun');
    await page.setViewportSize(TABLET.portrait);
    await screen.shoot('device-sun-portrait');
    await checkTargets(page);
    await checkWidth(page);
    // Another device brings them to the server; the first one may be lost.
    const other = await openYard(office, '/yard/device', { person: 'qa' });
    await other.page
      .locator('input[type="file"]')
      .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(bytes) });
    await other.page.getByText(/^Taken in: 2 new/).waitFor();
    await expect
      .poll(async () => (await readServerRecords(office)).filter(({ piece }) => piece === id).length, SOON)
      .toBe(2);
    await other.shoot('device-taken-in');
    await other.page
      .locator('input[type="file"]')
      .setInputFiles({ name: 'no.json', mimeType: 'application/json', buffer: Buffer.from('{}') });
    await other.page.getByText(/^Taken in/).waitFor({ state: 'detached' });
    // Back on the line the first one has nothing left to send.
    await context.setOffline(false);
    await page.getByRole('button', { name: 'Send now' }).tap();
    await page.getByText('All is sent.').waitFor(SOON);
    expect((await readServerRecords(office)).filter(({ piece }) => piece === id)).toHaveLength(2);
    screen.faults.allow(/ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_FAILED/);
  }, 120_000);

  it('changes the person', async () => {
    const screen = await openYard(office, '/yard/device', { person: 'setter' });
    const { page } = screen;
    await page.getByRole('button', { name: /^Change person/ }).tap();
    await screen.shoot('device-people');
    await checkTargets(page);
    await page.getByRole('button', { name: /F. Nobody \(invented QA\)/ }).tap();
    await page.getByRole('button', { name: /^Change person.*F. Nobody/ }).waitFor();
  });
});
