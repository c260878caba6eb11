import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { JobFile } from '../../../job/documents/job-file.ts';
import type { Edit } from '../../../job/edit/edit.ts';
import { applyEdit, previewEdit, type Recipe, turnBack } from '../../../job/edit/edit-job.ts';
import type { OpenJob } from '../../../wire/jobs.ts';
import type { Issued } from '../../../wire/revisions.ts';
import { tellCall } from '../../parts/call.ts';
import { listEditors, takeEditor } from './editor.ts';
import { History, redoId, undoId } from './history.ts';
import { tell } from './messages.ts';
import { calls } from './office-calls.ts';
import { Outbox } from './outbox.ts';
import { Saver } from './saver.ts';
import { takeEdit } from './take-edit.ts';
import { readWaiting } from './waiting-edits.ts';

/** The job on the server and the one on this page, where both went on from the same state. */
export interface Conflict {
  readonly theirs: OpenJob;
  readonly mine: JobFile;
  /** Where mine is kept on the server; null: not yet, it is on this device. */
  readonly kept: string | null;
}

/** How many of the latest edits can be undone after a page is loaded anew. */
const REMEMBERED = 100;
/** How often a page asks whether somebody else has edited [ms]. */
const ASKS_EVERY = 8000;

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
  readonly conflict = signal<Conflict | null>(null);
  readonly issued = signal<readonly Issued[]>([]);
  readonly #file: Signal<JobFile>;
  readonly #preview = signal<JobFile | null>(null);
  readonly #editor: string;
  readonly #channel: BroadcastChannel;
  readonly #timer: ReturnType<typeof setInterval>;
  readonly #followers = new Set<Follower>();

  private constructor(opened: OpenJob, editor: string, outbox: Outbox) {
    this.id = opened.id;
    this.#editor = editor;
    this.#file = signal(opened.file);
    this.shown = computed(() => this.#preview.value ?? this.file);
    this.#channel = new BroadcastChannel(`onepour-job-${opened.id}`);
    this.#channel.onmessage = () => void this.#ask();
    this.saver = new Saver({
      job: opened.id,
      editor,
      version: opened.version,
      savedAt: opened.savedAt,
      outbox,
      onConflict: () => void this.#meetConflict(this.file),
      onSaved: () => this.#channel.postMessage('saved'),
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
    const outbox = new Outbox();
    const session = new JobSession(opened.value, editor, outbox);
    session.issued.value = revisions.value.revisions;
    const waiting = await readWaiting(opened.value, outbox, editor, editors);
    if (waiting.kind === 'goes on') {
      session.#setFile(waiting.file);
      session.saver.adopt(waiting.edits);
    } else if (waiting.kind === 'conflict') {
      session.saver.adopt(waiting.edits);
      session.saver.saving.value = { kind: 'conflict' };
      await session.#meetConflict(waiting.mine);
    }
    // The job can be worked on meanwhile.
    void session.#loadHistory();
    return session;
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
    if (called.kind === 'answered') this.issued.value = called.value.revisions;
  }

  /** Goes on with the server's version; this page's stays kept on the server. */
  async takeTheirs(): Promise<void> {
    const conflict = await this.#keepMine();
    if (conflict !== null) await this.#settle(conflict.theirs);
  }

  /** Goes on with this page's version, as an edit on theirs, which stays in the list of edits. */
  async takeMine(): Promise<void> {
    const conflict = await this.#keepMine();
    if (conflict === null) return;
    await this.#settle(conflict.theirs);
    const { mine } = conflict;
    this.commit('Own version taken after a conflict', (draft) => {
      Object.assign(draft, { job: mine.job, library: mine.library });
    });
  }

  /**
   * Asks the server for edits of others now.
   * @param isTold whether a line tells of them; not where this page itself caused them
   */
  refresh(isTold = true): Promise<void> {
    return this.#ask(isTold);
  }

  close(): void {
    clearInterval(this.#timer);
    removeEventListener('focus', this.#onFocus);
    this.#channel.close();
    this.saver.close();
  }

  readonly #onFocus = () => void this.#ask();

  #take(edit: Edit, file: JobFile): void {
    this.#file.value = file;
    this.history.add(edit);
    void this.saver.add(edit);
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

  async #loadHistory(): Promise<void> {
    // What was issued stands: undo goes back to it, not behind it.
    const lastIssue = Math.max(0, ...this.issued.peek().map(({ version }) => version));
    const called = await calls.listEdits(this.id, Math.max(lastIssue, this.saver.version - REMEMBERED));
    if (called.kind !== 'answered') return;
    // An edit that was made meanwhile counts from here on.
    const since = this.history.stacks.peek().done;
    this.history.load([...called.value.edits.map(({ edit }) => edit), ...since]);
  }

  /** Takes what others have done; while this page has edits of its own on the way, the server will say so. */
  async #ask(isTold = true): Promise<void> {
    if (this.saver.count > 0 || this.conflict.peek() !== null || this.#preview.peek() !== null) return;
    const before = this.saver.version;
    const called = await calls.listEdits(this.id, before);
    if (called.kind !== 'answered' || called.value.edits.length === 0) return;
    if (this.saver.count > 0 || this.saver.version !== before) return;
    const { edits } = called.value;
    let file = this.#file.peek();
    for (const { edit } of edits) file = applyEdit(file, edit);
    const last = edits.at(-1);
    if (last !== undefined) await this.saver.startAnew(last.version, last.savedAt);
    this.history.forget();
    this.#setFile(file);
    if (edits.some(({ edit }) => edit.label.startsWith('Revision '))) await this.loadIssued();
    if (!isTold) return;
    const count = edits.length === 1 ? '1 edit' : `${edits.length} edits`;
    tell(
      'note',
      `${count} made elsewhere: ${edits
        .map(({ edit }) => edit.label)
        .slice(-3)
        .join('; ')}`,
    );
  }

  /** Keeps this page's version on the server, whole, before anybody decides anything. */
  async #meetConflict(mine: JobFile): Promise<void> {
    const theirs = await calls.openJob(this.id);
    if (theirs.kind !== 'answered') {
      setTimeout(() => void this.#meetConflict(mine), 2000);
      return;
    }
    this.conflict.value = { theirs: theirs.value, mine, kept: null };
    await this.#keepMine();
  }

  /** The conflict with this page's version kept; null where there is none, or where the server does not take it now. */
  async #keepMine(): Promise<Conflict | null> {
    const conflict = this.conflict.peek();
    if (conflict === null || conflict.kept !== null) return conflict;
    const base = this.saver.version;
    const reason = 'Edited here and elsewhere from the same state';
    const called = await calls.keepVersion(this.id, { base, editor: this.#editor, reason, file: conflict.mine });
    if (called.kind !== 'answered') {
      tell('fault', `Your version is on this device only, so nothing is decided yet. ${tellCall(called) ?? ''}`);
      return null;
    }
    const kept = { ...conflict, kept: called.value.id };
    this.conflict.value = kept;
    return kept;
  }

  async #settle({ version, savedAt, file }: OpenJob): Promise<void> {
    await this.saver.startAnew(version, savedAt);
    this.conflict.value = null;
    this.history.forget();
    this.#setFile(file);
  }
}

/** What an edit was about, however often it was undone. */
function bareLabel({ label }: Edit): string {
  return label.replace(/^(Undone: )+/, '');
}
