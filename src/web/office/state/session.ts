import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { JobFile } from '../../../job/documents/job-file.ts';
import type { Edit } from '../../../job/edit/edit.ts';
import { applyEdit, previewEdit, type Recipe, turnBack } from '../../../job/edit/edit-job.ts';
import { takeState } from '../../../job/edit/take-state.ts';
import type { EditList, StoredEdit } from '../../../wire/edits.ts';
import type { OpenJob } from '../../../wire/jobs.ts';
import type { Issued } from '../../../wire/revisions.ts';
import { tellCall } from '../../parts/call.ts';
import { download, fileNameOf } from '../../parts/download.ts';
import { listEditors, takeEditor } from './editor.ts';
import { History, redoId, undoId } from './history.ts';
import { tell } from './messages.ts';
import { calls } from './office-calls.ts';
import { Outbox } from './outbox.ts';
import { Saver } from './saver.ts';
import { setAside, tellOfStranded } from './stranded-edits.ts';
import { takeEdit } from './take-edit.ts';
import { tellError } from './use-asked.ts';
import { readWaiting, type Waiting } from './waiting-edits.ts';

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

/** How many of the latest edits can be undone after a page is loaded anew. */
const REMEMBERED = 100;
/** How often a page asks whether somebody else has edited [ms]. */
const ASKS_EVERY = 8000;
/** Between tries to find out what a conflict is about [ms]. */
const ASKS_AGAIN = 2000;

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
  readonly conflict = signal<Conflict | null>(null);
  readonly issued = signal<readonly Issued[]>([]);
  readonly #file: Signal<JobFile>;
  readonly #preview = signal<JobFile | null>(null);
  readonly #editor: string;
  readonly #channel: BroadcastChannel;
  readonly #timer: ReturnType<typeof setInterval>;
  readonly #followers = new Set<Follower>();
  #later: ReturnType<typeof setTimeout> | undefined;
  #keeping: Promise<void> | null = null;
  #isClosed = false;

  private constructor(opened: OpenJob, editor: string, issued: readonly Issued[]) {
    this.id = opened.id;
    this.#editor = editor;
    this.#file = signal(opened.file);
    this.issued.value = issued;
    this.shown = computed(() => this.#preview.value ?? this.file);
    this.#channel = new BroadcastChannel(`onepour-job-${opened.id}`);
    this.#channel.onmessage = () => void this.#ask();
    this.saver = new Saver({
      job: opened.id,
      editor,
      version: opened.version,
      savedAt: opened.savedAt,
      outbox,
      onConflict: () => void this.#meetConflict(),
      onRefused: (status, why) => this.#tellRefusal(status, why),
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
    const waiting = await findWaiting(opened.value, editor, editors);
    if (waiting.kind === 'moved') return JobSession.open(id);
    if (waiting.kind === 'unknown') return waiting.why;
    const session = new JobSession(opened.value, editor, revisions.value.revisions);
    session.#takeOver(waiting);
    // The job can be worked on meanwhile.
    void session.#loadHistory(opened.value.version);
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
    if (called.kind !== 'answered' || called.value.revisions.length === this.issued.peek().length) return;
    this.issued.value = called.value.revisions;
  }

  /** Goes on with the server's version; this page's stays kept on the server. */
  async takeTheirs(): Promise<void> {
    const conflict = await this.#keepMine();
    if (conflict !== null) this.#goOn(conflict.theirs);
  }

  /** Goes on with this page's version, as an edit on theirs, which stays in the list of edits. */
  async takeMine(): Promise<void> {
    const conflict = await this.#keepMine();
    if (conflict === null) return;
    this.#goOn(conflict.theirs);
    const why = this.commit('Own version taken after a conflict', (draft) => takeState(draft, conflict.mine));
    if (why !== null) tell('fault', `Your version could not be taken, and is kept ${conflict.kept}: ${why}`);
  }

  /** Gives the person this page's version as a file: where the server does not keep it, it can be decided all the same. */
  saveMineAsFile(): void {
    const conflict = this.conflict.peek();
    if (conflict === null) return;
    const { mine } = conflict;
    download(`${fileNameOf(mine.job.project.name)}-own-version.json`, JSON.stringify(mine), 'application/json');
    this.conflict.value = { ...conflict, kept: 'as a file' };
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
    clearTimeout(this.#later);
    removeEventListener('focus', this.#onFocus);
    this.#channel.close();
    this.saver.close();
  }

  readonly #onFocus = () => void this.#ask();

  #take(edit: Edit, file: JobFile): void {
    this.#file.value = file;
    this.history.add(edit);
    this.saver.add(edit);
    const conflict = this.conflict.peek();
    // What was kept lacks this.
    if (conflict !== null) this.conflict.value = { ...conflict, mine: file, kept: null };
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
    this.saver.adopt(waiting.edits, waiting.base);
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
      const next = takeEdits(this.id, this.#file.peek(), called.value) ?? (await this.#openAnew());
      if (next === null || !isSame()) return;
      this.#goOn(next);
      if (isTold) tellOfOthers(edits);
    }
    // A letter that the job had already is issued without an edit.
    await this.loadIssued();
  }

  async #openAnew(): Promise<OpenJob | null> {
    const called = await calls.openJob(this.id);
    return called.kind === 'answered' ? called.value : null;
  }

  /** Finds what this page's version stands against, and keeps this one on the server, whole, before anybody decides anything. */
  async #meetConflict(isFirst = true): Promise<void> {
    if (this.#isClosed) return;
    const theirs = await calls.openJob(this.id);
    if (this.#isClosed) return;
    if (theirs.kind !== 'answered') {
      if (theirs.kind === 'refused' && isFirst) this.#tellRefusal(theirs.status, theirs.error.message);
      this.#later = setTimeout(() => void this.#meetConflict(false), ASKS_AGAIN);
      return;
    }
    const isEarlier = theirs.value.version < this.saver.version;
    this.conflict.value = { theirs: theirs.value, mine: this.#file.peek(), kept: null, why: null, isEarlier };
    await this.#keepMine();
  }

  /** The conflict with this page's version kept; null where there is none, or where the server does not take it now. */
  async #keepMine(): Promise<Conflict | null> {
    this.#keeping ??= this.#keep().finally(() => {
      this.#keeping = null;
    });
    await this.#keeping;
    const conflict = this.conflict.peek();
    return conflict === null || conflict.kept === null ? null : conflict;
  }

  async #keep(): Promise<void> {
    for (;;) {
      const asked = this.conflict.peek();
      if (asked === null || asked.kept !== null) return;
      const base = this.saver.version;
      const reason = 'Edited here and elsewhere from the same state';
      const called = await calls.keepVersion(this.id, { base, editor: this.#editor, reason, file: asked.mine });
      const now = this.conflict.peek();
      if (now === null || now.kept !== null) return;
      const isKept = called.kind === 'answered';
      // Edited meanwhile: that is kept too.
      if (isKept && now.mine !== asked.mine) continue;
      this.conflict.value = { ...now, kept: isKept ? 'on the server' : null, why: tellCall(called) };
      return;
    }
  }

  /** Why edits stay on this device although the server answers, and what can be done about it. */
  #tellRefusal(status: number, why: string): void {
    if (status !== 404) {
      const remedy = status < 500 ? ' Undo them, or save the job as a file.' : '';
      tell('fault', `The server does not take the last edits (${why}): they are on this device only.${remedy}`);
      return;
    }
    const restore = async () => {
      const called = await calls.restoreJob(this.id);
      if (called.kind === 'answered') this.saver.sendNow();
      else tell('fault', tellCall(called) ?? '');
    };
    tell('fault', 'The job was removed elsewhere, so the last edits are on this device only.', {
      text: 'Put the job back',
      run: () => void restore(),
    });
  }

  /** From a state of the server; what this page had besides is there, or kept elsewhere. */
  #goOn({ version, savedAt, file }: OpenJob): void {
    this.saver.startAnew(version, savedAt);
    this.conflict.value = null;
    this.#preview.value = null;
    this.history.forget();
    this.#setFile(file);
  }
}

