import { describe, expect, it } from 'vitest';
import type { RecordKind, RecordOf } from '../../src/records/record.ts';
import { findPersonId, serveCheckedPiece } from './harness/checked-piece.ts';
import { PaperTablet } from './harness/paper-tablet.ts';
import { checkTargets, checkWidth, openYard, readServerRecords, setLight, TABLET } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 15_000 };

/** Records of a kind of one piece that the server holds. */
async function served<Kind extends RecordKind>(piece: string, kind: Kind): Promise<readonly RecordOf<Kind>[]> {
  const all = await readServerRecords(office);
  return all.filter((record): record is RecordOf<Kind> => record.piece === piece && record.kind === kind);
}

describe('clearance', () => {
  it('is refused to a checker, who is told whose it is; anybody may hold', async () => {
    const { id } = await serveCheckedPiece(office, 'P08', '1');
    const { page } = await openYard(office, `/yard/piece/${id}/clearance`, { person: 'checker' });
    await page.getByRole('heading', { name: 'Nothing is open' }).waitFor();
    const clear = page.getByRole('button', { name: /^Clear/ });
    expect(await clear.isDisabled()).toBe(true);
    expect(await clear.textContent()).toContain('for QA to decide');
    await page.getByRole('button', { name: 'Hold this piece' }).tap();
    await page.getByRole('button', { name: 'Revision to come' }).tap();
    await page.getByRole('button', { name: 'Hold this piece' }).tap();
    await page.getByText('HELD', { exact: true }).waitFor();
    await expect.poll(() => served(id, 'held'), SOON).toMatchObject([{ body: { reason: 'Revision to come' } }]);
  });

  it('is given by QA with two taps in different places, keeps what it rests on; then it is poured, with its docket', async () => {
    const { id, revision } = await serveCheckedPiece(office, 'P13', '1');
    const screen = await openYard(office, `/yard/piece/${id}/clearance`, { person: 'qa' });
    const { page } = screen;
    const clear = page.getByRole('button', { name: /^Clear/ });
    await clear.and(page.locator(':enabled')).waitFor();
    await screen.shoot('clearance-ready');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    const first = (await clear.boundingBox())!;
    await clear.tap();
    const yes = page.getByRole('dialog').getByRole('button', { name: /^Clear P13 no. 1/ });
    const second = (await yes.boundingBox())!;
    await screen.shoot('clearance-asks');
    expect(second.x > first.x + first.width || second.x + second.width < first.x).toBe(true);
    await yes.tap();
    await page.getByText('CLEARED', { exact: true }).waitFor();
    await screen.shoot('clearance-cleared');
    await expect.poll(async () => (await served(id, 'cleared')).length, SOON).toBe(1);
    const [cleared] = await served(id, 'cleared');
    expect(cleared).toMatchObject({ body: { role: 'qa', condition: null, frozen: { revision, open: [] } } });
    expect(cleared!.body.frozen.inputs).toMatch(/^[0-9a-f]{64}$/);
    expect(cleared!.body.frozen.head?.number).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'It was poured' }).tap();
    await page.getByRole('button', { name: 'Yes, it is poured' }).tap();
    await page.getByText('Poured, cleared before').waitFor();
    await page.getByRole('button', { name: /Docket of the concrete/ }).tap();
    await page.getByLabel('Number on the docket').fill('T-4711');
    await page.getByLabel('Time on the docket').fill('11:20');
    await screen.shoot('clearance-docket');
    await checkTargets(page);
    await page.getByRole('button', { name: 'Write it down' }).tap();
    await expect.poll(() => served(id, 'docket'), SOON).toMatchObject([{ body: { number: 'T-4711', mix: null } }]);
  });

  it('is not for a piece with something open: a condition, an override, or poured as it happened, flagged for good', async () => {
    const { id, plan, tablet, checker } = await serveCheckedPiece(office, 'P11', '1');
    // One insert is found loose on the other tablet.
    const { stage } = plan.setOut.items[0]!;
    tablet.write(checker, { kind: 'placed', body: { stage, type: true, face: true, firm: false, note: null } }, 1);
    await tablet.send(office.server.address);
    const screen = await openYard(office, `/yard/piece/${id}/clearance`, { person: 'foreman' });
    const { page } = screen;
    await page.getByRole('heading', { name: '1 open' }).waitFor();
    expect(await page.getByText(/Lifted by: the form setter/).isVisible()).toBe(true);
    expect(await page.getByRole('button', { name: /^Clear on a condition/ }).isDisabled()).toBe(true);
    await screen.shoot('clearance-open');
    await page.getByRole('button', { name: /Pour on an override/ }).tap();
    await screen.shoot('clearance-override');
    await checkTargets(page);
    await page.getByRole('button', { name: 'Truck at the gate' }).tap();
    await page.getByRole('button', { name: 'Let it be poured' }).tap();
    await page.getByText('To be poured on an override').waitFor();
    const [override] = await waitFor(() => served(id, 'override'));
    expect(override).toMatchObject({ body: { role: 'foreman', reason: 'Truck at the gate' } });
    expect(override!.body.frozen.open).toHaveLength(1);
    await page.getByRole('button', { name: /^It was poured/ }).tap();
    await page.getByRole('button', { name: 'Truck at the gate' }).tap();
    await page.getByRole('button', { name: 'It was poured' }).tap();
    await page.getByText('POURED ON AN OVERRIDE', { exact: true }).waitFor();
    for (const light of ['sun', 'night'] as const) {
      await setLight(page, light);
      await screen.shoot(`clearance-flag-${light}`);
    }
    await page.setViewportSize(TABLET.portrait);
    await screen.shoot('clearance-flag-portrait');
    await checkWidth(page);
  });

  it('takes a pour without clearance as it happened, whoever says it', async () => {
    const { id } = await serveCheckedPiece(office, 'P12', '1');
    const { page } = await openYard(office, `/yard/piece/${id}/clearance`, { person: 'setter' });
    await page.getByRole('button', { name: /^It was poured.*NOT CLEARED/ }).tap();
    await page.getByLabel('In your own words').fill('the truck could not wait');
    await page.getByRole('button', { name: 'It was poured' }).tap();
    await page.getByText('POURED WITHOUT CLEARANCE', { exact: true }).waitFor();
    await expect
      .poll(() => served(id, 'poured'), SOON)
      .toMatchObject([{ body: { reason: 'the truck could not wait' } }]);
    await page.goto(new URL(`/yard/piece/${id}/history`, page.url()).href);
    await page.getByText('POURED WITHOUT CLEARANCE', { exact: true }).waitFor();
  });
});

