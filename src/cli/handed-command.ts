import { makeHandedPartner } from '../job/handed/make-handed-partner.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { loadJob } from './load-job.ts';
import { checkTarget } from './write-file.ts';
import { writeJob } from './write-job.ts';

export interface HandedOptions {
  readonly out: string;
  readonly overwrite?: boolean;
}

/**
 * Makes the handed partner of a panel, or makes it anew, and writes the job with it.
 * @returns the exit code
 * @throws UsageError where the job cannot be read, there can be no such partner, or the file cannot be written
 */
export function runHanded(path: string, mark: string, newMark: string, options: HandedOptions): number {
  checkTarget('--out', options.out, '.json', options.overwrite === true);
  const made = makeHandedPartner(loadJob(path).file, mark, newMark);
  if (!made.ok) throw new UsageError(`${path}: ${made.text}`);
  writeJob('--out', options.out, made.file);
  const { castIns, connections } = made.file.job;
  const count = (list: readonly { readonly panel: string }[]) => list.filter(({ panel }) => panel === newMark).length;
  const lines = [
    `${newMark}, handed partner of ${mark}, ${made.isRemade ? 'made anew' : 'made'}: ${count(castIns)} cast-in items, ${count(connections)} connections; threads stay right-handed.`,
    ...made.notes.map((note) => `Look at: ${note}.`),
    `Written to ${options.out}`,
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
  return EXIT.pass;
}
