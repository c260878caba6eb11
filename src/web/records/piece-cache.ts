import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { foldPiece } from '../../records/fold/fold-piece.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import type { FactRecord } from '../../records/record.ts';

interface CachedPiece {
  readonly records: Map<string, FactRecord>;
  readonly state: Signal<PieceState>;
  /** The first reading; the same promise for everybody who waits for it. */
  reading: Promise<void> | null;
}

/** The pieces that a page has asked for, each folded when it is first asked for and again when one of its own records comes. */
export class PieceCache {
  readonly #read: (piece: string) => Promise<readonly FactRecord[]>;
  readonly #pieces = new Map<string, CachedPiece>();

  constructor(read: (piece: string) => Promise<readonly FactRecord[]>) {
    this.#read = read;
  }

  /** Empty until its records are read; `open` tells when. */
  piece(id: string): ReadonlySignal<PieceState> {
    const cached = this.#take(id);
    void this.#readOnce(id, cached);
    return cached.state;
  }

  async open(ids: readonly string[]): Promise<void> {
    await Promise.all(ids.map((id) => this.#readOnce(id, this.#take(id))));
  }

  /** Takes in what was written on this page, where the piece is in use. */
  add(records: readonly FactRecord[]): void {
    for (const id of new Set(records.map(({ piece }) => piece))) {
      const cached = this.#pieces.get(id);
      if (cached === undefined) continue;
      merge(
        id,
        cached,
        records.filter(({ piece }) => piece === id),
      );
    }
  }

  /** Reads those in use anew: something of them came from elsewhere. */
  async readAgain(ids: Iterable<string>): Promise<void> {
    const used = [...ids].filter((id) => this.#pieces.has(id));
    await Promise.all(used.map(async (id) => merge(id, this.#take(id), await this.#read(id))));
  }

  #take(id: string): CachedPiece {
    const known = this.#pieces.get(id);
    if (known !== undefined) return known;
    const cached = { records: new Map(), state: signal(foldPiece(id, [])), reading: null };
    this.#pieces.set(id, cached);
    return cached;
  }

  #readOnce(id: string, cached: CachedPiece): Promise<void> {
    if (cached.reading !== null) return cached.reading;
    const reading = this.#read(id).then((records) => merge(id, cached, records));
    cached.reading = reading;
    // A device that could not be read is asked again the next time.
    reading.catch(() => {
      cached.reading = null;
    });
    return reading;
  }
}

/** Records are only ever added: what was written while the device was read is not lost by it. */
function merge(id: string, { records, state }: CachedPiece, found: readonly FactRecord[]): void {
  for (const record of found) records.set(record.id, record);
  state.value = foldPiece(id, records.values());
}
