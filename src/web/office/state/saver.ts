import { type Signal, signal } from '@preact/signals';
import type { Edit } from '../../../job/edit/edit.ts';
import { MOST_EDITS_A_CALL } from './limits.ts';
import { calls } from './office-calls.ts';
import type { Outbox, WaitingEdit } from './outbox.ts';

/** Where the edits of this page are. */
export type Saving =
  | { readonly kind: 'saved'; readonly at: string }
  | { readonly kind: 'saving'; readonly count: number }
  /** On this device only. `why`: for the person. */
  | { readonly kind: 'waiting'; readonly count: number; readonly why: string }
  /** Somebody else was first: nothing more is sent until a person decides. */
  | { readonly kind: 'conflict' };

/** After the last edit [ms]: a drag with the arrow keys goes as one call. */
const PAUSE = 350;
/** Between tries when nothing answers [ms]. */
const RETRY = { first: 1000, most: 15_000 };

/** Sends edits to the server in their order, each once, and keeps them on this device until they are there. */
export class Saver {
  readonly saving: Signal<Saving>;
  /** Of the job on the server, as far as this page knows. */
  version: number;
  readonly #job: string;
  readonly #editor: string;
  readonly #outbox: Outbox;
  readonly #onConflict: () => void;
  readonly #onSaved: () => void;
  #waiting: WaitingEdit[] = [];
  #order = Date.now();
  #timer: ReturnType<typeof setTimeout> | undefined;
  #retry = RETRY.first;
  #isSending = false;

  constructor(of: {
    readonly job: string;
    readonly editor: string;
    readonly version: number;
    readonly savedAt: string;
    readonly outbox: Outbox;
    readonly onConflict: () => void;
    readonly onSaved: () => void;
  }) {
    this.#job = of.job;
    this.#editor = of.editor;
    this.version = of.version;
    this.#outbox = of.outbox;
    this.#onConflict = of.onConflict;
    this.#onSaved = of.onSaved;
    this.saving = signal<Saving>({ kind: 'saved', at: of.savedAt });
    addEventListener('online', this.#sendNow);
  }

  get count(): number {
    return this.#waiting.length;
  }

  /** Takes an edit; it is on this device when this resolves, and on the server soon after. */
  async add(edit: Edit): Promise<void> {
    this.#order += 1;
    const waiting = { id: edit.id, job: this.#job, editor: this.#editor, base: this.version, order: this.#order, edit };
    this.#waiting.push(waiting);
    if (this.saving.value.kind !== 'conflict') {
      this.saving.value = { kind: 'saving', count: this.count };
      this.#sendIn(PAUSE);
    }
    await this.#outbox.put(waiting);
  }

  /** Takes over edits that an earlier page left on this device. */
  adopt(waiting: readonly WaitingEdit[]): void {
    this.#waiting.push(...waiting);
    if (waiting.length === 0) return;
    this.saving.value = { kind: 'saving', count: this.count };
    this.#sendIn(0);
  }

  /** A person decided: what waited is kept elsewhere, and the job goes on from a version of the server. */
  async startAnew(version: number, savedAt: string): Promise<void> {
    const ids = this.#waiting.map(({ id }) => id);
    this.#waiting = [];
    this.version = version;
    this.saving.value = { kind: 'saved', at: savedAt };
    await this.#outbox.remove(ids);
  }

  close(): void {
    clearTimeout(this.#timer);
    removeEventListener('online', this.#sendNow);
  }

  readonly #sendNow = () => this.#sendIn(0);

  #sendIn(pause: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#send(), pause);
  }

  async #send(): Promise<void> {
    if (this.#isSending || this.count === 0 || this.saving.value.kind === 'conflict') return;
    this.#isSending = true;
    const sent = this.#waiting.slice(0, MOST_EDITS_A_CALL);
    const edits = sent.map(({ edit }) => edit);
    const called = await calls.saveEdits(this.#job, { base: this.version, editor: this.#editor, edits });
    this.#isSending = false;
    if (called.kind === 'away') {
      this.#wait('The server does not answer', this.#retry);
      this.#retry = Math.min(RETRY.most, this.#retry * 2);
      return;
    }
    this.#retry = RETRY.first;
    if (called.kind === 'refused') {
      if (called.status === 409) {
        this.saving.value = { kind: 'conflict' };
        this.#onConflict();
      } else this.#wait(called.error.message, RETRY.most);
      return;
    }
    const { version, savedAt } = called.value;
    this.version = version;
    this.#waiting = this.#waiting.slice(sent.length).map((waiting) => ({ ...waiting, base: version }));
    await this.#outbox.remove(sent.map(({ id }) => id));
    for (const waiting of this.#waiting) await this.#outbox.put(waiting);
    this.#onSaved();
    if (this.count === 0) this.saving.value = { kind: 'saved', at: savedAt };
    else {
      this.saving.value = { kind: 'saving', count: this.count };
      this.#sendIn(PAUSE);
    }
  }

  #wait(why: string, pause: number): void {
    this.saving.value = { kind: 'waiting', count: this.count, why };
    this.#sendIn(pause);
  }
}
