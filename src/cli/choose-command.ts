import { chooseJob, type JobChoice } from '../assess/choose/choose-job.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import { writeChoices } from './choose-json.ts';
import { type ChooseFlags, readChooseOptions, readChooseScope } from './choose-options.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { loadJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import { printChoices } from './print/choices.ts';
import { Progress } from './progress.ts';
import { ruleJob } from './rule-job.ts';
import { checkTarget } from './write-file.ts';
import { writeJob } from './write-job.ts';

/** The exit code that choices call for. */
function exitOf({ choices, passing }: JobChoice): number {
  if (choices.some(({ outcome }) => outcome !== 'chosen' && outcome !== 'no action')) return EXIT.notPassed;
  return choices.some(({ outcome }) => outcome === 'chosen') || passing.length > 0 ? EXIT.pass : EXIT.notChecked;
}

/** Refuses before any work what could not be written after it. */
function checkApply({ apply, overwrite }: ChooseFlags): void {
  if (apply !== undefined) checkTarget('--apply', apply, '.json', overwrite === true);
  else if (overwrite) throw new UsageError('--overwrite: needs --apply FILE.json, the file to write');
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
  checkApply(flags);
  if (flags.by !== undefined && flags.apply !== undefined)
    throw new UsageError('--apply: not together with --by, since the job keeps the standard of its own rules');
  const job = ruleJob(loadJob(path), flags.by);
  const scope = readChooseScope(job.file, mark, flags);
  const progress = new Progress('choosing for connections');
  const choice = chooseJob(job.file, scope, options, (done, total) => progress.tell(done, total));
  progress.end();
  const applied = flags.apply !== undefined && isChanging(choice) ? flags.apply : null;
  if (applied !== null) writeJob('--apply', applied, choice.file);
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
