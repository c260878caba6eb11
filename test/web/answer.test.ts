import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readPdf } from '../files/read-pdf.ts';
import type { Screen } from './harness/screen.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

/** Types a value as a person does: key by key. */
async function type(page: Page, label: string, value: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.fill('');
  await field.pressSequentially(value);
}

/** The least that gives an answer. */
async function sayTheLeast(page: Page): Promise<void> {
  await page.getByText('Fixing', { exact: true }).click();
  await page.getByLabel('Thread', { exact: true }).selectOption('M16');
  await type(page, 'Length of the insert', '100');
  await type(page, 'To the nearest edge, opening or joint', '60');
  await type(page, 'To the next nearest', '200');
  await page.getByLabel('Inserts beside it').selectOption('none');
}

/** Values and their fields of the list "Carries at most". */
async function readLimits(page: Page): Promise<readonly string[]> {
  return page.getByRole('region', { name: 'Carries at most' }).locator('strong').allTextContents();
}

const kN = (text: string) => Number.parseFloat(text);

/** Copies are kept where the test can read them, since no test has a clipboard of its own. */
async function watchCopies(screen: Screen): Promise<() => Promise<string>> {
  await screen.page.evaluate(() => {
    const kept = { text: '' };
    Object.assign(globalThis, { copied: kept });
    Object.defineProperty(navigator, 'share', { value: undefined, configurable: true });
    Object.defineProperty(navigator, 'clipboard', {
      value: {
        writeText: (text: string) => {
          kept.text = text;
          return Promise.resolve();
        },
      },
      configurable: true,
    });
  });
  return () => screen.page.evaluate(() => (globalThis as unknown as { copied: { text: string } }).copied.text);
}

