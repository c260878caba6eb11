import type { JobFile } from '../../job/documents/job-file.ts';
import type { Bed } from '../../job/documents/yard.ts';

/** The bed of the first pour that casts a panel; null where none does, or its bed is not of the yard. */
export function findUsualBed({ job, library }: JobFile, mark: string): Bed | null {
  const pour = job.pours.find(({ pieces }) => pieces.some(({ panel }) => panel === mark));
  return library.yard.beds.find(({ id }) => id === pour?.bed) ?? null;
}
