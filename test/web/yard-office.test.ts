import { createHash } from 'node:crypto';
import { beforeAll, expect, it } from 'vitest';
import { takeOffPanel } from '../../src/assess/parts/take-off.ts';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import type { KindAndBody } from '../../src/records/record.ts';
import { readPdf } from '../files/read-pdf.ts';
import { openDemo } from './harness/open-demo.ts';
import { findYardPiece, PaperTablet, type YardPiece } from './harness/paper-tablet.ts';
import { useOffice } from './harness.ts';

/** What a tablet sent is asked for every few seconds. */
const SOON = { timeout: 15_000 };

const office = useOffice();
const [SETTER, CHECKER, FOREMAN] = ['demosetter01', 'demochecker1', 'demoforeman1'];

const look: KindAndBody = { kind: 'placed', body: { stage: 1, type: true, face: true, firm: true, note: null } };

/** Taped so far from where it must be along x. */
function tape({ plan }: YardPiece, number: number, off: number): KindAndBody {
  const [x, y] = plan.setOut.items.find((item) => item.number === number)!.taped;
  return {
    kind: 'measured',
    body: { stage: 1, x_mm: Math.round(x + off), y_mm: Math.round(y), level_mm: null, basis: 'tape' },
  };
}

/** What the tests read: the piece, its tablet, and where. */
const yard: { piece: YardPiece | null; tablet: PaperTablet | null } = { piece: null, tablet: null };

beforeAll(async () => {
  const { address } = office.server;
  const piece = await findYardPiece(address, 'P13', '1');
  const one = new PaperTablet(piece, 'tabletone0000000');
  const two = new PaperTablet(piece, 'tablettwo0000000');
  const { form } = piece.plan.setOut;
  one.write(SETTER, {
    kind: 'form-checked',
    body: {
      measures: [
        { what: 'length', measured_mm: form.length },
        { what: 'width', measured_mm: form.width },
      ],
    },
  });
  const numbers = piece.plan.setOut.items.filter(({ stage }) => stage === 1).map(({ number }) => number);
  for (const number of numbers) one.write(SETTER, look, number);
  const slip = one.write(SETTER, { kind: 'comment', body: { text: 'glue was wet' } }, 3);
  one.write(SETTER, { kind: 'correction', body: { of: slip.id, reason: 'it was another insert' } }, 3);
  // What nothing else orders stands in the order of its moments.
  await new Promise((resolve) => setTimeout(resolve, 20));
  two.learn(one);
  one.write(SETTER, tape(piece, 4, 9), 4);
  two.write(CHECKER, tape(piece, 4, 0), 4);
  one.write(SETTER, tape(piece, 5, 12), 5);
  one.write(FOREMAN, { kind: 'poured', body: { reason: 'the truck was at the gate' } });
  await one.send(address);
  await two.send(address);
  Object.assign(yard, { piece, tablet: one });
});

it('shows what must not be overlooked first, then every piece of every pour with what is done', async () => {
  const { page } = await openDemo(office, 'yard');
  const flags = page.getByRole('alert').filter({ hasText: 'P13 no. 1' });
  await expect.poll(() => flags.first().textContent(), SOON).toMatch(/poured without clearance: a non-conformance/);
  const row = page.getByRole('table', { name: 'Pieces of pour T13' }).getByRole('row').filter({ hasText: 'P13 no. 1' });
  expect(await row.textContent()).toMatch(/poured, flagged/);
  expect(await row.textContent()).toMatch(/\d+ done.*out/);
  const rest = page.getByRole('table', { name: 'Pieces of pour T14' }).getByRole('row');
  expect(await rest.filter({ hasText: 'P12 no. 2' }).textContent()).toContain('not started');
});

it('follows the tablets: what one sends stands there without anybody asking', async () => {
  const { page } = await openDemo(office, `yard/${yard.piece!.id}`);
  await page.getByRole('heading', { name: 'P13 no. 1' }).waitFor();
  yard.tablet!.write(CHECKER!, { kind: 'comment', body: { text: 'magnet 3 was loose' } });
  await yard.tablet!.send(office.server.address);
  await page.getByText('wrote about the piece: magnet 3 was loose').waitFor(SOON);
});

it('tells the history in words, one look as one act, and what was withdrawn in its place', async () => {
  const { page } = await openDemo(office, `yard/${yard.piece!.id}`);
  const history = page.getByRole('region', { name: 'History' });
  await history.waitFor(SOON);
  const text = (await history.textContent()) ?? '';
  expect(text).toMatch(/checked inserts 1–7 before the cage: type, face, firm as shown/);
  expect(text).toContain('withdrawn by C. Nobody (invented setter): it was another insert');
  expect(text).toContain('poured it: the truck was at the gate');
});

