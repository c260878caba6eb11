import type { JobFile } from '../documents/job-file.ts';
import { compareGeneral, compareLibrary } from './compare-library.ts';
import { comparePanels } from './compare-panels.ts';
import type { JobDifference } from './job-difference.ts';

/**
 * Everything in which a later state of a job differs from an earlier one. Panels, cast-in items and connections are found again by their permanent
 * keys, so that a renumbered or renamed one is the same.
 */
export function compareJobs(before: JobFile, after: JobFile): JobDifference {
  const panels = comparePanels(before, after);
  const library = compareLibrary(before, after);
  const touched = new Set([
    ...panels.map((difference) => (difference.kind === 'changed' ? difference.after.mark : difference.panel.mark)),
    ...library.flatMap((difference) => difference.panels),
  ]);
  return {
    revisions: { before: before.job.revision, after: after.job.revision },
    panels,
    library,
    general: compareGeneral(before, after),
    unchanged: after.job.panels.flatMap(({ mark }) => (touched.has(mark) ? [] : [mark])),
  };
}
