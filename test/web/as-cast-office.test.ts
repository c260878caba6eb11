import { expect, it } from 'vitest';
import { openDemo } from './harness/open-demo.ts';
import { serveSurveyedPiece } from './harness/surveyed-piece.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 15_000 };

it('shows what came out, compares the remedies, and has one decided by somebody who may; a later survey opens it again', async () => {
  const { id, plan, tablet, surveyor } = await serveSurveyedPiece(office, 'P01', '1', {
    3: { dx: 7, dy: 3 },
    4: { dx: 7, dy: 3 },
    5: { dx: 6.5, dy: 3 },
    6: { dx: 7, dy: 2 },
    13: { dx: 12, dy: 5 },
  });
  const screen = await openDemo(office, `yard/${id}`);
  const { page } = screen;
  // Unhurried: the remedies are computed for it.
  await page.getByText(/^5 of 14 off, 1 plate does not go on, 2 connections to be decided/).waitFor(SOON);
  await page.getByRole('link', { name: 'Deviations, remedies, decisions' }).click();
  await page
    .getByRole('img', { name: /Where the inserts of P01 came out, seen on the outside face, deviations \d+ times/ })
    .waitFor();
  const moved = page.getByRole('article', { name: 'Connection C01' });
  await moved.getByRole('table', { name: 'Remedies of C01' }).waitFor(SOON);
  await screen.shoot('as-cast', true);
  await screen.checkAccess();
  // What goes with a remedy is never off to the side of a narrow screen.
  for (const width of [820, 390]) {
    await page.setViewportSize({ width, height: 1180 });
    const condition = page.getByRole('table', { name: 'Remedies of C03' }).getByText('drilled or milled, never burnt');
    const { x, width: wide } = (await condition.first().boundingBox())!;
    expect(x + wide).toBeLessThanOrEqual(width);
  }
  await page.setViewportSize({ width: 1440, height: 900 });
  const rows = page.getByRole('table', { name: 'Inserts as cast' }).getByRole('row');
  expect(await rows.nth(1).textContent()).toMatch(/^3.*OFF.*\+7 mm.*\+3 mm.*± 5 mm/);
  await page.getByRole('table', { name: 'What the known points leave over' }).first().waitFor();

  // Slotting is for the design engineer: QA may not.
  await page.getByLabel('Who decides here').selectOption('demoquality1');
  await page.getByRole('button', { name: 'Decide for C03: holes slotted' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByText(/a design engineer with a registration to decide/).waitFor();
  expect(await dialog.getByRole('button', { name: 'Write the decision down' }).isDisabled()).toBe(true);
  await dialog.getByLabel('Who decides here').selectOption('demoengineer');
  await screen.shoot('as-cast-decide');
  await screen.checkAccess();
  await dialog.getByRole('button', { name: 'Write the decision down' }).click();
  await dialog.getByText('The reason is missing').waitFor();
  await dialog.getByLabel('Reason').fill('slot agreed with the steel designer');
  await dialog.getByRole('button', { name: 'Write the decision down' }).click();
  const decision = page.getByRole('list', { name: 'Decision about C03' });
  await decision.getByText(/as design engineer, registration invented no. 1, today.*slot agreed/).waitFor(SOON);
  await screen.shoot('as-cast-decided', true);

  // The plate as it is to be drilled, for the shop.
  const template = page.getByRole('button', { name: 'Template DXF of C03: holes slotted' });
  const { name, bytes } = await screen.readDownload(() => template.click());
  expect(name).toMatch(/P01-no-1-C03-template\.dxf$/);
  expect(new TextDecoder().decode(bytes)).toContain('ONEPOUR-HOLE');

  const sheet = page.getByRole('button', { name: 'Non-conformance sheet of C03' });
  const printed = await screen.readDownload(() => sheet.click());
  expect(printed.name).toMatch(/C03-non-conformance.*\.pdf$/);
  expect(new TextDecoder().decode(printed.bytes.slice(0, 5))).toBe('%PDF-');

  // A survey that came later was not seen by it.
  const item = plan.setOut.items.find(({ number }) => number === 13)!.castIn;
  tablet.write(surveyor, {
    kind: 'surveyed',
    body: {
      basis: 'tape',
      file: null,
      tool: null,
      controls: [],
      points: [],
      tapes: [],
      stances: [{ item: item.key, depth_mm: 6, tilt: null }],
      note: null,
    },
  });
  await tablet.send(office.server.address);
  await page.getByText(/A decision does not count: a survey of its inserts came that it had not seen/).waitFor(SOON);
});
