import type { JobFile } from '../../job/documents/job-file.ts';
import type { Edit } from '../../job/edit/edit.ts';
import { type AssessOutcome, assessStale, type TellAnswers, type TellProgress } from './assess-run.ts';
import { HeldJob } from './held-job.ts';
import type { FilesReading, GivenFile } from './read-files.ts';

/**
 * What the page asks of the worker, a method a question. It holds a copy of the job that follows the page's by the same edits, so that a question
 * carries no job. What a method does lies in a file of its own and takes the held job.
 */
export class JobWorker {
  #held: HeldJob | null = null;
  #assessing = 0;

  /** Takes a job that was read by `readJobDocument`; whatever ran on another is left. */
  open(file: JobFile): void {
    this.#assessing += 1;
    this.#held = new HeldJob(file);
  }

  /** @throws Error when no job is open, or the edit was made on another state */
  apply(edit: Edit): void {
    this.#job.apply(edit);
  }

  /**
   * Assesses the connections that have no answer yet: all after `open`, then those that an edit touched. A newer call takes over.
   * @param marks panels to look at; null: all
   * @throws Error when no job is open
   */
  async assess(
    marks: readonly string[] | null,
    onAnswers: TellAnswers,
    onProgress: TellProgress,
  ): Promise<AssessOutcome> {
    this.#assessing += 1;
    const mine = this.#assessing;
    return assessStale(this.#job, marks, onAnswers, onProgress, () => mine !== this.#assessing);
  }

  /** Reads files into a job or their faults; needs no open job. */
  async readFiles(given: readonly GivenFile[]): Promise<FilesReading> {
    const { readFiles } = await import('./read-files.ts');
    return readFiles(given);
  }

  get #job(): HeldJob {
    if (this.#held === null) throw new Error('no job is open in the worker; expected `open` first');
    return this.#held;
  }
}