async function waitFor<T>(read: () => Promise<readonly T[]>): Promise<readonly T[]> {
  await expect.poll(async () => (await read()).length, SOON).toBeGreaterThan(0);
  return read();
}

describe('an insert that is off', () => {
  it('is accepted by QA inside the limits of the design engineer, with what was computed', async () => {
    const { id, plan } = await serveCheckedPiece(office, 'P13-H', '1', { 5: { x: 7 } });
    const screen = await openYard(office, `/yard/piece/${id}/clearance`, { person: 'qa' });
    const { page } = screen;
    await page.getByRole('button', { name: 'Decide about insert 5' }).tap();
    await screen.shoot('decide');
    await checkTargets(page);
    await page.getByRole('button', { name: /^Accept as placed/ }).tap();
    await page.getByRole('button', { name: 'Computed as placed: works' }).tap();
    await page.getByRole('button', { name: 'Accept as placed' }).tap();
    await page.getByText('no. 5: accepted as placed').waitFor();
    const [decision] = await waitFor(() => served(id, 'decision'));
    const key = plan.setOut.items.find(({ number }) => number === 5)!.castIn.key;
    expect(decision).toMatchObject({ item: key, body: { verdict: 'accepted', role: 'qa' } });
    await page.getByRole('heading', { name: 'Nothing is open' }).waitFor();
    expect(await page.getByRole('button', { name: /^Clear/ }).isEnabled()).toBe(true);
  });
});

describe('a conflict', () => {
  it('shows both sides and what differs; one is chosen by somebody who has seen both', async () => {
    const piece = await serveCheckedPiece(office, 'P12', '2');
    const other = new PaperTablet(piece, 'otherp1200000002');
    const setter = await findPersonId(office, 'setter');
    const { number, stage, taped } = piece.plan.setOut.items[0]!;
    const y_mm = Math.round(taped[1]);
    const both = [Math.round(taped[0]), Math.round(taped[0]) + 30];
    const measured = (x_mm: number) =>
      ({ kind: 'measured', body: { stage, x_mm, y_mm, level_mm: null, basis: 'tape' } }) as const;
    piece.tablet.write(piece.checker, measured(both[0]!), number);
    other.write(setter, measured(both[1]!), number);
    await piece.tablet.send(office.server.address);
    await other.send(office.server.address);
    const screen = await openYard(office, `/yard/piece/${piece.id}/conflicts`, { person: 'checker' });
    const { page } = screen;
    const conflict = page.getByRole('region', { name: new RegExp(`^Insert ${number}: taped`) });
    await conflict.waitFor();
    const text = (await conflict.textContent()) ?? '';
    for (const value of both) expect(text).toContain(`${value} mm`);
    await screen.shoot('conflict');
    await checkTargets(page);
    await checkWidth(page);
    await screen.checkAccess();
    await conflict.getByRole('button', { name: /checker.* is right/ }).tap();
    await page.getByRole('button', { name: 'Yes, that one counts' }).tap();
    await page.getByText('Nobody says different things about this piece').waitFor();
    const chosen = (await waitFor(() => served(piece.id, 'measured'))).filter(({ body }) => body.basis === 'chosen');
    await expect
      .poll(async () => (await served(piece.id, 'measured')).filter(({ body }) => body.basis === 'chosen').length, SOON)
      .toBe(1);
    expect(chosen.every(({ body }) => body.x_mm === both[0])).toBe(true);
  });
});
