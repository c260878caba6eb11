import { type ReadonlySignal, signal } from '@preact/signals';
import type { ConnectionAnswer } from '../../../assess/connection-answer.ts';
import { askJobWorker, assessInWorker } from '../../parts/worker-client.ts';
import type { KeyedAnswer } from '../../worker/assess-run.ts';
import { tell } from './messages.ts';
import type { JobSession } from './session.ts';

/** How far the worker is; null: nothing is being computed. */
export type Progress = { readonly done: number; readonly total: number } | null;

/** The short answer of every connection, kept up with the edits of a job by the worker. */
export class Answers {
  readonly #byKey = signal<ReadonlyMap<string, ConnectionAnswer>>(new Map());
  readonly #progress = signal<Progress>(null);
  readonly #stop: () => void;

  constructor(session: JobSession) {
    this.#stop = session.follow({
      onFile: (file) => {
        this.#byKey.value = new Map();
        this.#progress.value = { done: 0, total: file.job.connections.length };
        void this.#run(async () => askJobWorker((worker) => worker.open(file)));
      },
      onEdit: (edit) => void this.#run(async () => askJobWorker((worker) => worker.apply(edit))),
    });
  }

  /** By the permanent key of the connection; what is missing is being computed. */
  get byKey(): ReadonlySignal<ReadonlyMap<string, ConnectionAnswer>> {
    return this.#byKey;
  }

  get progress(): ReadonlySignal<Progress> {
    return this.#progress;
  }

  close(): void {
    this.#stop();
  }

  async #run(first: () => Promise<unknown>): Promise<void> {
    try {
      await first();
      const outcome = await assessInWorker(null, this.#take, (done, total) => {
        this.#progress.value = { done, total };
      });
      if (outcome.kind === 'done') this.#progress.value = null;
    } catch (error) {
      this.#progress.value = null;
      tell('fault', `The job could not be computed: ${error instanceof Error ? error.message : String(error)}`);
    }
  }

  readonly #take = (answers: readonly KeyedAnswer[]): void => {
    const next = new Map(this.#byKey.peek());
    for (const { key, answer } of answers) next.set(key, answer);
    this.#byKey.value = next;
  };
}
