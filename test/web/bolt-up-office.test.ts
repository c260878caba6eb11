import { expect, it } from 'vitest';
import { openDemo } from './harness/open-demo.ts';
import { serveSurveyedPiece } from './harness/surveyed-piece.ts';
import { readYardJob } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 15_000 };

it('shows how far a piece is bolted up and what its records leave open, and prints cards, labels and the pick list', async () => {
  const { id, plan, tablet, surveyor } = await serveSurveyedPiece(office, 'P02', '1', {});
  const { file } = await readYardJob(office);
  const connection = file.job.connections.find(({ mark }) => mark === 'C05')!;
  const of = { connection: connection.key, connectionMark: 'C05' };
  const members = plan.setOut.items.filter((item) => item.connection === 'C05');
  tablet.write(surveyor, { kind: 'located', body: { place: 'grid C4, level 1' } });
  tablet.write(surveyor, { kind: 'delivered', body: { caps: true, threads: true, note: null } });
  tablet.write(surveyor, { kind: 'delivered', body: { caps: false, threads: true, note: null } }, members[0]!.number);
  tablet.write(surveyor, { kind: 'offered', body: { ...of, wentOn: 'as designed', note: null } });
  await tablet.send(office.server.address);
  const screen = await openDemo(office, `yard/${id}`);
  const { page } = screen;
  const part = page.getByRole('region', { name: 'Bolt up', exact: true });
  await part.getByText(/^0 of 4 connections tightened, \d may be bolted up/).waitFor(SOON);
  await part.getByText(`no. ${members[0]!.number}: no cap`).waitFor();
  await part.getByText('grid C4, level 1').waitFor();
  const row = part.getByRole('row').filter({ has: page.getByRole('rowheader', { name: 'C05' }) });
  await row.getByText(/^went on, as designed: D. Nobody \(invented checker\), today/).waitFor();
  const lengths = /^no packers \(as stated\): 4 × (\d+) mm$|^packers .* \(as stated\): 4 × (\d+) mm$/;
  const said = await row.getByText(lengths).textContent();
  const picked = Number(lengths.exec(said!)!.slice(1).find(Boolean));

  // The labels are of what may be bolted up now: the tightened one is out of them below.
  for (const what of ['Bolt-up cards', 'Kit-bag labels', 'Pick list']) {
    const { name, bytes } = await screen.readDownload(() =>
      part.getByRole('button', { name: `${what} as PDF` }).click(),
    );
    expect(name).toMatch(new RegExp(`P02-no-1-${what.replace(' ', '-')}\\.pdf$`, 'i'));
    expect(new TextDecoder('latin1').decode(bytes.slice(0, 5))).toBe('%PDF-');
    expect(bytes.length).toBeGreaterThan(5000);
  }

  tablet.write(surveyor, {
    kind: 'tightened',
    body: {
      ...of,
      how: 'torque wrench',
      torque_Nm: 20,
      tool: { name: 'wrench', serial: null, calibratedUntil: '2020-01-31' },
      bolts: members.map(({ castIn }, k) => ({
        item: castIn.key,
        length_mm: k === 0 ? picked + 5 : picked,
        turns: 9,
        packers_mm: connection.packers_mm,
      })),
      lubricated: true,
      note: null,
    },
  });
  await tablet.send(office.server.address);
  await part.getByText(/^1 of 4 connections tightened/).waitFor(SOON);
  await row.getByText('no number of the wrench is recorded').waitFor();
  await row.getByText(/^the wrench was calibrated until 2020-01-31 only, and used on/).waitFor();
  await row
    .getByText(`insert ${members[0]!.number}: a bolt of ${picked + 5} mm went in, ${picked} mm was picked`)
    .waitFor();
  await part.getByText(/^Every brace stays/).waitFor();
  await part.scrollIntoViewIfNeeded();
  await screen.shoot('bolt-up-office', true);
  await screen.checkAccess();
});
