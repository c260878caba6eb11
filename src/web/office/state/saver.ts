import { type Signal, signal } from '@preact/signals';
import type { Edit } from '../../../job/edit/edit.ts';
import type { Saved } from '../../../wire/edits.ts';
import { MOST_EDITS_A_CALL } from './limits.ts';
import { tell } from './messages.ts';
import { calls } from './office-calls.ts';
import type { Outbox, WaitingEdit } from './outbox.ts';
import { tellError } from './use-asked.ts';

/** Where the edits of this page are. */
export type Saving =
  | { readonly kind: 'saved'; readonly at: string }
  | { readonly kind: 'saving'; readonly count: number }
  /** Not on the server. `why`: for the person. `isKept`: on this device, so that the page may be closed; else on this page alone. */
  | { readonly kind: 'waiting'; readonly count: number; readonly why: string; readonly isKept: boolean }
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
  readonly #onRefused: (status: number, why: string) => void;
  readonly #onSaved: () => void;
  #waiting: WaitingEdit[] = [];
  #order = Date.now();
  #timer: ReturnType<typeof setTimeout> | undefined;
  #retry = RETRY.first;
  #isSending = false;
  #isClosed = false;
  /** Whether everything that waits is on this device. */
  #isKept = true;
  /** Whether the person was told that this device keeps nothing. */
  #isTold = false;
  /** Fewer after a call that was too long. */
  #most = MOST_EDITS_A_CALL;

  constructor(of: {
    readonly job: string;
    readonly editor: string;
    readonly version: number;
    readonly savedAt: string;
    readonly outbox: Outbox;
    readonly onConflict: () => void;
    /** The server answers, and does not take the edits; they are sent again from time to time. */
    readonly onRefused: (status: number, why: string) => void;
    readonly onSaved: () => void;
  }) {
    this.#job = of.job;
    this.#editor = of.editor;
    this.version = of.version;
    this.#outbox = of.outbox;
    this.#onConflict = of.onConflict;
    this.#onRefused = of.onRefused;
    this.#onSaved = of.onSaved;
    this.saving = signal<Saving>({ kind: 'saved', at: of.savedAt });
    addEventListener('online', this.#sendNow);
    addEventListener('beforeunload', this.#onLeave);
  }

  get count(): number {
    return this.#waiting.length;
  }

  /** Takes an edit; it is on this device at once, and on the server soon after. */
  add(edit: Edit): void {
    this.#order += 1;
    const waiting = { id: edit.id, job: this.#job, editor: this.#editor, base: this.version, order: this.#order, edit };
    this.#waiting.push(waiting);
    void this.#keep(this.#outbox.put([waiting]));
    if (this.saving.value.kind === 'conflict') return;
    this.saving.value = { kind: 'saving', count: this.count };
    this.#sendIn(PAUSE);
  }

  /**
   * Takes over edits on version `base` that an earlier page left on this device: they are this page's from now on.
   * @param known ids of those that are on the server already
   */
  adopt(waiting: readonly WaitingEdit[], base: number, known: readonly string[]): void {
    const own = waiting.map((one) => ({ ...one, editor: this.#editor, base }));
    this.version = base;
    this.#waiting.push(...own);
    // The clock may have been put back since.
    this.#order = Math.max(this.#order, ...own.map(({ order }) => order));
    void this.#keep(this.#outbox.replace(known, own));
    this.saving.value = { kind: 'saving', count: this.count };
    this.#sendIn(0);
  }

  /** Sends nothing more until a person has decided. */
  stop(): void {
    clearTimeout(this.#timer);
    this.saving.value = { kind: 'conflict' };
  }

  /** What waited is kept elsewhere or there is none, and the job goes on from a version of the server. */
  startAnew(version: number, savedAt: string): void {
    const ids = this.#waiting.map(({ id }) => id);
    this.#waiting = [];
    this.version = version;
    this.#isKept = true;
    this.saving.value = { kind: 'saved', at: savedAt };
    void this.#keep(this.#outbox.remove(ids));
  }

  /** Sends what waits now. */
  sendNow(): void {
    this.#sendIn(0);
  }

  /** Sends what waits once more and then ends; what does not arrive is found when the job is opened again. */
  close(): void {
    this.#isClosed = true;
    clearTimeout(this.#timer);
    removeEventListener('online', this.#sendNow);
    removeEventListener('beforeunload', this.#onLeave);
    void this.#send();
  }

  readonly #sendNow = () => this.sendNow();

  /** A page with edits that are not on the server is not left without a word, unless they are on their way and on this device. */
  readonly #onLeave = (event: BeforeUnloadEvent) => {
    if (this.count === 0) return;
    void this.#send();
    if (this.saving.value.kind !== 'saving' || !this.#isKept) event.preventDefault();
  };

  /** Edits that the browser does not keep go to the server all the same; the person is told. */
  async #keep(writing: Promise<void>): Promise<void> {
    try {
      await writing;
    } catch (error) {
      if (this.count === 0) return;
      this.#isKept = false;
      if (this.#isTold) return;
      this.#isTold = true;
      tell(
        'fault',
        `This browser keeps nothing on this device (${tellError(error)}). Edits go to the server all the same: leave this page open until they are saved.`,
      );
    }
  }

  #sendIn(pause: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#send(), pause);
  }

  async #send(): Promise<void> {
    if (this.#isSending || this.count === 0 || this.saving.value.kind === 'conflict') return;
    this.#isSending = true;
    const sent = this.#waiting.slice(0, this.#most);
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
      if (called.status === 409) this.#meetConflict();
      else if (called.status === 413 && sent.length > 1) {
        this.#most = Math.ceil(sent.length / 2);
        this.#sendIn(0);
      } else {
        const { message } = called.error;
        const { value } = this.saving;
        if (value.kind !== 'waiting' || value.why !== message) this.#onRefused(called.status, message);
        this.#wait(message, RETRY.most);
      }
      return;
    }
    this.#settle(called.value, sent);
  }

  #meetConflict(): void {
    this.stop();
    this.#onConflict();
  }

  /** What was sent is on the server's disk. */
  #settle({ version, savedAt }: Saved, sent: readonly WaitingEdit[]): void {
    this.version = version;
    this.#waiting = this.#waiting.slice(sent.length).map((waiting) => ({ ...waiting, base: version }));
    void this.#keep(
      this.#outbox.replace(
        sent.map(({ id }) => id),
        this.#waiting.slice(0, 1),
      ),
    );
    this.#onSaved();
    if (this.count === 0) {
      this.#isKept = true;
      this.saving.value = { kind: 'saved', at: savedAt };
    } else {
      this.saving.value = { kind: 'saving', count: this.count };
      this.#sendIn(PAUSE);
    }
  }

  #wait(why: string, pause: number): void {
    this.saving.value = { kind: 'waiting', count: this.count, why, isKept: this.#isKept };
    if (!this.#isClosed) this.#sendIn(pause);
  }
}
