import { readFileSync } from 'node:fs';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { mustRead } from '../read.ts';

/** The demo job: 14 panels, two of them a handed pair, standard details, pours. */
export const demo: JobFile = mustRead(JSON.parse(readFileSync('demo/job.json', 'utf8')));