/** What this device has of a job besides what the server has. */
async function findWaiting(opened: OpenJob, editor: string, editors: ReadonlySet<string>): Promise<Waiting> {
  try {
    const left = await outbox.list(opened.id);
    const waiting = await readWaiting(opened, left, outbox, editor, editors);
    if (waiting.kind === 'stranded') await setAside(opened.id, waiting.edits, outbox);
    await tellOfStranded(opened.id, opened.file.job.project.name, outbox);
    return waiting;
  } catch (error) {
    tell('fault', `Whether this device has edits of the job could not be found out: ${tellError(error)}`);
    return { kind: 'nothing' };
  }
}

/** The job after edits of others; null where one does not fit: the page then has another state than it should. */
function takeEdits(id: string, file: JobFile, { edits }: EditList): OpenJob | null {
  const last = edits.at(-1);
  if (last === undefined) return null;
  try {
    const after = edits.reduce((sofar, { edit }) => applyEdit(sofar, edit), file);
    return { id, version: last.version, savedAt: last.savedAt, file: after };
  } catch {
    return null;
  }
}

function tellOfOthers(edits: readonly StoredEdit[]): void {
  const count = edits.length === 1 ? '1 edit' : `${edits.length} edits`;
  const labels = edits.slice(-3).map(({ edit }) => edit.label);
  tell('note', `${count} made elsewhere: ${labels.join('; ')}`);
}

/** What an edit was about, however often it was undone. */
function bareLabel({ label }: Edit): string {
  return label.replace(/^(Undone: )+/, '');
}
