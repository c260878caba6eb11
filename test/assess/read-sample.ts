import type { JobFile } from '../../src/job/documents/job-file.ts';
import { readJobDocument } from '../../src/job/read-job-document.ts';
import { type SampleParts, sampleItem, sampleJob } from '../job/sample-job.ts';

/** Values that let splitting be released in the sample job: edges are 500 mm away, the panel is 180 mm thick. */
export const SPLITTING = { criticalEdge_mm: 200, minimumThickness_mm: 150 };

/** The sample job, its insert with splitting values, with what a test changes. */
export function readSample(parts: SampleParts): JobFile {
  const reading = readJobDocument(sampleJob({ items: [sampleItem({ splitting: SPLITTING })], ...parts }));
  if (!reading.ok) throw new Error(reading.faults.map(({ text }) => text).join('; '));
  return reading.file;
}
