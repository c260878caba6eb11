import { expect, it } from 'vitest';
import type { SetOutItem } from '../../src/assess/set-out/set-out.ts';
import { spotOf } from '../../src/web/pieces/survey/survey-targets.ts';
import { readPdf } from '../files/read-pdf.ts';
import { openDemo } from './harness/open-demo.ts';
import type { Download, Screen } from './harness/screen.ts';
import { findYardPiece } from './harness/yard.ts';
import { useOffice } from './harness.ts';
import { Hand, inPlace, type Tape } from './yard/hand.ts';

const office = useOffice();
/** A machine that runs other browsers beside it answers late. */
const SOON = { timeout: 45_000 };

/** The panel whose life it is; one of its connections has one insert, another two. */
const MARK = 'P10';
const POUR = 'T12';
const SINGLE = 'C34';
const PAIR = 'C33';

/** How far the insert of the one is off in the form, and one of the other as it came out [mm]. */
const IN_FORM = 7;
const CAME_OUT = 8;

async function readTexts({ bytes }: Download): Promise<string> {
  const pdf = await readPdf(bytes);
  return pdf.texts.map(({ text }) => text).join(' ');
}

/** In the office: an insert is chosen for a connection, and what is to be built is issued. */
async function chooseAndIssue(): Promise<{ readonly chosen: string; readonly desk: Screen }> {
  const desk = await openDemo(office, `connection/${PAIR}/insert`);
  const { page } = desk;
  page.setDefaultTimeout(SOON.timeout);
  const ranked = page.getByRole('list', { name: 'Inserts with which it passes' });
  await ranked.getByRole('listitem').first().waitFor();
  const take = page.getByRole('button', { name: /^Take this one: / }).last();
  const chosen = ((await take.getAttribute('aria-label')) ?? (await take.textContent()) ?? '').replace(
    'Take this one: ',
    '',
  );
  await take.click();
  await page.getByText(new RegExp(`^${PAIR} has ${chosen} now`)).waitFor();
  await page.getByRole('link', { name: 'Revisions' }).click();
  await page.getByRole('button', { name: 'Issue revision C' }).click();
  await page.getByLabel(/I have read these/).check(SOON);
  await page.getByRole('button', { name: 'Issue C, for construction' }).click();
  await page.getByText(/^Revision C is issued, for construction/).waitFor();
  return { chosen, desk };
}

/** The sheets that the yard sets the panel out by. */
async function printSetOut(desk: Screen): Promise<string> {
  await desk.goto(desk.page.url().replace(/revisions.*$/, `pours/${POUR}?view=folder`));
  const { page } = desk;
  await page.getByText(/^1 of \d+: T12/).waitFor(SOON);
  return readTexts(await desk.readDownload(() => page.getByRole('button', { name: 'Download the PDF' }).click()));
}

/** A file of an instrument: metres with decimal commas, corners and inserts, one insert of the pair and the single one off along the drawing's x. */
function writeSurvey(
  items: readonly SetOutItem[],
  panel: Parameters<typeof spotOf>[0],
  off: ReadonlyMap<number, number>,
) {
  const line = (name: string, [x, y, z]: readonly [number, number, number]) =>
    [name, ...[x + 100_000, y + 200_000, z + 30_000].map((value) => (value / 1000).toFixed(4).replace('.', ','))].join(
      ';',
    );
  return [
    'Point;E;N;H',
    ...panel.outline_mm.map(([x, y], k) => line(`K${k + 1}`, [x, y, 0])),
    ...items.map((item) => {
      const [x, y, z] = spotOf(panel, item.castIn).at;
      return line(`i${item.number}`, [x + (off.get(item.number) ?? 0), y, z]);
    }),
  ].join('\r\n');
}

