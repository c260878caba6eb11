import { type ReadonlySignal, signal } from '@preact/signals';
import type { SetOutItem } from '../../assess/set-out/set-out.ts';
import type { RecordDevice, WriteDraft } from '../records/record-device.ts';
import type { OpenPiece } from './read-piece.ts';

/** What every record about a piece, or one of its inserts, says: by this plan, here, now. */
export function factOf(
  { id, plan }: Pick<OpenPiece, 'id' | 'plan'>,
  item: Pick<SetOutItem, 'castIn'> | null,
): Pick<WriteDraft, 'piece' | 'item' | 'checkKey' | 'measuredAt' | 'measuredBy'> {
  const key = item?.castIn.key ?? null;
  return {
    piece: id,
    item: key,
    checkKey: key === null ? null : (plan.keys.get(key) ?? null),
    measuredAt: null,
    measuredBy: null,
  };
}

/** Takes records out of what counts. */
export function takeBack(
  piece: Pick<OpenPiece, 'id'>,
  records: readonly { readonly id: string; readonly item: string | null }[],
  reason: string,
): readonly WriteDraft[] {
  return records.map(
    ({ id, item }): WriteDraft => ({
      kind: 'correction',
      body: { of: id, reason },
      piece: piece.id,
      item,
      checkKey: null,
      measuredAt: null,
      measuredBy: null,
    }),
  );
}

/** Writes down one entry at a time, and says why one could not be. */
export class FactWriter {
  readonly #device: Pick<RecordDevice, 'writeAll'>;
  readonly #fault = signal<string | null>(null);
  readonly #isBusy = signal(false);

  constructor(device: Pick<RecordDevice, 'writeAll'>) {
    this.#device = device;
  }

  /** Why the last entry is not written down; null: it is. */
  get fault(): ReadonlySignal<string | null> {
    return this.#fault;
  }

  get isBusy(): ReadonlySignal<boolean> {
    return this.#isBusy;
  }

  /** On disk when it gives true. A second tap while one is written is a wet sleeve: it does nothing. */
  async write(drafts: readonly WriteDraft[]): Promise<boolean> {
    if (this.#isBusy.value || drafts.length === 0) return false;
    this.#isBusy.value = true;
    try {
      await this.#device.writeAll(drafts);
      this.#fault.value = null;
      return true;
    } catch (error) {
      this.#fault.value = error instanceof Error ? error.message : String(error);
      return false;
    } finally {
      this.#isBusy.value = false;
    }
  }
}
