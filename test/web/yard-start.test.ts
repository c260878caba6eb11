import { describe, expect, it } from 'vitest';
import { checkTargets, checkWidth, openYard, PEOPLE, setLight } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

describe('where the yard begins', () => {
  it('asks for the job and the person, once, and says whether it works without the network', async () => {
    const screen = await openYard(office, null, { person: null });
    const { page } = screen;
    await page.getByRole('heading', { name: 'Who are you?' }).waitFor();
    await page.getByText('is the revision in force, for construction').waitFor();
    await page.getByText(/Works without the network|It works without the network/).waitFor();
    await screen.shoot('start-person');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    await page.getByRole('button', { name: PEOPLE.qa }).tap();
    await page.getByText('You are').waitFor();
    await page.reload();
    await page.getByRole('link', { name: /Go to the pours/ }).waitFor();
    expect(await page.getByText(PEOPLE.qa).count()).toBeGreaterThan(0);
    await screen.shoot('start-ready');
  });

  it('is read in the sun: black on white, in both ways of holding', async () => {
    const screen = await openYard(office, '/yard/pours', { hold: 'portrait' });
    const { page } = screen;
    await page.getByRole('link', { name: /^T12/ }).waitFor();
    await setLight(page, 'sun');
    const paper = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    expect(paper).toBe('rgb(255, 255, 255)');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    await screen.shoot('portrait-sun-pours');
    await setLight(page, 'night');
    await screen.checkAccess();
    await screen.shoot('portrait-night-pours');
  });
});

describe('a yard without a job', () => {
  const empty = useOffice({ hasDemo: false });

  it('says what to do in the office', async () => {
    const screen = await empty.open('/yard/');
    await screen.page.getByText('There is no job yet').waitFor();
    await screen.shoot('start-empty');
    await checkTargets(screen.page);
  });
});
