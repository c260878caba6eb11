import { beforeAll, describe, expect, it } from 'vitest';
import { planPour } from '../../src/assess/set-out/plan-pour.ts';
import type { PanelSetOut, PrintedPlace } from '../../src/assess/set-out/set-out.ts';
import { makeFolder, writeFolder } from '../../src/cli/folder-command.ts';
import { PAPERS } from '../../src/drawing/sheets/paper.ts';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { readBack, worstError } from '../assess/set-out/read-back.ts';
import { findCut, findOverlaps, type PdfReading } from '../files/read-pdf.ts';
import { findPages, readDemo, readFolder, readRows } from './folder-reading.ts';

const demo = readDemo('job.json');
const earlier = readDemo('job-rev-a.json');
const papers = ['A3', 'A4'] as const;
const cases = demo.job.pours.flatMap(({ id }) => papers.map((paper) => ({ id, paper })));

describe.each(cases)('the folder of pour $id on $paper, read back by another reader', ({ id, paper }) => {
  let reading: PdfReading;
  let setOuts: readonly PanelSetOut[];
  beforeAll(async () => {
    ({ reading } = await readFolder(demo, id, paper, earlier));
    ({ setOuts } = planPour(indexJob(demo), id));
  });

  it('has no text on another', () => {
    const overlaps = reading.pages.flatMap((_, i) => findOverlaps(reading.texts.filter(({ page }) => page === i + 1)));
    expect(overlaps.map(([a, b]) => `page ${a.page}: "${a.text}" on "${b.text}"`)).toEqual([]);
  });

  it('has nothing cut, and nothing in the margin', () => {
    const { margin, width, height } = PAPERS[paper];
    expect(findCut(reading)).toEqual([]);
    const outside = reading.texts.filter(
      ({ x, y }) => x < margin - 0.1 || x > width - margin + 0.1 || y < margin - 1.5 || y > height - margin + 0.1,
    );
    expect(outside.map(({ page, text }) => `page ${page}: ${text}`)).toEqual([]);
  });

  it('has every insert with its number on the plan, and no size below 2.5 mm', () => {
    for (const { panel, items } of setOuts) {
      const [plan] = findPages(reading, panel.mark, 'Set-out');
      const words = reading.texts.filter(({ page }) => page === plan).map(({ text }) => text);
      for (const { number, assembly } of items)
        expect(words, `${panel.mark} insert ${number}`).toContain(
          assembly === null ? `${number}` : `${number} ${assembly}`,
        );
    }
    expect(Math.min(...reading.texts.map(({ size }) => size))).toBeGreaterThanOrEqual(2.5);
  });

  it('gives every place back from its printed list alone, to half a millimetre', () => {
    for (const setOut of setOuts) {
      const rows = new Map(
        readRows(reading, findPages(reading, setOut.panel.mark, 'Inserts')).map((row) => [row.number, row]),
      );
      expect([...rows.keys()].sort((a, b) => a - b)).toEqual(setOut.items.map(({ number }) => number));
      const read = (where: PanelSetOut, item: PanelSetOut['items'][number]) =>
        readBack(where, { ...item, printed: parse(rows.get(item.number)!) });
      expect(worstError(setOut, read), setOut.panel.mark).toBeLessThanOrEqual(0.5 + 1e-9);
      for (const { number, item } of setOut.items) if (item !== null) expect(rows.get(number)!.type).toContain(item.id);
    }
  });

  it('has every figure of the list on the plan too', () => {
    for (const { panel, items } of setOuts) {
      const [plan] = findPages(reading, panel.mark, 'Set-out');
      const figures = reading.texts.filter(({ page }) => page === plan).map(({ text }) => text);
      for (const { printed, number } of items) {
        if (printed.kind !== 'plan') continue;
        for (const value of [printed.x, printed.y])
          expect(
            figures.some((figure) => figure.startsWith(`${value} (`)),
            `${panel.mark} ${number}: ${value}`,
          ).toBe(true);
      }
    }
  });

  it('has no line to sign on a sheet without a row above it', () => {
    for (const [i] of reading.pages.entries()) {
      const words = reading.texts.filter(({ page }) => page === i + 1).map(({ text }) => text);
      if (words.some((text) => text.startsWith('checked ')))
        expect(
          words.some((text) => /^\d+$/.test(text)),
          `page ${i + 1}`,
        ).toBe(true);
    }
  });

  it('has every part of the bench, a check sheet with a code for each piece, and says which face is down', () => {
    const words = new Set(reading.texts.map(({ text }) => text));
    const { pieces } = planPour(indexJob(demo), id);
    for (const { panel, serial } of pieces) {
      const sheets = findPages(reading, panel, 'Check sheet');
      const ofPiece = reading.texts.filter(
        ({ page, text }) => sheets.includes(page) && text.startsWith(`piece no. ${serial}`),
      );
      expect(ofPiece.length).toBeGreaterThan(0);
    }
    for (const { assemblies, faceDown } of setOuts) {
      expect([...words].some((text) => text.startsWith(`${faceDown.toUpperCase()} FACE DOWN`))).toBe(true);
      for (const { item, parts } of assemblies) {
        expect(words).toContain(item.id);
        // A board's bin names its pattern too.
        for (const { part } of parts)
          expect(
            [...words].some((text) => text === part.id || text.startsWith(`${part.id} `)),
            part.id,
          ).toBe(true);
      }
    }
  });
});

/** Printed places as the list writes them. */
function parse({ x, y }: { readonly x: string; readonly y: string }): PrintedPlace {
  const along = /^(\d+) along, from (.+)$/.exec(x);
  if (along === null) return { kind: 'plan', x: Number(x), y: Number(y) };
  const above = /^(\d+) above the bed$/.exec(y);
  return { kind: 'edge', along: Number(along[1]), from: along[2]!, aboveBed: Number(above?.[1]) };
}

describe('a folder', () => {
  it('is the same bytes for the same job', async () => {
    const write = async () => {
      const { pages } = makeFolder(demo, 'T12', PAPERS.A4, earlier);
      return writeFolder(demo, 'T12', pages);
    };
    expect(await write()).toEqual(await write());
  });

  it('says what changed since an earlier revision, or that none was given', async () => {
    const pour = demo.job.pours.find(({ pieces }) => pieces.some(({ panel }) => panel === 'P02'))!.id;
    const since = await readFolder(demo, pour, 'A3', earlier);
    const words = since.reading.texts.map(({ text }) => text);
    expect(words).toContain('What changed since revision A');
    expect(words.some((text) => text.startsWith('▲ P02'))).toBe(true);
    const alone = await readFolder(demo, pour, 'A3');
    expect(alone.reading.texts.map(({ text }) => text)).toContain('No earlier revision was given to compare with.');
  });

  it.each([
    ['preliminary', 'PRELIMINARY – DO NOT POUR'],
    ['for approval', 'FOR APPROVAL – DO NOT POUR'],
    ['void', 'VOID – DO NOT USE'],
  ] as const)('of a revision that is %s says so on every page', async (status, words) => {
    const file: JobFile = { ...demo, job: { ...demo.job, revision: { letter: 'C', status, date: '2026-12-02' } } };
    const { reading } = await readFolder(file, 'T12', 'A4');
    const pages = new Set(reading.texts.filter(({ text }) => text === words).map(({ page }) => page));
    expect(pages.size).toBe(reading.pages.length);
    expect(makeFolder(file, 'T12', PAPERS.A4, null).isReady).toBe(false);
  });
});
