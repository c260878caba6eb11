import * as z from 'zod';
import type { Grid } from '../../files/csv/grid.ts';
import { readGrid, writeGrid } from '../../files/csv/grid-text.ts';
import type { JobReading } from '../../files/job-reading.ts';
import { readJob } from '../../files/read-job.ts';

/** A file that a person gave, without its folder. */
export interface GivenFile {
  readonly name: string;
  readonly text: string;
  /** Its cells, where some were typed anew: they count, the text does not. */
  readonly typed: Grid | null;
}

/** A file as it was read: `grid` null where it is no schedule, or its cells cannot be told apart. */
export interface ReadFile {
  readonly name: string;
  readonly text: string;
  readonly grid: Grid | null;
}

export interface FilesReading {
  readonly files: readonly ReadFile[];
  readonly reading: JobReading;
}

/** Reads a job from files, and each schedule as cells, so that what is wrong can be shown and typed anew where it stands. */
export function readFiles(given: readonly GivenFile[]): FilesReading {
  // zod would compile with `new Function`, which the page's rules do not allow.
  z.config({ jitless: true });
  const texts = given.map(({ name, text, typed }) => [name, typed === null ? text : writeGrid(typed)] as const);
  return {
    files: texts.map(([name, text]) => ({ name, text, grid: isSchedule(name) ? readGrid(text) : null })),
    reading: readJob(new Map(texts)),
  };
}

function isSchedule(name: string): boolean {
  return name.toLowerCase().endsWith('.csv');
}
