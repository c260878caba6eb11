import { describe, expect, it } from 'vitest';
import type { Screen } from './harness/screen.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

async function openDemo(options: Parameters<typeof office.open>[1] = {}): Promise<Screen> {
  const screen = await office.open('/', options);
  await screen.page
    .getByRole('link', { name: /Boat store/ })
    .last()
    .click();
  await screen.page.locator('li[aria-posinset="1"]').waitFor();
  await screen.page.getByLabel('Connections computed').waitFor({ state: 'detached' });
  return screen;
}

/** Takes a panel out, so that the draft differs from what was issued. */
async function removePanel({ page }: Screen, mark: string): Promise<void> {
  await page.getByRole('searchbox').fill(mark);
  await page.getByRole('button', { name: `More about ${mark}` }).click();
  await page.getByRole('button', { name: `Remove ${mark}` }).click();
  await page.getByText(`${mark} is removed`).waitFor();
}

describe('revisions', () => {
  it('are issued after the states were read, with a readable difference to the one before', async () => {
    const screen = await openDemo();
    const { page } = screen;
    await removePanel(screen, 'P07');
    await page.getByRole('link', { name: 'Revisions' }).click();
    await page
      .getByText(/^1 panel removed, .*13 panels unchanged\.$/)
      .first()
      .click();
    await page
      .getByText(/^removed, \d+ inserts$/)
      .first()
      .waitFor();

    await page.getByRole('button', { name: 'Issue revision C' }).click();
    const issue = page.getByRole('button', { name: 'Issue C, for construction' });
    await page.getByText(/6 fail: C\d+/).waitFor();
    await screen.checkAccess();
    expect(await issue.isDisabled()).toBe(true);
    await page.getByLabel(/I have read these/).check();
    await page.getByLabel('Note: what it is for').fill('P07 left out');
    await page.getByLabel('One more: name').fill('C. Nobody');
    await page.getByLabel('One more: name').press('Enter');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await issue.click();
    await page.getByText(/^Revision C is issued, for construction: fingerprint [0-9a-f]{12}\.$/).waitFor();
    const issued = page.locator('ol > li').filter({ hasText: 'P07 left out' });
    await issued.getByText(/1 panel removed, .*13 panels unchanged/).waitFor();
    await issued.getByText(/C\. Nobody/).waitFor();
    await page.getByText(/^Nothing changed, 13 panels unchanged\.$/).waitFor();

    const file = await screen.readDownload(() =>
      page.getByRole('button', { name: 'Revision C as a job file' }).click(),
    );
    expect(JSON.parse(new TextDecoder().decode(file.bytes)).job.revision.letter).toBe('C');
  });

  it('stand in the transmittal list by recipient and by panel, as CSV too', async () => {
    const screen = await openDemo();
    const { page } = screen;
    await page.getByRole('link', { name: 'Revisions' }).click();
    await page.getByRole('button', { name: 'Transmittal list' }).click();
    await page.getByRole('row', { name: /A\. Nobody/ }).waitFor();
    await page.getByRole('row', { name: /^P02 new changed/ }).waitFor();
    const panels = await screen.readDownload(() => page.getByRole('button', { name: 'Panels as CSV' }).click());
    const rows = new TextDecoder().decode(panels.bytes).trim().split('\r\n');
    expect(rows[0]).toMatch(/^panel,A,B/);
    expect(rows).toContainEqual(expect.stringMatching(/^P01,new,same/));
    const people = await screen.readDownload(() => page.getByRole('button', { name: 'Recipients as CSV' }).click());
    expect(new TextDecoder().decode(people.bytes)).toMatch(/^name,firm,A,B/);
    await screen.checkAccess();
    await screen.shoot('transmittal');
  });

  it('leave every edit in a list, and any state can be gone back to', async () => {
    const screen = await openDemo();
    const { page } = screen;
    const panels = await page.locator('li[aria-posinset]').first().getAttribute('aria-setsize');
    await removePanel(screen, 'P10');
    await page.getByRole('link', { name: 'Revisions' }).click();
    await page.getByText('Panel P10 removed').waitFor();
    // The one before the removal is the second of the list.
    await page
      .getByRole('button', { name: /^Go back to this state: after edit/ })
      .first()
      .click();
    await page.getByText('The job is as it was then.').waitFor();
    await page.getByText(/^Back to the state after: /).waitFor();
    await page.getByRole('link', { name: 'Panels' }).click();
    await page.getByRole('searchbox').fill('');
    await page.locator(`li[aria-posinset="1"][aria-setsize="${panels}"]`).waitFor();
  });

  it('show what was kept of a conflict, and make a job of it', async () => {
    const screen = await openDemo();
    const { page } = screen;
    const [, id = ''] = /\/job\/([a-z0-9]+)\//.exec(page.url()) ?? [];
    const at = `${office.server.address}/api/jobs/${id}`;
    const { version, file } = await (await fetch(at)).json();
    file.job.panels[0].thickness_mm += 20;
    const kept = await fetch(`${at}/kept`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ base: version, editor: 'another window', reason: 'Edited here and elsewhere', file }),
    });
    expect(kept.status, await kept.text()).toBe(201);
    await page.getByRole('link', { name: 'Revisions' }).click();
    const section = page.getByRole('region', { name: 'Kept versions' });
    await section.getByText(/^1 panel changed in itself/).click();
    await section.getByText(/^thickness 200 mm \(was 180\)$/).waitFor();
    await section.getByRole('button', { name: /^Make a job of it/ }).click();
    await page.waitForURL((url) => url.pathname.endsWith('/panels') && !url.pathname.includes(id));
    await page
      .getByText(/\(kept \d{4}-\d\d-\d\d\)/)
      .first()
      .waitFor();
  });

  it('are readable aloud and by contrast in both themes', async () => {
    for (const [theme, viewport] of [
      ['light', 'desk'],
      ['dark', 'phone'],
    ] as const) {
      const screen = await openDemo({ theme, viewport });
      const { page } = screen;
      await page.getByRole('link', { name: 'Revisions' }).click();
      await page.getByText('The job as it was created').waitFor();
      await screen.checkAccess();
      await screen.shoot(`revisions-${viewport}-${theme}`);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    }
  });
});
