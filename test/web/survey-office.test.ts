import { expect, it } from 'vitest';
import type { Panel } from '../../src/job/documents/panel.ts';
import { hashBytes } from '../../src/job/fingerprint.ts';
import type { RecordOf } from '../../src/records/record.ts';
import { spotOf } from '../../src/web/pieces/survey/survey-targets.ts';
import { serveCheckedPiece } from './harness/checked-piece.ts';
import { openDemo } from './harness/open-demo.ts';
import { readServerRecords } from './harness/yard.ts';
import { useOffice } from './harness.ts';

const office = useOffice();
const SOON = { timeout: 10_000 };

/** Where the panel stands in the instrument's frame: turned about the vertical, upright, far from the origin [mm]. */
function standUpright([x, y, z]: readonly [number, number, number]): readonly [number, number, number] {
  const turn = 0.7;
  const [along, out] = [x, z];
  return [
    312_400_000 + along * Math.cos(turn) + out * Math.sin(turn),
    5_811_200_000 + along * Math.sin(turn) - out * Math.cos(turn),
    41_300 + y,
  ];
}

/** A line as this instrument writes it: name; height; north; east, metres with a decimal comma. */
function writeLine(name: string, [east, north, height]: readonly [number, number, number]): string {
  const metres = (value: number) => (value / 1000).toFixed(4).replace('.', ',');
  return [name, metres(height), metres(north), metres(east)].join(';');
}

function cornerOf(panel: Panel, k: number): readonly [number, number, number] {
  const [x, y] = panel.outline_mm[k]!;
  return [x, y, 0];
}

it('reads metres with decimal commas in another order, has each pair confirmed, names the corner that is wrong, and records it', async () => {
  const { id, plan } = await serveCheckedPiece(office, 'P13', '1');
  const { panel, items } = plan.setOut;
  const corner = (k: number): readonly [number, number, number] => {
    const [x, y, z] = standUpright(cornerOf(panel, k));
    // The third was taken at something else.
    return k === 2 ? [x, y, z + 60] : [x, y, z];
  };
  const lines = [
    'Name;Height;North;East',
    ...items.map(({ castIn, number }) => {
      const [x, y, z] = spotOf(panel, castIn).at as [number, number, number]; // with heights
      const off = number === items[0]!.number && castIn.face !== 'edge' ? 9 : 0;
      return writeLine(`i${number}`, standUpright([x + off, y, z]));
    }),
    ...panel.outline_mm.map((_, k) => writeLine(`K${k + 1}`, corner(k))),
    writeLine('station', [312_395_000, 5_811_190_000, 42_900]),
    writeLine('column', [312_409_000, 5_811_216_000, 40_100]),
    writeLine('tripod', [312_385_500, 5_811_201_200, 40_000]),
    'broken;41,2;x;312,1',
  ];
  const bytes = new TextEncoder().encode(lines.join('\r\n'));
  const screen = await openDemo(office, `yard/${id}`);
  const { page } = screen;
  const part = page.getByRole('region', { name: 'Survey' });
  await part.waitFor(SOON);
  await part.getByRole('link', { name: 'Read a survey' }).click();
  await page.getByText('No points yet').waitFor();
  await screen.shoot('survey-empty');
  // A file that is none loses nothing and says so.
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'picture.csv', mimeType: 'text/csv', buffer: Buffer.from([1, 0, 2, 0]) });
  await page.getByText(/^No point could be read. picture.csv/).waitFor();
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'p13.csv', mimeType: 'text/csv', buffer: Buffer.from(bytes) });
  await page.getByRole('heading', { name: '2 · Which point is which' }).waitFor();
  expect(await page.getByLabel('Between the cells').inputValue()).toBe(';');
  expect(await page.getByLabel('Numbers').inputValue()).toBe(',');
  expect(await page.getByLabel('Unit', { exact: true }).inputValue()).toBe('m');
  await page
    .getByRole('table', { name: 'Lines that could not be read' })
    .getByText(/"x" is not a number/)
    .waitFor();
  // A point that is too far off for a suggestion says what is near; told to be the corner, it is named as wrong at once.
  const points = page.getByRole('table', { name: 'Surveyed points' });
  await points
    .getByRole('row')
    .filter({ hasText: 'K3' })
    .getByText(/^6\d mm from corner 3, /)
    .waitFor();
  const isCorner = `corner 3, ${panel.drawnFace}`;
  await page.getByLabel('What K3 is').selectOption({ label: isCorner });
  await page.getByText(/corner 3, .* does not agree with the others: it lies 60 mm/).waitFor(SOON);
  await screen.shoot('survey-read', true);
  const record = page.getByRole('button', { name: 'Record this survey' });
  await record.click();
  await page.getByText('Not recorded').waitFor();
  await page.getByRole('button', { name: /^Confirm all/ }).click();
  const known = page.getByRole('table', { name: 'Known points' });
  const third = known.getByRole('row').filter({ hasText: 'K3' });
  await third.getByRole('checkbox').uncheck();
  await page.getByText('A known point is left out without a reason').waitFor();
  await third.getByLabel(/^Why K3/).fill('taken at a spall');
  await third.getByLabel(/^Why K3/).press('Enter');
  // What was begun survives a reload.
  await page.reload();
  await page.getByRole('button', { name: 'All confirmed' }).waitFor(SOON);
  expect(await third.getByLabel(/^Why K3/).inputValue()).toBe('taken at a spall');
  await page.getByLabel('Who decides here').selectOption('demoquality1');
  await page.getByLabel('Its number').fill('TS 4711');
  await page.getByLabel('Its number').press('Enter');
  await screen.shoot('survey-ready', true);
  await screen.checkAccess();
  await record.click();
  await page.getByRole('heading', { name: 'P13 no. 1' }).waitFor(SOON);
  const served = async () =>
    (await readServerRecords(office)).filter(
      (one): one is RecordOf<'surveyed'> => one.piece === id && one.kind === 'surveyed',
    );
  await expect.poll(async () => (await served()).length, SOON).toBe(1);
  const [{ body }] = (await served()) as [RecordOf<'surveyed'>];
  expect(body).toMatchObject({
    basis: 'instrument',
    file: { name: 'p13.csv', hash: hashBytes(bytes) },
    tool: { name: null, serial: 'TS 4711', calibratedUntil: null },
  });
  expect(body.file!.reading).toContain('semicolons, decimal commas, metres; name, height (z), north (y), east (x)');
  expect(new Set(body.points.map(({ item }) => item))).toEqual(new Set(items.map(({ castIn }) => castIn.key)));
  for (const { item, name } of body.points)
    expect(name).toBe(`i${items.find(({ castIn }) => castIn.key === item)!.number}`);
  expect(body.controls.filter(({ isUsed }) => !isUsed)).toMatchObject([{ kind: 'corner', note: 'taken at a spall' }]);
  await part.getByText(/NO calibration date of the tool/).waitFor();
  await screen.shoot('survey-recorded');
}, 60_000);
