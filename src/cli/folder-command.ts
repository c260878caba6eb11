import { addClashes } from '../assess/clash/add-clashes.ts';
import { addUpJob } from '../assess/parts/job-parts.ts';
import { layBars } from '../assess/set-out/lay-bars.ts';
import { listFindings } from '../assess/set-out/list-findings.ts';
import { type PourPlan, planPour } from '../assess/set-out/plan-pour.ts';
import type { PanelSetOut, SetOutGroup } from '../assess/set-out/set-out.ts';
import { layPlate } from '../drawing/detail/plate-in-plan.ts';
import { FOOT_CAUTION } from '../drawing/sheets/cautions.ts';
import { drawFolder, type FolderPage } from '../drawing/sheets/folder.ts';
import { PAPERS, type Paper } from '../drawing/sheets/paper.ts';
import type { Point } from '../engine/geometry/point.ts';
import { writePdf } from '../files/pdf/write-pdf.ts';
import { drawQr } from '../files/qr/qr-marks.ts';
import { compareJobs } from '../job/difference/compare-jobs.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { indexJob, type JobIndex } from '../job/job-index.ts';
import { compareForPour, findReusedLetter } from './compare-for-pour.ts';
import { readDrawingFonts } from './drawing-fonts.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { fingerprintJob } from './fingerprint.ts';
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

/** The plate of a connection as it lies on the panel; null where the drawing shows none. */
function findPlate(index: JobIndex, setOut: PanelSetOut, group: SetOutGroup): readonly Point[] | null {
  const connection = index.connectionsOf(setOut.panel.mark).find(({ mark }) => mark === group.connection);
  if (connection === undefined) return null;
  const fixture = index.fixtureOf(connection);
  return fixture === null ? null : layPlate(setOut, group, connection, fixture);
}

/** A pour folder as pages, with everything that is found against the pour. */
export function makeFolder(
  file: JobFile,
  pour: string,
  paper: Paper,
  earlier: JobFile | null,
): { readonly pages: readonly FolderPage[]; readonly isReady: boolean; readonly findings: readonly string[] } {
  checkPour(file, pour);
  const index = indexJob(file);
  const bare = planPour(index, pour);
  const difference = earlier === null ? null : compareJobs(earlier, file);
  const reused = difference === null ? null : findReusedLetter(difference);
  const plan: PourPlan = {
    ...bare,
    setOuts: bare.setOuts.map((setOut) => addClashes(index, setOut)),
    problems: [...bare.problems, ...(reused === null ? [] : [{ severity: 'error' as const, text: reused }])],
  };
  const [parts] = addUpJob(index, [plan], []).pours;
  if (parts === undefined) throw new Error(`pour ${pour} has no parts`);
  const { yard, rules } = file.library;
  const { project, revision } = file.job;
  const pages = tellDrawingFaults(`pour ${pour}`, () =>
    drawFolder({
      parts,
      spares: yard.spares,
      cover: {
        changes:
          difference === null
            ? null
            : compareForPour(
                difference,
                plan.setOuts.map(({ panel }) => panel.mark),
              ),
        contacts: yard.contacts,
        statements: rules.statements,
      },
      facts: {
        paper,
        project: project.number === null ? project.name : `${project.number} ${project.name}`,
        revision,
        fingerprint: fingerprintJob(file),
        caution: FOOT_CAUTION,
      },
      barsOf: ({ panel }) => layBars(panel),
      plateOf: (setOut, group) => findPlate(index, setOut, group),
      drawCode: (text, size) => drawQr([0, 0], size, text),
    }),
  );
  const findings = listFindings(plan).flatMap(({ isStop, words }) => (isStop ? [words] : []));
  return { pages, isReady: findings.length === 0, findings };
}

/** The pages of a folder as a PDF; its date is the day of the pour, so that the same job gives the same bytes. */
export function writeFolder(file: JobFile, pour: string, pages: readonly FolderPage[]): Promise<Uint8Array> {
  const { project, pours } = file.job;
  const date = pours.find(({ id }) => id === pour)!.date;
  return writePdf(
    pages,
    {
      title: `Pour folder ${pour}`,
      author: project.name,
      subject: 'Set-out, parts and checks of inserts cast into precast panels',
      date: new Date(`${date}T00:00:00Z`),
      language: 'en',
    },
    readDrawingFonts(),
  );
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
