import { expect, it } from 'vitest';
import { readDrawingFonts } from '../../src/cli/drawing-fonts.ts';
import { drawBox, drawText } from '../../src/drawing/marks.ts';
import { writePdf } from '../../src/files/pdf/write-pdf.ts';
import type { PdfOrder } from '../../src/web/pdf-worker/pdf-writer.ts';
import { readPdf } from '../files/read-pdf.ts';
import { bringIn } from './harness/bring-in.ts';
import { useOffice } from './harness.ts';

const office = useOffice();

const order: PdfOrder = {
  pages: [
    {
      drawing: {
        width: 210,
        height: 297,
        marks: [
          drawText([20, 250], 'Panel P04 – 12 × M16, e ≥ 60 mm', 4, { weight: 'bold' }),
          drawText([20, 240], 'Zażółć φ ⌀20 ☐ ½ °C', 3, { turn: 0.4 }),
          drawBox('outline', [20, 20], 120, 60, 'thick', 'hatch'),
        ],
      },
      bookmark: 'P04',
    },
    { drawing: { width: 420, height: 297, marks: [drawText([20, 20], 'second', 3)] }, bookmark: null },
  ],
  details: {
    title: 'Set-out – Saltmarsh Quay',
    author: 'Form shop',
    subject: 'Boat store',
    date: new Date('2026-03-04T05:06:07Z'),
    language: 'en',
  },
};

/** Runs in the page: two files by the same worker, as numbers, with the time of each. */
async function writeTwice(given: PdfOrder): Promise<{ readonly files: number[][]; readonly ms: number[] }> {
  // Put there by `bringIn`.
  const { pdf } = globalThis as unknown as { pdf: typeof import('../../src/web/parts/pdf-client.ts') };
  const files: number[][] = [];
  const ms: number[] = [];
  for (let k = 0; k < 2; k++) {
    const start = performance.now();
    files.push([...(await pdf.writePdfInWorker(given))]);
    ms.push(performance.now() - start);
  }
  return { files, ms };
}

it('writes in the browser what Node writes: the same texts at the same places', async () => {
  const screen = await office.open('/');
  await bringIn(screen.page, 'src/web/parts/pdf-client.ts', 'pdf');
  const { files } = await screen.page.evaluate(writeTwice, order);
  const [first, second] = files.map((bytes) => new Uint8Array(bytes));
  const ofNode = await readPdf(await writePdf(order.pages, order.details, readDrawingFonts()));
  expect(ofNode.texts).toHaveLength(3);
  expect(await readPdf(first!)).toEqual(ofNode);
  expect(second).toEqual(first);
});

it('fetches its fonts once', async () => {
  // A service worker would ask for them too, to keep them.
  const screen = await office.open('/', { context: { serviceWorkers: 'block' } });
  const asked: string[] = [];
  screen.context.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await bringIn(screen.page, 'src/web/parts/pdf-client.ts', 'pdf');
  await screen.page.evaluate(writeTwice, order);
  const fonts = asked.filter((path) => path.endsWith('.ttf')).map((path) => path.replace(/-\w{8}\.ttf$/, ''));
  expect(fonts.sort()).toEqual(['/assets/DejaVuSansCondensed', '/assets/DejaVuSansCondensed-Bold']);
});

it('says so when a font does not come, and writes once it does', async () => {
  const screen = await office.open('/', { context: { serviceWorkers: 'block' } });
  await bringIn(screen.page, 'src/web/parts/pdf-client.ts', 'pdf');
  await screen.context.route('**/*.ttf', (route) => route.fulfill({ status: 503 }));
  await expect(screen.page.evaluate(writeTwice, order)).rejects.toThrow(/the font \S+ of PDF files did not come/);
  await screen.context.unroute('**/*.ttf');
  const { files } = await screen.page.evaluate(writeTwice, order);
  expect((await readPdf(new Uint8Array(files[0]!))).pages).toHaveLength(2);
  screen.faults.expect(/\.ttf.*503|503.*\.ttf/);
});
