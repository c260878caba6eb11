import type { JobFile } from '../job/documents/job-file.ts';
import type { Fault } from '../job/fault.ts';

/** A job as read, with what was taken where the files say nothing; or everything that is wrong, and no job. */
export type JobReading =
  | { readonly ok: true; readonly file: JobFile; readonly assumptions: readonly string[] }
  | {
      readonly ok: false;
      readonly faults: readonly Fault[];
      /** True where headings, rows or files are so wrong that what depends on them was not looked at yet. */
      readonly isCutShort?: true;
    };

/** Texts of files by their names (without folders). */
export type FileTexts = ReadonlyMap<string, string>;
