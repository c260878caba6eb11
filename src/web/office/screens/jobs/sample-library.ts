import type { JobFile } from '../../../../job/documents/job-file.ts';
import { readJobDocument } from '../../../../job/read-job-document.ts';

/**
 * The invented library of the demo job, as a script of its own that comes when it is asked for.
 * Rejects when the script does not come, or the demo job is no sound job, which its tests would have said.
 */
export async function loadSampleLibrary(): Promise<JobFile['library']> {
  const { default: demo } = await import('../../../../../demo/job.json');
  const read = readJobDocument(demo);
  if (!read.ok) throw new Error(`the demo job has faults: ${read.faults[0]?.text}`);
  return read.file.library;
}
