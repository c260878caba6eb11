import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { listPlanned } from '../../../src/assess/yard/piece-head.ts';
import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import { planPiece } from '../../../src/assess/yard/plan-piece.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import type { FactRecord } from '../../../src/records/record.ts';
import { readRecord } from '../../../src/records/record-text.ts';
import type { Office } from '../harness.ts';
import type { Screen } from './screen.ts';

/** A common tablet, held in both ways [px]. */
export const TABLET = { landscape: { width: 1180, height: 820 }, portrait: { width: 820, height: 1180 } } as const;

export type Hold = keyof typeof TABLET;

/** People of the demo, by what is on their keys. */
export const PEOPLE = {
  setter: 'C. Nobody (invented setter)',
  checker: 'D. Nobody (invented checker)',
  foreman: 'E. Nobody (invented foreman)',
  qa: 'F. Nobody (invented QA)',
  installer: 'K. Nobody (invented installer)',
} as const;

export interface YardOptions {
  readonly hold?: Hold;
  /** Null: nobody is chosen yet. */
  readonly person?: keyof typeof PEOPLE | null;
}

interface Served {
  readonly job: string;
  readonly file: JobFile;
}

/** The demo job as the yard gets it: the revision in force. */
export async function readYardJob({ server }: Office): Promise<Served> {
  const listed = (await (await fetch(`${server.address}/api/jobs`)).json()) as {
    readonly jobs: readonly { readonly id: string }[];
  };
  const job = listed.jobs[0]?.id;
  if (job === undefined) throw new Error('the store has no job; expected the demo');
  const yard = (await (await fetch(`${server.address}/api/jobs/${job}/yard`)).json()) as {
    readonly inForce: { readonly file: JobFile } | null;
  };
  if (yard.inForce === null) throw new Error('no revision is in force; expected one of the demo');
  return { job, file: yard.inForce.file };
}

/** A piece of the demo by its mark and serial, with its plan. */
export async function findYardPiece(
  office: Office,
  mark: string,
  serial = '1',
): Promise<{ readonly id: string; readonly plan: PiecePlan }> {
  const { job, file } = await readYardJob(office);
  const index = indexJob(file);
  const head = [...listPlanned(job, index).values()].find((one) => one.mark === mark && one.serial === serial);
  if (head === undefined) throw new Error(`no pour plans ${mark} no. ${serial}`);
  const bed = file.library.yard.beds.find(({ id }) => id === head.bed) ?? null;
  return { id: head.piece, plan: planPiece(index, { id: head.piece, mark, bed }) };
}

/** Everything that the server holds of the job. */
export async function readServerRecords(office: Office): Promise<readonly FactRecord[]> {
  const { job } = await readYardJob(office);
  const { records } = (await (await fetch(`${office.server.address}/api/jobs/${job}/records?after=0`)).json()) as {
    readonly records: readonly { readonly text: string }[];
  };
  return records.map(({ text }) => {
    const read = readRecord(text);
    if (!read.ok) throw new Error(`the server gave no record: ${read.why}`);
    return read.stored.record;
  });
}

/** Opens the yard on a tablet of its own, with the demo job taken and a person chosen, at the start or another address of the yard. */
export async function openYard(office: Office, path: string | null, options: YardOptions = {}): Promise<Screen> {
  const { hold = 'landscape', person = 'checker' } = options;
  const screen = await office.open('/yard/', {
    context: { viewport: TABLET[hold], hasTouch: true },
  });
  const { page } = screen;
  page.setDefaultTimeout(15_000);
  await page
    .getByRole('button', { name: /panels/ })
    .first()
    .tap();
  if (person !== null) {
    await page.getByRole('button', { name: PEOPLE[person] }).tap();
    await page.getByRole('link', { name: /Go to the pours/ }).waitFor();
    if (path !== null) await screen.goto(path);
  }
  return screen;
}

/** Changes the light at the screen's own key. */
export async function setLight(page: Page, light: 'shed' | 'sun' | 'night'): Promise<void> {
  while ((await page.locator('html').getAttribute('data-light')) !== light)
    await page.getByRole('button', { name: /^light/ }).tap();
}

/** Fails where something that can be tapped is too small for a glove: 48 px, and 78 px for digits and what counts. */
export async function checkTargets(page: Page): Promise<void> {
  const small = await page.evaluate(() => {
    const found: string[] = [];
    for (const target of document.querySelectorAll<HTMLElement>(
      'button, a, input, textarea, select, [role="button"]',
    )) {
      const { width, height } = target.getBoundingClientRect();
      if (width === 0 || height === 0 || target.closest('[aria-hidden="true"]') !== null) continue;
      const isMain = target.matches('[data-main], [data-digit]');
      const least = isMain ? 78 : 48;
      // A field of text is as wide as its row.
      if (width < least - 0.01 || height < (target.matches('input, textarea') ? 48 : least) - 0.01)
        found.push(
          `${target.textContent || target.ariaLabel}: ${Math.round(width)} × ${Math.round(height)} of ${least}`,
        );
    }
    return found;
  });
  expect(small, `too small to tap:\n${small.join('\n')}`).toEqual([]);
}

/** Fails where something is cut off at the side: a screen of the yard is never wider than the tablet. */
export async function checkWidth(page: Page): Promise<void> {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(wide, 'the screen is wider than the tablet').toBeLessThanOrEqual(0);
}