describe('an insert out of place, on a phone', () => {
  it('is answered from opening to text, page and job', async () => {
    const screen = await office.open('/answer', { viewport: 'phone' });
    const { page } = screen;
    await page.getByRole('heading', { name: 'Say first what it is for' }).waitFor();
    await screen.checkAccess();
    await page.getByText('Fixing', { exact: true }).click();
    const fields = page.locator('form').first();
    expect(await fields.locator('input:not([type=radio]), select').count()).toBeLessThanOrEqual(10);
    await sayTheLeast(page);
    await page.getByRole('heading', { name: 'Carries at most' }).waitFor();
    const first = await readLimits(page);
    expect(first).toHaveLength(4);
    await expect.poll(() => page.locator('#answer').textContent()).toContain('Not said: tension and shear.');

    // Each value that is said in place of an assumption changes the answer as it is typed.
    await page.getByRole('button', { name: /Concrete of 12 MPa/ }).click();
    const strength = page.getByRole('textbox', { name: 'Strength today (cylinder)' });
    expect(await strength.evaluate((input) => input === document.activeElement)).toBe(true);
    await strength.pressSequentially('32');
    await expect.poll(async () => kN((await readLimits(page))[0]!)).toBeGreaterThan(kN(first[0]!));
    await type(page, 'Thickness of the concrete', '150');
    await page.getByText('Yes', { exact: true }).click();
    await type(page, 'Tension on this insert', '2');
    await type(page, 'Shear on this insert', '2');
    await expect.poll(() => page.locator('#answer').textContent()).toMatch(/not covered.*\d+ % of what it carries/);
    await screen.shoot('answer-phone', true);

    // What is known of the product turns it into a pass.
    await page.getByRole('button', { name: /No product document in hand/ }).click();
    const product = page.getByRole('textbox', { name: /Product document for EN 1992-4/ });
    expect(await product.evaluate((input) => input === document.activeElement)).toBe(true);
    await product.pressSequentially('Assessment 12');
    await product.press('Enter');
    await expect.poll(() => page.locator('#answer').textContent()).toContain('passes');
    await screen.checkAccess();

    const readCopy = await watchCopies(screen);
    await page.getByRole('button', { name: 'Send as text' }).click();
    await page.getByText('The text is copied').waitFor();
    const text = await readCopy();
    expect(text.split('\n').length).toBeLessThan(25);
    expect(text).toContain('M16 × 100 mm; edges at 60 mm and 200 mm');
    expect(text).toContain('PASSES');
    for (const figure of await readLimits(page)) expect(text).toContain(figure);

    const pdf = await screen.readDownload(() => page.getByRole('button', { name: 'Page as PDF' }).click());
    expect(pdf.name).toBe('out-of-place-M16-at-60-mm.pdf');
    const reading = await readPdf(pdf.bytes);
    expect(reading.pages).toHaveLength(1);
    expect(reading.texts.map((one) => one.text).join(' ')).toContain('accepted by (name)');

    await page.getByRole('button', { name: 'Make a job of it' }).click();
    await page.waitForURL(/\/job\/[^/]+\/panels/);
    await page.getByText('P1', { exact: true }).first().waitFor();
  });

  it('works without a connection, from values that survived', async () => {
    const screen = await office.open('/answer', { viewport: 'phone' });
    const { page, context } = screen;
    await sayTheLeast(page);
    await page.getByRole('heading', { name: 'Carries at most' }).waitFor();
    const online = await readLimits(page);
    // The worker keeps the rest in the background once the page is shown.
    await page.evaluate(() => navigator.serviceWorker.ready);
    await expect
      .poll(
        () =>
          page.evaluate(async () => {
            const names = await caches.keys();
            const kept = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
            return kept.flat().filter(({ url }) => /pdf-worker|give-answer|\.ttf/.test(url)).length;
          }),
        { timeout: 30_000 },
      )
      .toBeGreaterThanOrEqual(4);
    await office.server.stop();
    await context.setOffline(true);
    try {
      await page.reload();
      await page.getByRole('heading', { name: 'Carries at most' }).waitFor();
      expect(await readLimits(page)).toEqual(online);
      await page.getByLabel('Inserts beside it').selectOption('one');
      await page.getByRole('heading', { name: 'Still needed' }).waitFor();
      await type(page, 'To the nearest of them', '150');
      await expect.poll(async () => kN((await readLimits(page))[0] ?? 'NaN')).toBeLessThan(kN(online[0]!));
      const pdf = await screen.readDownload(() => page.getByRole('button', { name: 'Page as PDF' }).click());
      expect((await readPdf(pdf.bytes)).pages).toHaveLength(1);
      const job = await screen.readDownload(() => page.getByRole('button', { name: 'Make a job of it' }).click());
      expect(JSON.parse(new TextDecoder().decode(job.bytes))).toMatchObject({ format: 'onepour-job' });
    } finally {
      await context.setOffline(false);
      await office.server.restart();
    }
    screen.faults.expect(/ERR_INTERNET_DISCONNECTED|Failed to load resource|sw\.js|\/api\/jobs/);
  });

  it('stops at a lifting or brace insert, with no number', async () => {
    const screen = await office.open('/answer', { viewport: 'phone' });
    const { page } = screen;
    for (const role of ['Lifting', 'Brace']) {
      await page.getByText(role, { exact: true }).click();
      await page.getByRole('alert').getByText('STOP.').waitFor();
      expect(await page.locator('#answer').textContent()).not.toMatch(/\d/);
      expect(await page.getByRole('textbox', { name: /edge/ }).count()).toBe(0);
    }
    await screen.shoot('answer-stop-phone', true);
    await screen.checkAccess();
  });

  it('has nothing narrower than a finger, and nothing beside the screen', async () => {
    const screen = await office.open('/answer', { viewport: 'phone' });
    const { page } = screen;
    await sayTheLeast(page);
    await page.getByRole('heading', { name: 'Carries at most' }).waitFor();
    const low = await page
      .locator('#answer button, form input:not([type=radio]), form select, form label:has(input[type=radio])')
      .evaluateAll((all) =>
        all
          .filter((one) => one.checkVisibility())
          .map((one) => ({
            height: (one.closest('[class*=box]') ?? one).getBoundingClientRect().height,
            text: one.outerHTML.slice(0, 80),
          }))
          .filter(({ height }) => height < 48),
      );
    expect(low).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  });

  it('takes what cannot be as that, at its field', async () => {
    const screen = await office.open('/answer', { viewport: 'phone' });
    const { page } = screen;
    await sayTheLeast(page);
    await type(page, 'Thickness of the concrete', '90');
    const why = page.locator('#field-thickness_mm-why');
    await expect.poll(() => why.textContent()).toBe('It cannot be: expected more than 100 mm (length of the insert)');
    await page.getByRole('heading', { name: 'To put right' }).waitFor();
    await type(page, 'Thickness of the concrete', 'thick');
    await expect.poll(() => why.textContent()).toBe('Expected a number in mm');
    await type(page, 'Thickness of the concrete', '130');
    await page.getByRole('heading', { name: 'Carries at most' }).waitFor();
    expect(await why.count()).toBe(0);
  });

  it('speaks US units and other rules, and forgets all when it is cleared', async () => {
    const screen = await office.open('/answer', { viewport: 'phone' });
    const { page } = screen;
    await sayTheLeast(page);
    await page.getByText('Rules, units, light').click();
    await page.getByText('US', { exact: true }).click();
    await page.getByLabel('Rules', { exact: true }).selectOption('ACI 318-19');
    await expect.poll(() => page.locator('#answer').textContent()).toContain('ACI 318-19');
    expect((await readLimits(page)).every((figure) => figure.endsWith('kip'))).toBe(true);
    await type(page, 'To the nearest edge, opening or joint', '3-1/2');
    await expect.poll(() => page.locator('#answer').textContent()).toContain('3.5 in');
    await page.getByRole('button', { name: 'Clear' }).click();
    await page.getByRole('heading', { name: 'Say first what it is for' }).waitFor();
    await page.reload();
    await page.getByRole('heading', { name: 'Say first what it is for' }).waitFor();
  });
});

describe.each(['light', 'dark'] as const)('the page of an insert out of place, %s', (theme) => {
  it.each(['phone', 'tablet', 'desk'] as const)('is free of serious faults of access on the %s', async (viewport) => {
    const screen = await office.open('/answer', { viewport, theme });
    const { page } = screen;
    await sayTheLeast(page);
    await page.getByLabel('Inserts beside it').selectOption('one');
    await type(page, 'To the nearest of them', '150');
    await type(page, 'Tension on this insert', '5');
    await type(page, 'Shear on this insert', '0');
    await expect.poll(() => page.locator('#answer').textContent()).toContain('fails');
    await page.getByText('More that is known').click();
    await screen.shoot(`answer-${viewport}-${theme}`, true);
    await screen.checkAccess();
  });
});
