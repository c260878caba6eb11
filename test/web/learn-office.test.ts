import { expect, it } from 'vitest';
import { openDemo } from './harness/open-demo.ts';
import { findYardPiece, PaperTablet } from './harness/paper-tablet.ts';
import { serveSurveyedPiece } from './harness/surveyed-piece.ts';
import { checkTargets, openYard } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 20_000 };
const [SETTER, CHECKER] = ['demosetter01', 'demochecker1'];

/** Deviations of an honest tape along x and y, the same each time: about 2 mm, x 1.5 mm too far. */
const offOf = (k: number): readonly [number, number] => [
  1.5 + 3 * Math.sin(2.4 * k + 1),
  2.6 * Math.sin(1.7 * k) + (k % 7 === 0 ? 3 : 0),
];

/** Tapes all inserts of a piece. @param isCopied just what is printed, by the setter */
async function tapeAll(mark: string, serial: string, isCopied: boolean): Promise<void> {
  const { address } = office.server;
  const piece = await findYardPiece(address, mark, serial);
  const tablet = new PaperTablet(piece, `taped${mark}${serial}`.toLowerCase().padEnd(16, '0'));
  for (const { number, stage, taped, printed } of piece.plan.setOut.items) {
    const [dx, dy] = isCopied ? [0, 0] : offOf(number + 13 * Number(mark.slice(1)));
    const shown = printed.kind === 'plan' ? [printed.x, printed.y] : [printed.along, printed.aboveBed];
    tablet.write(SETTER!, { kind: 'placed', body: { stage, type: true, face: true, firm: true, note: null } }, number);
    tablet.write(
      isCopied ? SETTER! : CHECKER!,
      {
        kind: 'measured',
        body: {
          ...{ stage, level_mm: null, basis: 'tape' },
          x_mm: isCopied ? shown[0]! : Math.round(taped[0] + dx),
          y_mm: isCopied ? shown[1]! : Math.round(taped[1] + dy),
        },
      },
      number,
    );
  }
  await tablet.send(address);
}

it('says what to do next where nothing was measured, and takes common practice for the plates', async () => {
  const { page } = await openDemo(office, 'learned');
  await page.getByRole('heading', { name: 'Nothing was measured yet that counts' }).waitFor(SOON);
  expect(await page.getByRole('link', { name: 'Learned' }).getAttribute('aria-current')).toBe('page');
  await page.getByRole('link', { name: 'Pieces in the yard' }).waitFor();
});

it('puts readings together by one thing at a time, leaves out what looks copied, and draws each group', async () => {
  await tapeAll('P01', '1', true);
  await tapeAll('P02', '1', false);
  await tapeAll('P12', '1', false);
  await tapeAll('P13', '1', false);
  await tapeAll('P04', '1', false);
  await tapeAll('P08', '1', false);
  await serveSurveyedPiece(office, 'P03', '1', {});
  const screen = await openDemo(office, 'learned');
  const { page } = screen;
  const table = page.getByRole('table', { name: 'Bias and scatter by way of holding' });
  await table.waitFor(SOON);
  await page.getByText(/\d+ measured by C\. Nobody \(invented setter\) left out/).waitFor();
  // Taped before surveyed, each with its own line above.
  await table.getByText('taped in the form', { exact: true }).waitFor();
  await table.getByText('surveyed on the hard panel', { exact: true }).waitFor();
  await screen.shoot('learned', true);
  await screen.checkAccess();

  // By keyboard: another grouping, then another group into the pictures.
  const grouping = page.getByLabel('Inserts together');
  await grouping.focus();
  await page.keyboard.press('Home');
  const all = page.getByRole('row').filter({ hasText: /^all inserts/ });
  const cells = await all.first().getByRole('cell').allTextContents();
  expect(Number(cells[0])).toBeGreaterThan(20);
  for (const cell of cells.slice(1, 3))
    expect(cell).toMatch(/^[+−]\d+(\.\d)? mm[+−]\d+(\.\d)? mm to [+−]\d+(\.\d)? mm$/);
  expect(cells[5]).toMatch(/^\d+ %\d+ % to \d+ %$/);
  await page.getByRole('button', { name: 'show: pictures of all inserts, surveyed on the hard panel' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Pictures: all inserts, surveyed on the hard panel' }).waitFor();
  const pictures = page.getByRole('region', { name: /^Pictures/ }).getByRole('img');
  expect(await pictures.count()).toBe(5);

  await grouping.selectOption('setter');
  await page.getByText('For finding causes, not for grading people').waitFor();
  await page.getByRole('rowheader', { name: 'C. Nobody (invented setter)' }).first().waitFor();
  await screen.shoot('learned-setter', true);
  await grouping.selectOption('distance');
  await page.getByRole('rowheader', { name: 'up to 1000 mm' }).first().waitFor();
});

it('tells of every plate whether it goes on first time, the worst first, and the asked one before all', async () => {
  const screen = await openDemo(office, 'connection/C05');
  const { page } = screen;
  await page.getByRole('link', { name: 'Chance that its plate goes on first time' }).click();
  const table = page.getByRole('table', { name: 'Chance that a plate goes on first time, the worst first' });
  await page.getByRole('heading', { name: /of \d+ plates (is|are) below 99 of 100/ }).waitFor(SOON);
  expect(await table.getByRole('rowheader').first().textContent()).toMatch(/^C05/);
  await table
    .getByText(/from \d+ inserts of this yard/)
    .first()
    .waitFor();
  const shares = await table.locator('strong').allTextContents();
  const fits = shares.slice(1).map((share) => Number(/[\d.]+/.exec(share)![0]));
  expect(fits.length).toBeGreaterThan(5);
  expect(fits).toEqual(fits.toSorted((a, b) => a - b));
  await screen.shoot('plates', true);
  await screen.checkAccess();
});

it('tells the checker on the tablet how far most inserts lay off, from enough of them', async () => {
  const screen = await openYard(office, '/yard/device');
  const { page } = screen;
  await page
    .getByText(
      /^Held by template board: 19 of 20 inserts lay within \d+ mm of their place, taped in the form \(\d+ inserts\)/,
    )
    .waitFor(SOON);
  await screen.shoot('learned-device');
  await checkTargets(page);
});
