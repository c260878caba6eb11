import type { JobFile } from '../../job/documents/job-file.ts';
import type { Edit } from '../../job/edit/edit.ts';
import { applyEdit } from '../../job/edit/edit-job.ts';
import { indexJob, type JobIndex } from '../../job/job-index.ts';
import { findTouched } from './touched.ts';

/** The worker's own copy of a job, and which connections have no answer for its present state. */
export class HeldJob {
  #file: JobFile;
  #index: JobIndex | null = null;
  /** Keys of connections. */
  readonly #stale: Set<string>;

  constructor(file: JobFile) {
    this.#file = file;
    this.#stale = new Set(file.job.connections.map(({ key }) => key));
  }

  get file(): JobFile {
    return this.#file;
  }

  /** Made at the first question after an edit. */
  get index(): JobIndex {
    this.#index ??= indexJob(this.#file);
    return this.#index;
  }

  /** @throws Error when the edit was made on another state; the job then stays as it was */
  apply(edit: Edit): void {
    const before = this.#file;
    this.#file = applyEdit(before, edit);
    this.#index = null;
    const touched = findTouched(before, this.#file);
    const { connections } = this.#file.job;
    for (const { key, panel } of connections) if (touched === null || touched.has(panel)) this.#stale.add(key);
    const present = new Set(connections.map(({ key }) => key));
    for (const key of this.#stale) if (!present.has(key)) this.#stale.delete(key);
  }

  /** Connections without an answer, in the job's order; of some panels or all. */
  listStale(marks: readonly string[] | null): JobFile['job']['connections'] {
    const wanted = marks === null ? null : new Set(marks);
    return this.#file.job.connections.filter(
      ({ key, panel }) => this.#stale.has(key) && (wanted === null || wanted.has(panel)),
    );
  }

  /** An answer for the present state was given. */
  settle(key: string): void {
    this.#stale.delete(key);
  }
}
