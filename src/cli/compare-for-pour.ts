import type { CoverFacts } from '../drawing/sheets/cover-sheet.ts';
import { compareJobs } from '../job/difference/compare-jobs.ts';
import { describeLibrary, describePanel, markOf } from '../job/difference/describe-difference.ts';
import { summariseDifference } from '../job/difference/summarise-difference.ts';
import type { JobFile } from '../job/documents/job-file.ts';

/** What changed since an earlier revision, for the people of one pour: the whole in one line, then only what touches its panels. */
export function compareForPour(earlier: JobFile, now: JobFile, marks: readonly string[]): CoverFacts['changes'] {
  const difference = compareJobs(earlier, now);
  const isOurs = (mark: string) => marks.includes(mark);
  const panels = difference.panels
    .filter((panel) => isOurs(markOf(panel)))
    .flatMap((panel) => describePanel(panel).map((text) => `▲ ${markOf(panel)}: ${text}`));
  const library = difference.library.filter((one) => one.panels.some(isOurs)).map((one) => `▲ ${describeLibrary(one)}`);
  const { before } = difference.revisions;
  return {
    since: before?.letter ?? 'not issued',
    lines: [`Whole job: ${summariseDifference(difference)}.`, ...panels, ...library],
  };
}
