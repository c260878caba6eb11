import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { assessJob } from '../assess/assess-job.ts';
import { PAPERS } from '../drawing/sheets/paper.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { printJob } from './check-command.ts';
import { EXIT } from './exit-codes.ts';
import { makeFolder, writeFolder } from './folder-command.ts';
import { fromRoot } from './from-root.ts';
import { loadJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import { printConnections, printCounts } from './print/job.ts';
import { layText } from './print/table.ts';
import { writeTarget } from './write-file.ts';

/** Where the tour puts what it makes, in the folder that it is called from. */
const MADE = 'onepour-demo';

/** Writes the folder of the first pour of the demo job, with what changed since its earlier revision. */
async function writeDemoFolder(file: JobFile): Promise<string> {
  const [pour] = file.job.pours;
  if (pour === undefined) throw new Error('the demo job has no pour');
  const earlier = loadJob(fromRoot('demo/job-rev-a.json')).file;
  const { pages } = makeFolder(file, pour.id, PAPERS.A3, earlier);
  mkdirSync(MADE, { recursive: true });
  const path = join(MADE, `${pour.id}.pdf`);
  writeTarget('tour', path, await writeFolder(file, pour.id, pages));
  return `Pour folder ${pour.id}: ${path}, ${pages.length} pages A3. Set-out, parts and check sheets of its panels; open it in any PDF reader.`;
}

/**
 * Checks the demo job and the small job typed by hand, and says what to do next. A demo connection that
 * fails is meant to; the exit code stays 0.
 */
export async function runTour(): Promise<number> {
  const width = findPageWidth();
  const demo = loadJob(fromRoot('demo/job.json'));
  const answer = assessJob(demo.file);
  process.stdout.write(printJob(demo, answer, width));

  const typed = loadJob(fromRoot('demo/typed-by-hand'));
  const typedAnswer = assessJob(typed.file);
  process.stdout.write(
    `\n${'='.repeat(width)}\n\n${layText(`${typed.file.job.project.name}: a schedule typed by hand (demo/typed-by-hand)`, width)}\n\n`,
  );
  process.stdout.write(`${printConnections(typedAnswer.connections, width)}\n\n${printCounts(typedAnswer, width)}\n`);

  const folder = await writeDemoFolder(demo.file);
  process.stdout.write(`\n${'='.repeat(width)}\n\n${layText(folder, width)}\n`);

  const failing = answer.connections.find(({ state }) => state === 'fails');
  const next: readonly (readonly [call: string, gives: string])[] = [
    ...(failing === undefined
      ? []
      : [
          [
            `npx onepour check demo/job.json --connection ${failing.mark} --steps`,
            'follow one failing connection by hand, from all that is given to the last factor',
          ] as const,
          [
            `npx onepour choose demo/job.json ${failing.mark}`,
            'which insert of the catalogue to take instead, and why not the others; --apply NEW.json writes the job with the first choices made',
          ] as const,
        ]),
    [
      'npx onepour setout demo/job.json P13',
      'where each insert of a panel goes in the form; --dxf FILE for a drawing program',
    ],
    [
      'npx onepour folder demo/job.json T13 --paper A4 --since demo/job-rev-a.json',
      'the folder of another pour, with what changed since revision A',
    ],
    [
      'npx onepour parts demo/job.json',
      'what to bring, pour by pour; with --stock FILE what is short and by when to order it',
    ],
    ['npx onepour carries demo/job.json', 'what each connection carries at most, loaded or not'],
    [
      'npx onepour check demo/typed-by-hand',
      'a small job as CSV: copy the folder, change it in a spreadsheet, check your copy; faults name file, row and column. docs/job-files.md lists every column and which are needed',
    ],
    ['npx onepour calc --list', 'single calculations, JSON in and JSON out'],
  ];
  const lines = next.map(
    ([call, gives]) => `${layText(call, width, '  ')}\n${layText(gives, width, '      ', '      ')}`,
  );
  process.stdout.write(`\nNext\n${lines.join('\n')}\n`);
  return EXIT.pass;
}