it('has a conflict settled by somebody who may, and keeps both sides', async () => {
  const { page } = await openDemo(office, `yard/${yard.piece!.id}`);
  const conflict = page.getByRole('region', { name: 'Said differently by two' });
  await conflict.waitFor(SOON);
  const right = conflict.getByRole('button', { name: /This one is right: D. Nobody/ });
  await right.click();
  await expect.poll(() => page.getByRole('alert').last().textContent()).toContain('Say first who decides');
  await page.getByLabel('Who decides here').selectOption('demoquality1');
  await right.click();
  await conflict.waitFor({ state: 'detached', ...SOON });
  const history = page.getByRole('region', { name: 'History' });
  await history.getByText('the one found right of several').waitFor();
  expect(await history.getByText(/measured insert 4 before the cage/).count()).toBe(3);
});

it('lets a design engineer decide what QA may not, with the registration, and freezes what was computed', async () => {
  const { page } = await openDemo(office, `yard/${yard.piece!.id}`);
  const open = page.getByRole('button', { name: 'Decide about insert 5' });
  await open.waitFor(SOON);
  await page.getByLabel('Who decides here').selectOption('demoquality1');
  await open.click();
  const dialog = page.getByRole('dialog');
  await dialog.getByText(/a design engineer with a registration to decide/).waitFor();
  expect(await dialog.getByRole('button', { name: 'Write the decision down' }).isDisabled()).toBe(true);
  await dialog.getByRole('button', { name: 'Leave it' }).click();
  await open.click();
  await dialog.getByLabel('Who decides here').selectOption('demoengineer');
  await dialog.getByRole('button', { name: 'Write the decision down' }).click();
  await dialog.getByText('The reason is missing').waitFor();
  await dialog.getByLabel('Reason').fill('loads were taken down again');
  // A second press while the first is written is no second decision.
  await dialog.getByRole('button', { name: 'Write the decision down' }).dblclick();
  const history = page.getByRole('region', { name: 'History' });
  await history
    .getByText(/accepted insert 5 as placed, as design engineer, registration invented no. 1: loads were taken down/)
    .waitFor(SOON);
  const row = page.getByRole('table', { name: 'Inserts' }).getByRole('row').filter({ hasText: /^5/ });
  await expect.poll(() => row.textContent(), SOON).toContain('accepted');
  await page.getByText(/^all sent/).waitFor(SOON);
  const told = await (await fetch(`${office.server.address}/api/jobs/${yard.piece!.job}/records?after=0`)).text();
  expect(told.match(/loads were taken down again/g)).toHaveLength(1);
});

it('counts back what came out of the form, and says what may not be done to the piece yet', async () => {
  const [plate] = takeOffPanel(yard.piece!.plan.setOut).lines.filter(({ kind }) => kind.reuse !== null);
  const { kind, count } = plate!;
  const line = { part: kind.id, out: count, back: count - 1 };
  yard.tablet!.write(FOREMAN!, { kind: 'stripped', body: { plates: [line] } });
  await yard.tablet!.send(office.server.address);
  const { page } = await openDemo(office, `yard/${yard.piece!.id}`);
  const after = page.getByRole('region', { name: 'After the pour' });
  await after.getByText(`${kind.words}: ${count} out, ${count - 1} back, 1 missing`).waitFor(SOON);
  expect(await after.textContent()).toMatch(/Do not lift it out of the form.*until/);
  await after.getByText('Nobody has opened up the inserts of this piece.').waitFor();
});

it('prints the history: flags first, both times, who, which device, the head of the log', async () => {
  const screen = await openDemo(office, `yard/${yard.piece!.id}`);
  const button = screen.page.getByRole('button', { name: 'History as PDF' });
  await button.waitFor(SOON);
  await screen.page.getByText(/^all sent/).waitFor(SOON);
  const { name, bytes } = await screen.readDownload(() => button.click());
  expect(name).toMatch(/P13-no-1-history/);
  const pdf = await readPdf(bytes);
  const text = pdf.texts.map((one) => one.text).join(' ');
  expect(text.indexOf('poured without clearance')).toBeGreaterThan(-1);
  expect(text.indexOf('poured without clearance')).toBeLessThan(text.indexOf('Everything that was recorded'));
  expect(text).toContain('WITHDRAWN, does not count');
  expect(text).toMatch(/Back from the form: .* 1 missing/);
  expect(text).toMatch(/Head of the server’s log: \d+:[0-9a-f]{64}/);
  expect(text).toMatch(/tabl \d+/);
});

it('tells what a revision, and the draft, change for each piece', async () => {
  const { page } = await openDemo(office, 'yard');
  const effect = page.getByRole('table', { name: 'What the revision changes for each piece' });
  await effect.waitFor(SOON);
  expect(await effect.textContent()).toMatch(/P03 no. 1not started.*type F16-103 \(was F16-75\)/);
  await page.getByLabel('Changes', { exact: true }).selectOption({ label: 'from revision B, in force, to the draft' });
  await page.getByText('It changes nothing that the yard has to do.').waitFor(SOON);
});

