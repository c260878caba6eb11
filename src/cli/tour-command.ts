import { fileURLToPath } from 'node:url';
import { assessJob } from '../assess/assess-job.ts';
import { printJob } from './check-command.ts';
import { EXIT } from './exit-codes.ts';
import { loadJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import { printConnections, printCounts } from './print/job.ts';
import { layText } from './print/table.ts';

/** Demo files stand beside dist/, where this file is bundled to. */
const fromRoot = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

/**
 * What `npm start` does: checks the demo job and the small job typed by hand, and says what to do next. A demo connection that
 * fails is meant to; the exit code stays 0.
 */
export function runTour(): number {
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
