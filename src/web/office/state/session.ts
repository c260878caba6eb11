import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { JobFile } from '../../../job/documents/job-file.ts';
import type { Edit } from '../../../job/edit/edit.ts';
import { applyEdit, previewEdit, type Recipe, turnBack } from '../../../job/edit/edit-job.ts';
import { takeState } from '../../../job/edit/take-state.ts';
import type { OpenJob } from '../../../wire/jobs.ts';
import type { Issued } from '../../../wire/revisions.ts';
import { tellCall } from '../../parts/call.ts';
import { type Conflict, Conflicts } from './conflict.ts';
import { listEditors, takeEditor } from './editor.ts';
import { History, redoId, undoId } from './history.ts';
import { findLeftBehind, tellOfLeft } from './left-behind.ts';
import { tell } from './messages.ts';
import { calls } from './office-calls.ts';
import { takeEdits, tellOfOthers } from './others-edits.ts';
import { Outbox } from './outbox.ts';
import { Saver } from './saver.ts';
import { takeEdit } from './take-edit.ts';
import { tellUnsaved } from './tell-unsaved.ts';
import type { Waiting } from './waiting-edits.ts';

/** How many of the latest edits can be undone after a page is loaded anew. */
const REMEMBERED = 100;
/** How often a page asks whether somebody else has edited [ms]. */
const ASKS_EVERY = 8000;
/** Edits that are not on the server yet, of all jobs that this page opens. */
const outbox = new Outbox();

/** Something that follows the edits of a job, such as the worker that computes it. */
export interface Follower {
  readonly onFile: (file: JobFile) => void;
  readonly onEdit: (edit: Edit, file: JobFile) => void;
}

/** One job, open on this page: its file, edits, undo, saving, and what others do to it meanwhile. */
export class JobSession {
  readonly id: string;
  readonly saver: Saver;
  readonly history = new History();
  /** With what is being dragged at this moment; the committed file otherwise. */
  readonly shown: ReadonlySignal<JobFile>;
  readonly issued = signal<readonly Issued[]>([]);
  readonly #file: Signal<JobFile>;
  readonly #preview = signal<JobFile | null>(null);
  readonly #editor: string;
  readonly #conflicts: Conflicts;
  readonly #channel: BroadcastChannel;
  readonly #timer: ReturnType<typeof setInterval>;
  readonly #followers = new Set<Follower>();
  #isClosed = false;
  #hasToldOfLeft = false;