it('says what to do where nothing is for construction, and where another window follows another job', async () => {
  const { address } = office.server;
  const { file } = (await (await fetch(`${address}/api/jobs/${yard.piece!.job}`)).json()) as { readonly file: JobFile };
  const made = await fetch(`${address}/api/jobs`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ file }),
  });
  const { id } = (await made.json()) as { readonly id: string };
  const first = await office.open(`/job/${yard.piece!.job}/yard`);
  await first.page.getByRole('table', { name: 'Pieces of pour T13' }).waitFor(SOON);
  const second = await office.openBeside(first, `/job/${id}/yard`);
  await second.page.getByRole('heading', { name: 'No revision is for construction' }).waitFor(SOON);
  await second.page.getByRole('main').getByRole('link', { name: 'Revisions' }).waitFor();
  await first.page.getByRole('heading', { name: 'Another window of this browser follows another job' }).waitFor(SOON);
  await second.page.close();
  await first.page.getByRole('button', { name: 'Follow this job' }).click();
  await first.page.getByRole('table', { name: 'Pieces of pour T13' }).waitFor(SOON);
  // The other tests open the job that was saved last.
  await fetch(`${address}/api/jobs/${id}`, { method: 'DELETE' });
});

it('keeps the people: added, changed, a name erased while the records stay', async () => {
  const screen = await office.open('/people');
  const { page } = screen;
  await page.getByRole('button', { name: 'One more person' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Add the person' }).click();
  await dialog.getByText('The name is missing').waitFor();
  await dialog.getByLabel('Name, as the tablets show it').fill('H. Nobody');
  await dialog.getByLabel(/^design engineer/).check();
  await dialog.getByRole('button', { name: 'Add the person' }).click();
  const row = page.getByRole('row').filter({ hasText: 'H. Nobody' });
  await expect.poll(() => row.textContent()).toContain('missing');
  await page.getByRole('button', { name: 'Change H. Nobody' }).click();
  await dialog.getByLabel('Registration: number and where').fill('no. 7, invented');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect.poll(() => row.textContent()).toContain('no. 7, invented');
  await screen.checkAccess();
  await page.getByRole('button', { name: 'Erase the name H. Nobody' }).click();
  await dialog.getByRole('button', { name: 'Erase the name' }).click();
  await page.getByText('1 name erased; its records stay.').waitFor();
  const { people } = (await (await fetch(`${office.server.address}/api/people`)).json()) as {
    readonly people: readonly { readonly name: string | null; readonly registration: string | null }[];
  };
  expect(people.find(({ registration }) => registration === 'no. 7, invented')?.name).toBeNull();
});

it('is found from the jobs, and leads to the tablet', async () => {
  const { page } = await office.open('/');
  await page.getByRole('link', { name: 'Yard tablet' }).waitFor();
  const demo = await openDemo(office, 'panels');
  await demo.page.getByRole('navigation').getByRole('link', { name: 'Yard' }).click();
  await demo.page.getByRole('link', { name: 'Yard tablet' }).click();
  await demo.page.waitForURL(/\/yard/);
});

it.each(['light', 'dark'] as const)('is open to everybody in the %s theme', async (theme) => {
  const screen = await openDemo(office, 'yard', { theme });
  await screen.page.getByRole('table', { name: 'Pieces of pour T13' }).waitFor(SOON);
  await screen.checkAccess();
  await screen.shoot(`yard-${theme}`, true);
  await screen.page.getByRole('link', { name: 'P13 no. 1', exact: true }).first().click();
  await screen.page.getByRole('region', { name: 'History' }).waitFor(SOON);
  await screen.checkAccess();
  await screen.shoot(`yard-piece-${theme}`, true);
});

it('shows photos that the server has, and says where one has not arrived', async () => {
  const { address } = office.server;
  // A picture of one point, as any program writes it.
  const bytes = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg==',
    'base64',
  );
  const here = createHash('sha256').update(bytes).digest('hex');
  const put = await fetch(`${address}/api/photos/${here}`, {
    method: 'PUT',
    headers: { 'content-type': 'image/png' },
    body: bytes,
  });
  expect(put.ok).toBe(true);
  for (const [photo, note] of [
    [here, 'as it lies'],
    ['c'.repeat(64), 'still on the tablet'],
  ] as const)
    yard.tablet!.write(
      CHECKER!,
      {
        kind: 'photo',
        body: { photo, type: 'image/png', bytes: bytes.length, width: 1, height: 1, of: 'insert', note },
      },
      4,
    );
  await yard.tablet!.send(address);
  const screen = await openDemo(office, `yard/${yard.piece!.id}`);
  const photos = screen.page.getByRole('region', { name: 'Photos' });
  const picture = photos.getByRole('img', { name: /photographed insert 4; as it lies/ });
  await picture.waitFor(SOON);
  // Photos are fetched once they come into sight, below what else the page says.
  await picture.scrollIntoViewIfNeeded();
  await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.complete && img.naturalWidth), SOON).toBe(1);
  await photos.getByText('The photo has not arrived yet').waitFor(SOON);
  // The browser itself tells of the photo that is not there.
  screen.faults.expect(/404/);
});
