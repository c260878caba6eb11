import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { useOffice } from './harness.ts';

const office = useOffice();
const FOLDER = join(import.meta.dirname, '../../demo/typed-by-hand');

/** A schedule of the small job as a person chooses it, with a text in it replaced. */
function schedule(name: string, from = '', to = '') {
  const text = readFileSync(join(FOLDER, name), 'utf8');
  if (!text.includes(from)) throw new Error(`${name} holds no "${from}"`);
  return { name, mimeType: 'text/csv', buffer: Buffer.from(text.replace(from, to)) };
}

/** The small job with three faults: a letter in a number, a cell left out, a type that is not there. */
const WITH_FAULTS = [
  schedule('panels.csv', 'W2,40,160', 'W2,40,'),
  schedule('inserts.csv', 'W1,1,fixing,M16x103,,inside,,500', 'W1,1,fixing,M16x103,,inside,,5o0'),
  schedule('connections.csv'),
  schedule('loads.csv'),
  schedule('catalogue.csv', 'M12x70,', 'M12x71,'),
];

describe('the jobs', () => {
  it('lists the demo, and opens it', async () => {
    const { page } = await office.open('/');
    const row = page.getByRole('link', { name: /Boat store/ });
    await row.getByText('14 panels, 60 connections').waitFor();
    expect(await page.title()).toBe('Jobs – Onepour');
    await row.click();
    await page.getByRole('heading', { name: 'Panels' }).waitFor();
  });

  it('tell where one is: title and focus on each screen, and the place in the list on the way back', async () => {
    const { page } = await office.open('/');
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    await page.getByRole('link', { name: /Boat store/ }).click();
    await expect.poll(focused).toBe('Panels');
    await page.getByText(/^Of 14 panels/).waitFor();
    const scrolled = () => page.locator('#screen').evaluate((screen) => screen.scrollTop);
    await page.locator('#screen').evaluate((screen) => screen.scrollTo(0, 400));
    await expect.poll(scrolled).toBe(400);
    await page.locator('[data-panel]').nth(8).click();
    await expect.poll(focused).toMatch(/^Panel P/);
    await expect.poll(() => page.title()).toMatch(/^Panel P\d+ – SQ-17 – Onepour$/);
    await page.goBack();
    await expect.poll(focused).toBe('Panels');
    await expect.poll(scrolled).toBe(400);
    await page.getByRole('link', { name: 'Rules' }).click();
    await expect.poll(focused).toBe('Rules');
    expect(await scrolled()).toBe(0);
  });

  it('makes a job with its first panel, takes it out of the list and puts it back', async () => {
    const screen = await office.open('/');
    const { page } = screen;
    await page.getByRole('button', { name: 'New job' }).click();
    await page.getByRole('button', { name: 'Make the job' }).click();
    await page.getByText('The job has no name yet.').waitFor();
    await page.getByLabel('Name', { exact: true }).fill('Net loft');
    await page.getByLabel('Length').fill('4200');
    await page.getByRole('button', { name: 'Make the job' }).click();
    await page.getByRole('link', { name: 'P01', exact: true }).waitFor();
    await page.getByText('nothing is cast in yet').first().waitFor();
    await screen.goto('/');
    await page.getByRole('button', { name: 'Remove Net loft' }).click();
    await page.getByText('1 job was removed').waitFor();
    await page.getByRole('link', { name: /Net loft/ }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('link', { name: /Net loft/ }).waitFor();
  });

  it('is readable aloud and by contrast, in both themes', async () => {
    for (const theme of ['light', 'dark'] as const) {
      const screen = await office.open('/', { theme });
      await screen.page.getByRole('link', { name: /Boat store/ }).waitFor();
      await screen.checkAccess();
      await screen.shoot(`jobs-${theme}`);
      await screen.page.getByRole('button', { name: 'New job' }).click();
      await screen.checkAccess();
      await screen.shoot(`new-job-${theme}`);
    }
  });
});

describe('schedules with faults', () => {
  it('are told by file, row and column, put right in place, and made into a job', async () => {
    const screen = await office.open('/');
    const { page } = screen;
    await page.getByRole('button', { name: 'Read from files' }).click();
    await page.locator('input[type=file]').setInputFiles(WITH_FAULTS);
    await page.getByText(/^Fault 1 of \d+$/).waitFor();
    await page.getByText('catalogue.csv', { exact: true }).waitFor();
    await screen.checkAccess();
    await screen.shoot('files-faults');

    // The cell that is wrong has the keyboard.
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
      .toMatch(/row 3, thickness_mm, wrong: expected a number in mm/);
    await page.keyboard.type('160');
    await page.keyboard.press('F8');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
      .toMatch(/row 2, x_mm, wrong/);
    await page.keyboard.press('Control+a');
    await page.keyboard.type('500');
    await page.keyboard.press('Control+Enter');
    // What is left is the type, at each insert that names it.
    await page
      .getByText(/there is no catalogue item M12x70/)
      .first()
      .waitFor();
    await page.getByText('Fault 1 of', { exact: false }).waitFor();

    // A reload loses nothing that was typed.
    await page.reload();
    await page
      .getByText(/there is no catalogue item M12x70/)
      .first()
      .waitFor();
    await page.getByText(/thickness_mm/).waitFor({ state: 'detached' });
    await page.locator('input[type=file]').setInputFiles([schedule('catalogue.csv')]);
    await page.getByText('3 panels').waitFor();
    await page.getByText('no yard given').waitFor();

    const corrected = await screen.readDownload(() =>
      page
        .getByRole('listitem')
        .filter({ hasText: 'inserts.csv' })
        .getByRole('button', { name: 'Download as put right' })
        .click(),
    );
    expect(new TextDecoder().decode(corrected.bytes)).toContain('W1,1,fixing,M16x103,,inside,,500,2650');

    await page.getByRole('button', { name: 'Make a job of it' }).click();
    await page.getByRole('link', { name: 'W1', exact: true }).waitFor();
    await page.getByRole('link', { name: 'B1', exact: true }).waitFor();
  });

  it('are taken into an open job as one edit that can be undone', async () => {
    const screen = await office.open('/');
    const { page } = screen;
    await page.getByRole('link', { name: /Boat store/ }).click();
    await page.getByRole('button', { name: 'Read files in' }).click();
    await page
      .locator('input[type=file]')
      .setInputFiles(
        ['panels.csv', 'inserts.csv', 'connections.csv', 'loads.csv', 'catalogue.csv'].map((name) => schedule(name)),
      );
    await page.getByText(/3 panels new, 14 panels removed/).waitFor();
    await page.getByRole('button', { name: 'Take it into this job' }).click();
    await page.getByRole('link', { name: 'W1', exact: true }).waitFor();
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await page.getByText('14 panels', { exact: true }).waitFor();
  });

  it('are taken where they are dropped', async () => {
    const { page } = await office.open('/');
    await page.getByRole('link', { name: /Boat store/ }).waitFor();
    const texts = ['panels.csv', 'inserts.csv'].map((name) => [name, schedule(name).buffer.toString()] as const);
    await page.evaluate((files) => {
      const dataTransfer = new DataTransfer();
      for (const [name, text] of files) dataTransfer.items.add(new File([text], name));
      dispatchEvent(new DragEvent('dragover', { dataTransfer, cancelable: true }));
      dispatchEvent(new DragEvent('drop', { dataTransfer, cancelable: true }));
    }, texts);
    await page
      .getByText(/the file is missing/)
      .first()
      .waitFor();
    await page.getByText('14 rows, commas between columns, whole numbers').waitFor();
    await page.getByRole('button', { name: 'Leave panels.csv out' }).click();
    await page.getByText('3 rows, commas between columns').waitFor({ state: 'detached' });
  });

  it('of a job file are told by their place in it', async () => {
    const { page } = await office.open('/files');
    const job = JSON.parse(readFileSync(join(FOLDER, '../job.json'), 'utf8'));
    job.job.panels[2].thickness_mm = -5;
    const buffer = Buffer.from(JSON.stringify(job));
    await page.locator('input[type=file]').setInputFiles([{ name: 'job.json', mimeType: 'application/json', buffer }]);
    await page.getByText('job.json, job.panels[2].thickness_mm').first().waitFor();
  });

  it('whose cells cannot be told apart are put right as text', async () => {
    const { page } = await office.open('/files');
    const files = WITH_FAULTS.map((file) =>
      file.name === 'loads.csv' ? schedule('loads.csv', 'K1,wind out', 'K1,"wind out') : schedule(file.name),
    );
    await page.locator('input[type=file]').setInputFiles(files);
    const text = page.getByLabel('Text of loads.csv');
    await text.fill((await text.inputValue()).replace('"', ''));
    await page.getByRole('button', { name: 'Read again' }).click();
    await page.getByText('3 panels').waitFor();
    await page.getByRole('button', { name: 'Leave it' }).click();
    await page.getByText('No file is here yet').waitFor();
  });
});
