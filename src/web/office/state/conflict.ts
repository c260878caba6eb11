import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { JobFile } from '../../../job/documents/job-file.ts';
import type { OpenJob } from '../../../wire/jobs.ts';
import { tellCall } from '../../parts/call.ts';
import { download, fileNameOf } from '../../parts/download.ts';
import { calls } from './office-calls.ts';

/** The job on the server and the one on this page, where both went on from the same state. */
export interface Conflict {
  readonly theirs: OpenJob;
  readonly mine: JobFile;
  /** Where mine is kept besides; null: nowhere yet, it is on this device. */
  readonly kept: 'on the server' | 'as a file' | null;
  /** Why the server does not keep it; null: it was not asked yet, or it does. */
  readonly why: string | null;
  /** The server was put back to a state before the one that this page went on from. */
  readonly isEarlier: boolean;
}

/** Between tries to find out what a conflict is about [ms]. */
const ASKS_AGAIN = 2000;

/** The conflict that an open job is in, if it is; both versions are kept before anybody decides. */
export class Conflicts {
  readonly #now: Signal<Conflict | null> = signal(null);
  readonly #job: string;
  readonly #editor: string;
  readonly #onRefused: (status: number, why: string) => void;
  #again: ReturnType<typeof setTimeout> | undefined;
  #keeping: Promise<void> | null = null;
  #isClosed = false;

  constructor(of: {
    readonly job: string;
    readonly editor: string;
    readonly onRefused: (status: number, why: string) => void;
  }) {
    this.#job = of.job;
    this.#editor = of.editor;
    this.#onRefused = of.onRefused;
  }

  get now(): ReadonlySignal<Conflict | null> {
    return this.#now;
  }

  /**
   * Finds what this page's version stands against, however long the server takes, and keeps this page's there, whole.
   * @param base the last version of the job that this page knew
   * @param mine this page's version, as it is when the server has answered
   */
  async meet(base: number, mine: () => JobFile, isFirst = true): Promise<void> {
    if (this.#isClosed) return;
    const theirs = await calls.openJob(this.#job);
    if (this.#isClosed) return;
    if (theirs.kind !== 'answered') {
      if (theirs.kind === 'refused' && isFirst) this.#onRefused(theirs.status, theirs.error.message);
      this.#again = setTimeout(() => void this.meet(base, mine, false), ASKS_AGAIN);
      return;
    }
    const isEarlier = theirs.value.version < base;
    this.#now.value = { theirs: theirs.value, mine: mine(), kept: null, why: null, isEarlier };
    await this.keep(base);
  }

  /** The page's version was edited on: what was kept lacks that. */
  change(mine: JobFile): void {
    const conflict = this.#now.peek();
    if (conflict !== null) this.#now.value = { ...conflict, mine, kept: null };
  }

  /** The conflict with this page's version kept; null where there is none, or where the server does not take it now. */
  async keep(base: number): Promise<Conflict | null> {
    this.#keeping ??= this.#keep(base).finally(() => {
      this.#keeping = null;
    });
    await this.#keeping;
    const conflict = this.#now.peek();
    return conflict === null || conflict.kept === null ? null : conflict;
  }

  /** Gives the person this page's version as a file: where the server does not keep it, it can be decided all the same. */
  saveAsFile(): void {
    const conflict = this.#now.peek();
    if (conflict === null) return;
    const { mine } = conflict;
    download(`${fileNameOf(mine.job.project.name)}-own-version.json`, JSON.stringify(mine), 'application/json');
    this.#now.value = { ...conflict, kept: 'as a file' };
  }

  /** It is decided. */
  end(): void {
    this.#now.value = null;
  }

  close(): void {
    this.#isClosed = true;
    clearTimeout(this.#again);
  }

  async #keep(base: number): Promise<void> {
    for (;;) {
      const asked = this.#now.peek();
      if (asked === null || asked.kept !== null) return;
      const reason = 'Edited here and elsewhere from the same state';
      const called = await calls.keepVersion(this.#job, { base, editor: this.#editor, reason, file: asked.mine });
      const now = this.#now.peek();
      if (now === null || now.kept !== null) return;
      const isKept = called.kind === 'answered';
      // Edited meanwhile: that is kept too.
      if (isKept && now.mine !== asked.mine) continue;
      this.#now.value = { ...now, kept: isKept ? 'on the server' : null, why: tellCall(called) };
      return;
    }
  }
}
