import type { FolderPage } from '../drawing/sheets/folder.ts';
import { describeFolder, type MadeFolder, makeFolder as makePages } from '../drawing/sheets/make-folder.ts';
import { PAPERS, type Paper } from '../drawing/sheets/paper.ts';
import { writePdf } from '../files/pdf/write-pdf.ts';
import { drawQr } from '../files/qr/qr-marks.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { fingerprintJob } from '../job/fingerprint.ts';
import { readDrawingFonts } from './drawing-fonts.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { loadJob } from './load-job.ts';
import { tellDrawingFaults } from './tell-drawing-faults.ts';
import { checkTarget, writeTarget } from './write-file.ts';

export interface FolderOptions {
  readonly out?: string;
  readonly paper?: string;
  readonly since?: string;
  readonly overwrite?: boolean;
}

function readPaper(name: string | undefined): Paper {
  const paper = name === undefined ? PAPERS.A3 : (PAPERS as Readonly<Record<string, Paper>>)[name.toUpperCase()];
  if (paper === undefined) throw new UsageError(`--paper ${name}: expected A3 or A4`);
  return paper;
}

/** Names of the pours, for a call that names none of them. */
function checkPour(file: JobFile, pour: string): void {
  const ids = file.job.pours.map(({ id }) => id);
  if (ids.includes(pour)) return;
  const known = ids.length === 0 ? 'the job has no pours: add them to it' : `expected one of ${ids.join(', ')}`;
  throw new UsageError(`${pour}: is no pour of this job; ${known}`);
}

/**
 * A pour folder as pages, with everything that is found against the pour.
 * @throws UsageError where the job has no such pour, or something of it cannot be drawn
 */
export function makeFolder(file: JobFile, pour: string, paper: Paper, earlier: JobFile | null): MadeFolder {
  checkPour(file, pour);
  return tellDrawingFaults(`pour ${pour}`, () =>
    makePages(file, pour, {
      paper,
      earlier,
      fingerprint: fingerprintJob(file),
      job: null,
      drawCode: (text, size) => drawQr([0, 0], size, text),
    }),
  );
}

/** The pages of a folder as a PDF. */
export function writeFolder(file: JobFile, pour: string, pages: readonly FolderPage[]): Promise<Uint8Array> {
  return writePdf(pages, describeFolder(file, pour), readDrawingFonts());
}

/**
 * Writes the pour folder of one pour as a PDF.
 * @returns the exit code: 0 ready, 1 something stands against the pour (the folder says what)
 * @throws UsageError where the job cannot be read, the pour is not known, or the file cannot be written
 */
export async function runFolder(path: string, pour: string, options: FolderOptions): Promise<number> {
  const out = options.out ?? `${pour}.pdf`;
  const paper = readPaper(options.paper);
  checkTarget('--out', out, '.pdf', options.overwrite === true);
  const { file } = loadJob(path);
  const earlier = options.since === undefined ? null : loadJob(options.since).file;
  const { pages, isReady, findings } = makeFolder(file, pour, paper, earlier);
  const bytes = await writeFolder(file, pour, pages);
  writeTarget('--out', out, bytes);
  process.stdout.write(`${out}: ${pages.length} pages ${paper.name}\n`);
  for (const text of findings) process.stdout.write(`STOP: ${text}\n`);
  return isReady ? EXIT.pass : EXIT.notPassed;
}
