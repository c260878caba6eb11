import { type ReadonlySignal, signal } from '@preact/signals';
import type { ConnectionAnswer } from '../../../assess/connection-answer.ts';
import type { Edit } from '../../../job/edit/edit.ts';
import { askJobWorker, assessInWorker } from '../../parts/worker-client.ts';
import type { KeyedAnswer } from '../../worker/assess-run.ts';
import { tell } from './messages.ts';
import type { JobSession } from './session.ts';

/** How far the worker is; null: nothing is being computed. */
export type Progress = { readonly done: number; readonly total: number } | null;

/** Answers that come in many lots are shown so often [ms], the first at once: each showing draws the screen. */
const SHOWN_EVERY = 120;

/** The short answer of every connection, kept up with the edits of a job by the worker. */
export class Answers {
  readonly #byKey = signal<ReadonlyMap<string, ConnectionAnswer>>(new Map());
  readonly #progress = signal<Progress>(null);
  readonly #stop: () => void;
  #waiting: KeyedAnswer[] = [];
  #shownAt = Number.NEGATIVE_INFINITY;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(session: JobSession) {
    this.#stop = session.follow({
      onFile: (file) => {
        this.#drop();
        this.#progress.value = { done: 0, total: file.job.connections.length };
        void this.#run(async () => askJobWorker((worker) => worker.open(file)));
      },
      onEdit: (edit) => void this.#run(async () => this.#apply(edit, session)),
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
    clearTimeout(this.#timer);
    this.#stop();
  }

  /** Where the worker's copy is not the page's (it broke off and began anew) it gets the page's. */
  async #apply(edit: Edit, session: JobSession): Promise<void> {
    try {
      await askJobWorker((worker) => worker.apply(edit));
    } catch {
      this.#drop();
      await askJobWorker((worker) => worker.open(session.file));
    }
  }

  #drop(): void {
    this.#waiting = [];
    this.#byKey.value = new Map();
  }

  async #run(first: () => Promise<unknown>): Promise<void> {
    try {
      await first();
      const outcome = await assessInWorker(null, this.#take, (done, total) => {
        if (performance.now() - this.#shownAt >= SHOWN_EVERY || done === total) this.#progress.value = { done, total };
      });
      if (outcome.kind !== 'done') return;
      this.#show();
      this.#progress.value = null;
    } catch (error) {
      this.#progress.value = null;
      // An answer of an earlier state must not stand as one of this.
      this.#drop();
      tell('fault', `The job could not be computed: ${error instanceof Error ? error.message : String(error)}`);
    }
  }

  readonly #take = (answers: readonly KeyedAnswer[]): void => {
    this.#waiting.push(...answers);
    const since = performance.now() - this.#shownAt;
    if (since >= SHOWN_EVERY) this.#show();
    else this.#timer ??= setTimeout(() => this.#show(), SHOWN_EVERY - since);
  };

  #show(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.#waiting.length === 0) return;
    const next = new Map(this.#byKey.peek());
    for (const { key, answer } of this.#waiting) next.set(key, answer);
    this.#waiting = [];
    this.#shownAt = performance.now();
    this.#byKey.value = next;
  }
}
