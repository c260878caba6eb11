import { expect, it } from 'vitest';
import { type PieceCode, writePieceCode } from '../../src/job/piece-code.ts';
import { nameProject } from '../../src/web/yard/screens/scan/judge-code.ts';
import { checkPiece } from './harness/checked-piece.ts';
import { findYardPiece, PaperTablet } from './harness/paper-tablet.ts';
import { drawSheet, writePng } from './harness/pictures.ts';
import { useOffice } from './harness.ts';
import { listStored } from './records/tablet.ts';
import { Eight, MARK } from './yard/eight.ts';
import { Hand } from './yard/hand.ts';

const office = useOffice({ hasDemo: false });

/** What the office moves, and by how much [mm]. */
const MOVED = 7;
const BY = 40;

/** Pieces 1 and 2 are checked on another tablet, 1 is poured; nobody has been at the others. */
async function checkTwo(eight: Eight): Promise<void> {
  const { address } = office.server;
  const [checker] = eight.people;
  for (const serial of ['1', '2']) {
    const piece = await findYardPiece(address, MARK, serial);
    const tablet = new PaperTablet(piece, `revised${serial}`.padEnd(16, '0'));
    checkPiece(tablet, piece, checker!.id);
    if (serial === '1') tablet.write(checker!.id, { kind: 'poured', body: { reason: 'the truck was at the gate' } });
    await tablet.send(address);
  }
}

/** A photograph of a sheet with the code of a piece, printed from the revision that is in force now. */
function photographSheet(eight: Eight, serial: string): Buffer {
  const { letter, fingerprint } = eight.revision;
  const project = nameProject(eight.index.file.job);
  const code: PieceCode = { project, mark: MARK, serial, letter, fingerprint: fingerprint.slice(0, 12) };
  return writePng(drawSheet(writePieceCode(code), { width: 1600, height: 1130 }, [1250, 750], 5));
}

/** Has a photograph of a sheet looked into at the screen for that. */
async function scan({ page }: Hand, sheet: Buffer): Promise<void> {
  await page.locator('input[type="file"]').setInputFiles({ name: 'sheet.png', mimeType: 'image/png', buffer: sheet });
}

it('opens again only what a new revision moves; what is cast stays cast, and its old sheet is void, without a line too', async () => {
  const eight = await Eight.serve(office.server);
  await checkTwo(eight);
  const hand = await Hand.leave(office, 'checker', true);
  const { page, screen } = hand;
  await hand.sendNow();
  await hand.open('2');
  await page.getByRole('link', { name: /^Before the pour.*all 3 done/ }).waitFor();
  const oldSheet = photographSheet(eight, '2');
  const key = eight.plan('2').setOut.items.find(({ number }) => number === MOVED)!.castIn.key;

  await eight.edit('One insert is moved', (draft) => {
    const item = draft.job.castIns.find((one) => one.key === key)!;
    item.x_mm -= BY;
    // Its plate goes with it.
    const connection = draft.job.connections.find(({ inserts }) => inserts.some(({ insert }) => insert === item.id))!;
    connection.origin_mm[0] -= BY;
  });
  await eight.issue('B');
  await hand.sendNow();

  // In the form: one is open again, the form and the six others stay as they were checked.
  await hand.open('2');
  await page.getByRole('banner').getByText('rev.B').waitFor();
  await page.getByRole('link', { name: /^The form.*good/ }).waitFor();
  await page.getByRole('link', { name: /^Before the cage.*all 4 done/ }).waitFor();
  await page.getByRole('link', { name: /^Before the pour.*2 done · 1 left/ }).waitFor();
  await screen.shoot('whole-revised');
  const written = (await listStored(office.server, eight.id)).length;
  await hand.tap(/^Before the pour/);
  const look = page.getByRole('button', { name: /^All as shown/ });
  await look.waitFor();
  const plan = eight.plan('2');
  const stop = plan.stops.find(({ members }) => members.some(({ number }) => number === MOVED))!;
  await look.tap();
  await hand.tapeStop(
    plan,
    stop.asks.filter(({ number }) => number === MOVED),
    ({ taped }, axis) => Math.round(taped[axis === 'x' ? 0 : 1]),
  );
  await page.getByText('All good before the pour').waitFor();
  await hand.sendNow();
  const anew = (await listStored(office.server, eight.id)).slice(written).map(({ record }) => record);
  // That the piece is begun was on no record of the other tablet.
  expect(anew.map(({ kind }) => kind).sort()).toEqual(['measured', 'piece-started', 'placed']);
  for (const { item, checkKey, revision } of anew.filter(({ kind }) => kind !== 'piece-started'))
    expect([item, checkKey, revision?.letter]).toEqual([key, plan.keys.get(key), 'B']);

  // Cast: it is as it is, and flagged on every list.
  const row = page.getByRole('link', { name: new RegExp(`^${MARK} no. 1`) });
  await row.getByText(`cast by revision A; revision B changed no. ${MOVED}`).waitFor();
  await row.getByText('poured without clearance').waitFor();

  const desk = await office.open(`/job/${eight.id}/yard`);
  const changes = desk.page.getByRole('table', { name: 'What the revision changes for each piece' });
  const tell = (serial: string) =>
    changes
      .getByRole('row')
      .filter({ hasText: `${MARK} no. ${serial}` })
      .textContent();
  await changes.waitFor();
  await expect.poll(() => tell('1')).toMatch(/cast.*no\. 7 changed: x 2040 \(was 2000\)/);
  expect(await tell('2')).toMatch(/in the form.*no\. 7 changed: x 2040 \(was 2000\).*Only these are open again/);
  expect(await tell('3')).toMatch(/not started.*no\. 7 changed: x 2040/);
  for (const serial of ['1', '2', '3']) expect((await tell(serial))?.match(/no\. \d changed/g)).toHaveLength(1);
  await desk.shoot('whole-effect', true);

  const newSheet = photographSheet(eight, '2');
  await office.server.stop();
  await hand.setOffline(true);
  await screen.goto('/yard/scan');
  await scan(hand, oldSheet);
  const shout = page.getByRole('alertdialog', { name: /VOID/ });
  await shout.waitFor();
  await shout.getByText(/In force: revision B/).waitFor();
  await screen.shoot('whole-void');
  await hand.tap(/^Scan another sheet/);
  await scan(hand, newSheet);
  await page.waitForURL(new RegExp(`/yard/piece/${eight.piece('2')}$`));
  await page.getByRole('heading', { name: `${MARK} no. 2` }).waitFor();
  hand.allowCut();
  await desk.context.close();
  desk.faults.allow(/net::ERR_/);
}, 120_000);
