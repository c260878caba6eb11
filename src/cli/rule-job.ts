import { rule } from '../assess/compare-editions.ts';
import { standardNames } from '../engine/standards/standard-name.ts';
import { UsageError } from './exit-codes.ts';
import type { LoadedJob } from './load-job.ts';

/** Loads are taken as given; each code's load factors are its own. */
export const OWN_FACTORS =
  'Loads are taken as they are given. The load factors of one code do not go with the resistances of another: give each edition the design loads of its own code before relying on it.';

/**
 * A job by another edition than its own rules name, with the caution that goes with it; the job itself where none is asked for.
 * @throws UsageError for a name that is not known
 */
export function ruleJob(job: LoadedJob, by: string | undefined): LoadedJob {
  if (by === undefined) return job;
  const own = job.file.library.rules.standard;
  const standard = standardNames.find((known) => known === by);
  if (standard === undefined)
    throw new UsageError(`--by "${by}": not known, expected ${standardNames.map((name) => `"${name}"`).join(' or ')}`);
  if (standard === own) return job;
  return {
    ...job,
    file: rule(job.file, standard),
    cautions: [`The job's own rules name ${own}; this page is by ${standard}. ${OWN_FACTORS}`, ...job.cautions],
  };
}