it('carries one panel from the choice of its inserts to tightened bolts and its printed history', async () => {
  const { chosen, desk } = await chooseAndIssue();
  const folder = await printSetOut(desk);
  expect(folder).toContain(chosen);

  // In the yard: form, stages, one insert off that is left where it is.
  const { id, plan } = await findYardPiece(office, MARK);
  const { items, panel } = plan.setOut;
  const single = items.find(({ connection }) => connection === SINGLE)!;
  const pair = items.filter(({ connection }) => connection === PAIR);
  expect(pair.every(({ item }) => item?.id === chosen)).toBe(true);
  const hand = await Hand.leave(office, 'checker', true, { pour: POUR, mark: MARK, last: '1' });
  hand.page.setDefaultTimeout(SOON.timeout);
  // Which of its lengths is taped is drawn by lot from the piece.
  const asked = plan.stops.flatMap(({ asks }) => asks).find(({ number }) => number === single.number)!.axis;
  const tape: Tape = (item, axis) => inPlace(item, axis) + (item === single && axis === asked ? IN_FORM : 0);
  await hand.checkAll('1', plan, tape);
  await hand.sendNow();

  // In the office QA accepts it, on what was computed with it where it is.
  await desk.goto(desk.page.url().replace(/pours\/.*$/, `yard/${id}`));
  const { page } = desk;
  await page.getByRole('button', { name: `Decide about insert ${single.number}` }).click(SOON);
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Who decides here').selectOption('demoquality1');
  await dialog.getByLabel('Reason').fill('computed where it is');
  await dialog.getByRole('button', { name: 'Write the decision down' }).click();
  await page
    .getByRole('region', { name: 'History' })
    .getByText(/accepted insert \d+ as placed, as QA: computed where it is; computed as placed then: works/)
    .waitFor(SOON);
  await page.getByText(/^all sent/).waitFor(SOON);

  // Cleared, poured, looked at, stripped, opened up.
  await hand.sendNow();
  await hand.handTo('qa');
  await hand.clear('1');
  await hand.pour();
  await hand.checkScreed('1');
  await hand.open('1');
  await hand.tap(/^After stripping/);
  await hand.tap(/^It is stripped/);
  const back = hand.page.getByRole('button', { name: /^All \d+ of / });
  await hand.page.getByRole('heading', { level: 2 }).first().waitFor();
  for (let k = 0; k < (await back.count()); k += 1) await back.nth(k).tap();
  await hand.tap(/^It is stripped/);
  await hand.tap(/^All as it must be plates off/);
  await hand.page.getByText(/^All \d+ inserts opened up/).waitFor();
  await hand.tap('Back');
  await hand.sendNow();

  // Surveyed with an instrument: the single one is where it was taped; one of the pair moved while the concrete went in.
  const toDrawingX = plan.setOut.panel.drawnFace === single.castIn.face ? 1 : -1;
  const off = new Map([
    [single.number, toDrawingX * IN_FORM],
    [pair[0]!.number, CAME_OUT],
  ]);
  const part = page.getByRole('region', { name: 'Survey' });
  await part.getByRole('link', { name: 'Read a survey' }).click(SOON);
  await page.locator('input[type=file]').setInputFiles({
    name: 'p10.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(writeSurvey(items, panel, off)),
  });
  await page.getByRole('button', { name: /^Confirm all/ }).click(SOON);
  await page.getByRole('button', { name: 'Record this survey' }).click();
  await page.getByRole('heading', { name: `${MARK} no. 1` }).waitFor(SOON);

  // The plate of the pair does not go on. A slot does it, which a design engineer signs for; the other plate is shifted on site.
  await page.getByText(/1 plate does not go on, 2 connections to be decided/).waitFor(SOON);
  await page.getByRole('link', { name: 'Deviations, remedies, decisions' }).click();
  await page.getByRole('button', { name: `Decide for ${PAIR}: holes slotted` }).click(SOON);
  await dialog.getByLabel('Who decides here').selectOption('demoengineer');
  await dialog.getByLabel('Reason').fill('slot agreed with the steel designer');
  await dialog.getByRole('button', { name: 'Write the decision down' }).click();
  await page
    .getByRole('list', { name: `Decision about ${PAIR}` })
    .getByText(/as design engineer, registration invented no. 1.*slot agreed/)
    .waitFor(SOON);
  await page.getByText(/^all sent/).waitFor(SOON);
  const sheet = await readTexts(
    await desk.readDownload(() => page.getByRole('button', { name: `Non-conformance sheet of ${PAIR}` }).click()),
  );
  expect(sheet).toContain('slot agreed with the steel designer');

  await hand.sendNow();
  await hand.handTo('installer');
  await hand.open('1');
  await hand.tap(/^Does it go on\?/);
  await hand.tap(new RegExp(`^${SINGLE}`));
  await hand.tap(/^Decide it so/);
  await hand.page.getByRole('dialog').getByRole('button').last().tap();
  await hand.page
    .getByText(/^(Shift|Turn) the plate/)
    .first()
    .waitFor();
  await hand.sendNow();

  // Bolts are picked by what came out, then all is tightened.
  const connections = ['C32', PAIR, SINGLE];
  await desk.goto(page.url().replace(/\/as-cast.*$/, ''));
  await page.getByText('3 may be bolted up').first().waitFor(SOON);
  const picks = await readTexts(
    await desk.readDownload(() => page.getByRole('button', { name: 'Pick list as PDF' }).click()),
  );
  expect(picks).toMatch(/bolt M16 x \d+, class 8.8, galvanised/);
  await hand.open('1');
  await hand.tap(/^Bolt up/);
  for (const mark of connections) {
    await hand.tap(new RegExp(`^${mark}`));
    await hand.tap(/^It goes on, shifted or turned/);
    await hand.tap(/^Tightened/);
    await hand.page.getByRole('heading', { name: `How was ${mark} tightened?` }).waitFor();
    await hand.tap(/^It is tightened/);
    await hand.page.getByText('tightened', { exact: true }).first().waitFor();
    await hand.tap('All brackets');
  }
  await hand.page.getByText(/^3 of 3 tightened/).waitFor();
  await hand.screen.shoot('life-tightened');
  await hand.tap('Back');
  await hand.page.getByText('bolted up').first().waitFor();
  await hand.sendNow();

  await page.getByText(/^all sent/).waitFor(SOON);
  await expect
    .poll(() => page.getByRole('region', { name: 'History' }).textContent(), SOON)
    .toContain(`tightened connection ${SINGLE}`);
  const history = await readTexts(
    await desk.readDownload(() => page.getByRole('button', { name: 'History as PDF' }).click()),
  );
  for (const said of [
    `accepted insert ${single.number} as placed`,
    'cleared the piece',
    'poured it',
    'stripped it',
    'opened up',
    'surveyed',
    `decided for connection ${PAIR}: holes slotted`,
    `decided for connection ${SINGLE}: plate moved`,
    ...connections.map((mark) => `tightened connection ${mark}`),
  ])
    expect(history).toContain(said);
}, 240_000);
