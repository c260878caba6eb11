import { existsSync, writeFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { chooseJob, type JobChoice } from '../assess/choose/choose-job.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import { writeJobJson } from '../files/json.ts';
import { readJob } from '../files/read-job.ts';
import { writeChoices } from './choose-json.ts';
import { type ChooseFlags, readChooseOptions, readChooseScope } from './choose-options.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { loadJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import { printChoices } from './print/choices.ts';
import { Progress } from './progress.ts';
import { ruleJob } from './rule-job.ts';

/** The exit code that choices call for. */
function exitOf({ choices, passing }: JobChoice): number {
  if (choices.some(({ outcome }) => outcome !== 'chosen' && outcome !== 'no action')) return EXIT.notPassed;
  return choices.some(({ outcome }) => outcome === 'chosen') || passing.length > 0 ? EXIT.pass : EXIT.notChecked;
}

function refuseToWrite(path: string): UsageError {
  return new UsageError(`--apply ${path}: cannot be written, expected a file in a folder that is there`);
}

/** Refuses before any work what could not be written after it. */
function checkTarget({ apply, overwrite }: ChooseFlags): void {
  if (apply === undefined) {
    if (overwrite) throw new UsageError('--overwrite: needs --apply FILE.json, the file to write');
    return;
  }
  if (!apply.toLowerCase().endsWith('.json'))
    throw new UsageError(`--apply ${apply}: expected a name that ends in .json, so that it can be read again`);
  if (!existsSync(dirname(apply))) throw refuseToWrite(apply);
  if (existsSync(apply) && !overwrite)
    throw new UsageError(`--apply ${apply}: is there already, expected a new name (or --overwrite, to write over it)`);
}

/** Writes the job with the first choices made, once it is sure that it can be read again. */
function apply(path: string, { file }: JobChoice): void {
  const text = writeJobJson(file);
  const again = readJob(new Map([[basename(path), text]]));
  if (!again.ok)
    throw new Error(
      `the job with its choices would not be read: ${again.faults.map(({ message }) => message).join('; ')}`,
    );
  try {
    writeFileSync(path, text);
  } catch {
    throw refuseToWrite(path);
  }
}

function isChanging({ choices }: JobChoice): boolean {
  return choices.some(({ ranked: [first] }) => first !== undefined && !first.isAsDesigned);
}

/**
 * Chooses inserts for the connections of a job that do not pass, for a panel, or for one connection.
 * @param today the day from which days to the pour are counted
 * @returns the exit code
 * @throws UsageError where the job cannot be read, an option cannot be used or the file cannot be written
 */
export function runChoose(path: string, mark: string | undefined, flags: ChooseFlags, today: Date): number {
  const options = readChooseOptions(flags, today);
  checkTarget(flags);
  if (flags.by !== undefined && flags.apply !== undefined)
    throw new UsageError('--apply: not together with --by, since the job keeps the standard of its own rules');
  const job = ruleJob(loadJob(path), flags.by);
  const scope = readChooseScope(job.file, mark, flags);
  const progress = new Progress('choosing for connections');
  const choice = chooseJob(job.file, scope, options, (done, total) => progress.tell(done, total));
  progress.end();
  const applied = flags.apply !== undefined && isChanging(choice) ? flags.apply : null;
  if (applied !== null) apply(applied, choice);
  const { project } = job.file.job;
  const { standard } = job.file.library.rules;
  if (flags.json) {
    const head = { engine: ENGINE_VERSION, job: project.name, standard };
    process.stdout.write(`${JSON.stringify({ ...head, ...writeChoices(choice, options, applied) }, null, 2)}\n`);
  } else {
    const page = {
      job,
      path,
      by: flags.by ?? null,
      choice,
      scope,
      options,
      asked: flags.apply ?? null,
      applied,
      width: findPageWidth(),
    };
    process.stdout.write(printChoices(page));
  }
  return exitOf(choice);
}
