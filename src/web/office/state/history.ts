import { type ReadonlySignal, signal } from '@preact/signals';
import type { Edit } from '../../../job/edit/edit.ts';
import { drawUuid } from '../../parts/draw-uuid.ts';

/**
 * An edit that takes another back carries that one's id behind a mark, so that a page that is loaded anew finds from the list alone what can be undone
 * and redone.
 */
const UNDO = '<';
const REDO = '>';

/** What can be undone and redone, the latest last. */
interface Stacks {
  readonly done: readonly Edit[];
  readonly undone: readonly Edit[];
}

const bare = (id: string) => id.split(/[<>]/)[0] ?? id;

/** Whether an edit takes back, by its id, the one that lies on top. */
function turns(edit: Edit, mark: string, top: Edit | undefined): boolean {
  return top !== undefined && edit.id.split(mark)[1] === bare(top.id);
}

function push({ done, undone }: Stacks, edit: Edit): Stacks {
  if (turns(edit, UNDO, done.at(-1))) return { done: done.slice(0, -1), undone: [...undone, edit] };
  if (turns(edit, REDO, undone.at(-1))) return { done: [...done, edit], undone: undone.slice(0, -1) };
  return { done: [...done, edit], undone: [] };
}

/** The ids of the next undo and redo: short, whatever was undone before. */
export function undoId(edit: Edit): string {
  return `${drawUuid()}${UNDO}${bare(edit.id)}`;
}

export function redoId(edit: Edit): string {
  return `${drawUuid()}${REDO}${bare(edit.id)}`;
}

/** The edits of a job that can be taken back one by one, as a list read backwards. */
export class History {
  readonly #stacks = signal<Stacks>({ done: [], undone: [] });
  /** Nothing from before can be taken back any more. */
  #isCut = false;

  get stacks(): ReadonlySignal<Stacks> {
    return this.#stacks;
  }

  add(edit: Edit): void {
    this.#stacks.value = push(this.#stacks.value, edit);
  }

  /** Puts the edits of an earlier page, the earliest first, below those made since; not where they were forgotten meanwhile. */
  load(edits: readonly Edit[]): void {
    if (this.#isCut) return;
    this.#stacks.value = [...edits, ...this.#stacks.peek().done].reduce(push, { done: [], undone: [] });
  }

  /** Places in a list of patches no longer mean the same once somebody else has edited. */
  forget(): void {
    this.#isCut = true;
    this.#stacks.value = { done: [], undone: [] };
  }
}
