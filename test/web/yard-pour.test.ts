import { describe, expect, it } from 'vitest';
import { Finger } from './harness/finger.ts';
import { checkTargets, checkWidth, findYardPiece, openYard, readServerRecords, setLight } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

describe('pours and pieces', () => {
  it('shows a pour with what holds each piece, revision, concrete and whom to call', async () => {
    const screen = await openYard(office, '/yard/pours');
    const { page } = screen;
    const finger = new Finger(page);
    await page.getByRole('link', { name: /^T13/ }).waitFor();
    await screen.shoot('pours');
    await checkTargets(page);
    await finger.tap(/^T13/);
    await page.getByText('P13-H').waitFor();
    await page.getByText(/18 MPa at least/).waitFor();
    await page.getByText('000 0002').waitFor();
    await screen.shoot('pour');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    await setLight(page, 'sun');
    await screen.shoot('sun-pour');
    await page.setViewportSize({ width: 820, height: 1180 });
    await screen.shoot('portrait-sun-pour');
    await checkWidth(page);
  });

  it('finds a piece by its mark, with keys for marks that exist alone', async () => {
    const screen = await openYard(office, '/yard/pours');
    const { page } = screen;
    const finger = new Finger(page);
    await finger.tap(/^Find by mark/);
    await screen.shoot('find-by-mark');
    await checkTargets(page);
    await finger.tap(/^P1\b/);
    await finger.tap(/^P12 no. 2/);
    await page.getByRole('heading', { name: 'P12 no. 2' }).waitFor();
    expect(finger.touches).toBe(3);
  });

  it('goes back from what has no address of its own, by the key in the head', async () => {
    const { id } = await findYardPiece(office, 'P09');
    const { page } = await openYard(office, '/yard/pours');
    const finger = new Finger(page);
    await finger.tap(/^Find by mark/);
    await page.getByRole('heading', { name: 'Find by mark' }).waitFor();
    await finger.tap('Back');
    await page.getByRole('heading', { name: 'Pours' }).waitFor();
    await page.goto(new URL(`/yard/piece/${id}`, page.url()).href);
    await finger.tap(/^More …/);
    await finger.tap(/^Comment/);
    await finger.tap('Back');
    await page.getByRole('link', { name: /^The form/ }).waitFor();
  });

  it('begins another casting, scraps only by those who may, and names the new one as made in place', async () => {
    const { id } = await findYardPiece(office, 'P09');
    const screen = await openYard(office, `/yard/piece/${id}`);
    const { page } = screen;
    const finger = new Finger(page);
    await finger.tap(/^More …/);
    await expect.poll(() => page.getByRole('button', { name: /^Scrap it/ }).isDisabled()).toBe(true);
    await screen.shoot('piece-more');
    await checkTargets(page);
    await screen.checkAccess();
    await finger.tap(/^Another casting/);
    await screen.shoot('two-taps');
    await checkTargets(page);
    await finger.tap('Begin no. 2');
    await page.getByRole('heading', { name: 'P09 no. 2' }).waitFor();
    const foreman = await openYard(office, `/yard/piece/${id}`, { person: 'foreman' });
    const second = new Finger(foreman.page);
    await second.tap(/^More …/);
    await second.tap(/^Scrap it/);
    await second.tap(/^Cracked/);
    await foreman.shoot('scrap-reason');
    await checkTargets(foreman.page);
    await second.tap(/^Scrap it/);
    await second.tap(/^Yes, it is scrapped/);
    await foreman.page.getByText('scrapped').first().waitFor();
    await expect
      .poll(async () => (await readServerRecords(office)).map(({ kind }) => kind).sort())
      .toEqual(['piece-started', 'scrapped']);
  }, 90_000);
});
