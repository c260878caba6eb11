import { readFileSync } from 'node:fs';
import { makeFolder, writeFolder } from '../../src/cli/folder-command.ts';
import { PAPERS, type Paper } from '../../src/drawing/sheets/paper.ts';
import { readJob } from '../../src/files/read-job.ts';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import { type PdfReading, type PdfText, readPdf } from '../files/read-pdf.ts';

/** A job of the demo folder. */
export function readDemo(name: string): JobFile {
  const read = readJob(new Map([['job.json', readFileSync(`demo/${name}`, 'utf8')]]));
  if (!read.ok) throw new Error(read.faults.map(({ message }) => message).join('\n'));
  return read.file;
}

/** A folder as its bytes, and as another reader finds it. */
export async function readFolder(
  file: JobFile,
  pour: string,
  paper: Paper['name'],
  earlier: JobFile | null = null,
): Promise<{ readonly bytes: Uint8Array; readonly reading: PdfReading }> {
  const { pages } = makeFolder(file, pour, PAPERS[paper], earlier);
  const bytes = await writeFolder(file, pour, pages);
  return { bytes, reading: await readPdf(bytes) };
}

/** Pages whose title begins so, of one panel: numbers from 1. */
export function findPages({ texts }: PdfReading, mark: string, title: string): readonly number[] {
  const ofMark = texts.filter(({ text, size }) => text === mark && size > 7).map(({ page }) => page);
  return ofMark.filter((page) => texts.some((one) => one.page === page && one.size > 5 && one.text.startsWith(title)));
}

/** One insert as its row of the list says it. */
export interface ListedRow {
  readonly number: number;
  readonly type: string;
  readonly x: string;
  readonly y: string;
}

const HEADS = ['no.', 'insert', 'face', 'held by', 'section', 'x from the end', 'y from the rail'] as const;

/**
 * Rows of the lists of inserts on some pages: columns begin where their heads do, and a text belongs to the row whose number is nearest, since
 * all cells of a row are centred on one line.
 */
export function readRows({ texts }: PdfReading, pages: readonly number[]): readonly ListedRow[] {
  return pages.flatMap((page) => {
    const ofPage = texts.filter((one) => one.page === page);
    const starts = HEADS.map((head) => ofPage.find(({ text }) => text === head)?.x);
    if (starts.some((start) => start === undefined)) return [];
    const [no, insert, , , section, x, y] = starts as number[];
    const after = ofPage.find(({ text, x: at }) => text.startsWith('from the') && at > y! + 5)!.x;
    const numbers = ofPage.filter(({ text, x: at }) => Math.abs(at - no!) < 0.5 && /^\d+$/.test(text));
    const heads = ofPage.filter(({ text, x: at }) => Math.abs(at - no!) < 0.5 && text === 'no.');
    const inColumn = (from: number, to: number, row: PdfText) =>
      ofPage
        .filter(({ x: at, y: level }) => at > from - 0.5 && at < to - 0.5 && Math.abs(level - row.y) < 9)
        .filter(({ y: level }) =>
          [...numbers, ...heads].every((other) => Math.abs(level - row.y) <= Math.abs(level - other.y)),
        )
        .sort((a, b) => b.y - a.y)
        .map(({ text }) => text)
        .join(' ');
    return numbers.map((row) => ({
      number: Number(row.text),
      type: inColumn(insert!, starts[2]!, row),
      x: inColumn(x!, y!, row),
      y: inColumn(y!, after, row),
      section: inColumn(section!, x!, row),
    }));
  });
}
