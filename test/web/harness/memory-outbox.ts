import type { WaitingEdit } from '../../../src/web/office/state/outbox.ts';

/** What is on the device, for all pages of a test. */
export const device = { edits: new Map<string, WaitingEdit>(), isBroken: false };

/** Stands for the outbox where there is no browser: the same promises, kept in memory, or by a browser that keeps nothing. */
export class MemoryOutbox {
  put(waiting: readonly WaitingEdit[]): Promise<void> {
    return this.replace([], waiting);
  }

  remove(ids: readonly string[]): Promise<void> {
    return this.replace(ids, []);
  }

  async replace(ids: readonly string[], waiting: readonly WaitingEdit[]): Promise<void> {
    // A database answers later than a promise.
    await new Promise((resolve) => setTimeout(resolve, 5));
    this.#check();
    for (const id of ids) device.edits.delete(id);
    for (const one of waiting) device.edits.set(one.id, structuredClone(one));
  }

  async list(job: string): Promise<readonly WaitingEdit[]> {
    this.#check();
    return [...device.edits.values()].filter((one) => one.job === job).sort((a, b) => a.order - b.order);
  }

  #check(): void {
    if (device.isBroken) throw new Error('nothing may be kept');
  }
}

/** The page that is opened next, and which pages are open. */
export const page = { editor: 'a', open: new Set<string>() };

/** Stands for the names and locks of tabs. */
export const editors = {
  takeEditor: async () => page.editor,
  listEditors: async () => page.open,
};