  private constructor(opened: OpenJob, editor: string, issued: readonly Issued[]) {
    this.id = opened.id;
    this.#editor = editor;
    this.#file = signal(opened.file);
    this.issued.value = issued;
    this.shown = computed(() => this.#preview.value ?? this.file);
    this.#channel = new BroadcastChannel(`onepour-job-${opened.id}`);
    this.#channel.onmessage = () => void this.#ask();
    const onRefused = (status: number, why: string) => tellUnsaved(this.id, status, why, () => this.saver.sendNow());
    this.#conflicts = new Conflicts({ job: opened.id, editor, onRefused });
    this.saver = new Saver({
      job: opened.id,
      editor,
      version: opened.version,
      savedAt: opened.savedAt,
      outbox,
      onConflict: () => void this.#meetConflict(),
      onRefused,
      onSaved: () => {
        if (!this.#isClosed) this.#channel.postMessage('saved');
      },
    });
    this.#timer = setInterval(() => void this.#ask(), ASKS_EVERY);
    addEventListener('focus', this.#onFocus);
  }

  /** Opens a job with what this device still has of it; a text says why it cannot be opened. */
  static async open(id: string): Promise<JobSession | string> {
    const [opened, revisions, editor, editors] = await Promise.all([
      calls.openJob(id),
      calls.listRevisions(id),
      takeEditor(),
      listEditors(),
    ]);
    const why = tellCall(opened) ?? tellCall(revisions);
    if (opened.kind !== 'answered' || revisions.kind !== 'answered') return why ?? '';
    const waiting = await findLeftBehind(opened.value, outbox, editor, editors);
    if (waiting.kind === 'moved') return JobSession.open(id);
    if (waiting.kind === 'unknown') return waiting.why;
    const session = new JobSession(opened.value, editor, revisions.value.revisions);
    session.#takeOver(waiting);
    // The job can be worked on meanwhile.
    void session.#loadHistory(opened.value.version);
    return session;
  }

  get conflict(): ReadonlySignal<Conflict | null> {
    return this.#conflicts.now;
  }

  get file(): JobFile {
    return this.#file.value;
  }

  /** What follows gets the file at once and every edit from now on; the answer ends it. */
  follow(follower: Follower): () => void {
    this.#followers.add(follower);
    follower.onFile(this.#file.peek());
    return () => this.#followers.delete(follower);
  }

  /** Shows a change that is not made yet, frame by frame; null takes it away. */
  preview(recipe: Recipe | null): void {
    this.#preview.value = recipe === null ? null : previewEdit(this.#file.peek(), recipe);
  }

  /**
   * Makes an edit.
   * @returns null when it stands (or nothing would change), else why it may not: for the place where it was typed
   */
  commit(label: string, recipe: Recipe): string | null {
    this.#preview.value = null;
    const taken = takeEdit(this.#file.peek(), label, recipe, this.issued.peek());
    if (taken.kind === 'refused') return taken.text;
    if (taken.kind === 'taken') this.#take(taken.edit, taken.file);
    return null;
  }

  undo(): void {
    const last = this.history.stacks.peek().done.at(-1);
    if (last !== undefined) this.#turn(last, `Undone: ${bareLabel(last)}`, undoId(last));
  }

  redo(): void {
    const last = this.history.stacks.peek().undone.at(-1);
    if (last !== undefined) this.#turn(last, bareLabel(last), redoId(last));
  }

  async loadIssued(): Promise<void> {
    const called = await calls.listRevisions(this.id);
    if (called.kind !== 'answered' || called.value.revisions.length === this.issued.peek().length) return;
    this.issued.value = called.value.revisions;
  }

  /** Goes on with the server's version; this page's stays kept on the server. */
  async takeTheirs(): Promise<void> {
    const conflict = await this.#conflicts.keep(this.saver.version);
    if (conflict !== null) this.#goOn(conflict.theirs);
  }

  /** Goes on with this page's version, as an edit on theirs, which stays in the list of edits. */
  async takeMine(): Promise<void> {
    // Theirs may have been issued, under the letter that mine has.
    await this.loadIssued();
    const conflict = await this.#conflicts.keep(this.saver.version);
    if (conflict === null) return;
    this.#goOn(conflict.theirs);
    const why = this.commit('Own version taken after a conflict', (draft) => takeState(draft, conflict.mine));
    if (why !== null) tell('fault', `Your version could not be taken, and is kept ${conflict.kept}: ${why}`);
  }

  /** Gives the person this page's version as a file: where the server does not keep it, it can be decided all the same. */
  saveMineAsFile(): void {
    this.#conflicts.saveAsFile();
  }

  /**
   * Asks the server for edits of others now.
   * @param isTold whether a line tells of them; not where this page itself caused them
   */
  refresh(isTold = true): Promise<void> {
    return this.#ask(isTold);
  }

  close(): void {
    this.#isClosed = true;
    clearInterval(this.#timer);
    this.#conflicts.close();
    removeEventListener('focus', this.#onFocus);
    this.#channel.close();
    this.saver.close();
  }

  readonly #onFocus = () => void this.#ask();

  #take(edit: Edit, file: JobFile): void {
    this.#file.value = file;
    this.history.add(edit);
    this.saver.add(edit);
    this.#conflicts.change(file);
    for (const follower of this.#followers) follower.onEdit(edit, file);
  }

  #turn(edit: Edit, label: string, id: string): void {
    this.#preview.value = null;
    const back = turnBack(edit, label, { id, at: new Date().toISOString() });
    this.#take(back, applyEdit(this.#file.peek(), back));
  }

  #setFile(file: JobFile): void {
    this.#file.value = file;
    for (const follower of this.#followers) follower.onFile(file);
  }

  /** Takes over what this device had of the job when it was opened. */
  #takeOver(waiting: Waiting): void {
    if (waiting.kind !== 'goes on' && waiting.kind !== 'conflict') return;
    this.#setFile(waiting.mine);
    for (const { edit } of waiting.edits) this.history.add(edit);
    this.saver.adopt(waiting.edits, waiting.base, waiting.known);
    if (waiting.kind === 'goes on') return;
    this.saver.stop();
    void this.#meetConflict();
  }

  /** @param version what came after it this page has made itself, or takes from others, which ends what can be undone */
  async #loadHistory(version: number): Promise<void> {
    // What was issued stands: undo goes back to it, not behind it.
    const lastIssue = Math.max(0, ...this.issued.peek().map((one) => one.version));
    const called = await calls.listEdits(this.id, Math.max(lastIssue, version - REMEMBERED));
    if (called.kind !== 'answered') return;
    this.history.load(called.value.edits.filter((one) => one.version <= version).map(({ edit }) => edit));
  }

  /** Nothing of this page is on its way or in somebody's hand, so that edits of others can be taken. */
  get #isIdle(): boolean {
    const { saver } = this;
    const isSaved = saver.count === 0 && saver.saving.peek().kind === 'saved';
    return !this.#isClosed && isSaved && this.conflict.peek() === null && this.#preview.peek() === null;
  }

  /** Takes what others have done; while this page has edits of its own on the way, the server will say so. */
  async #ask(isTold = true): Promise<void> {
    if (!this.#isIdle) return;
    const before = this.saver.version;
    const isSame = () => this.#isIdle && this.saver.version === before;
    const called = await calls.listEdits(this.id, before);
    if (called.kind !== 'answered' || !isSame()) return;
    const { version, edits } = called.value;
    if (version < before) {
      this.saver.stop();
      await this.#meetConflict();
      return;
    }
    if (edits.length > 0) {
      const next = takeEdits(this.id, this.#file.peek(), edits) ?? (await this.#openAnew());
      if (next === null || !isSame()) return;
      this.#goOn(next);
      if (isTold) tellOfOthers(edits);
    }
    // A letter that the job had already is issued without an edit.
    await this.loadIssued();
    await this.#lookForLeft();
  }

  async #lookForLeft(): Promise<void> {
    if (this.#hasToldOfLeft) return;
    try {
      this.#hasToldOfLeft = await tellOfLeft(this.id, outbox, this.#editor, await listEditors());
    } catch {
      // A browser that keeps nothing has nothing left; the person was told when the job was opened.
      this.#hasToldOfLeft = true;
    }
  }

  async #openAnew(): Promise<OpenJob | null> {
    const called = await calls.openJob(this.id);
    return called.kind === 'answered' ? called.value : null;
  }

  #meetConflict(): Promise<void> {
    return this.#conflicts.meet(this.saver.version, () => this.#file.peek());
  }

  /** From a state of the server; what this page had besides is there, or kept elsewhere. */
  #goOn({ version, savedAt, file }: OpenJob): void {
    this.saver.startAnew(version, savedAt);
    this.#conflicts.end();
    this.#preview.value = null;
    this.history.forget();
    this.#setFile(file);
  }
}

/** What an edit was about, however often it was undone. */
function bareLabel({ label }: Edit): string {
  return label.replace(/^(Undone: )+/, '');
}
