import { useEffect, useState } from 'preact/hooks';
import type { OpenPiece } from './read-piece.ts';
import type { Yard } from './yard.ts';

/** A piece takes some 20 ms to be planned and judged; as long as this the page does nothing else [ms]. */
const SLICE = 50;
/** So often what is ready is shown [ms]. */
const SHOWS_EVERY = 400;

/** Pieces that the pours plan or any record names, as far as they can be shown, with why the others cannot. */
export interface KnownPieces {
  readonly pieces: readonly OpenPiece[];
  readonly absent: readonly { readonly id: string; readonly why: string }[];
  /** Pieces that are still being read. */
  readonly reading: number;
}

/** What is worked out, of which state of the list. */
interface Ready {
  readonly list: string;
  readonly ids: readonly string[];
}

/** Works out one piece after another and lets the page breathe between. Ends early when `isGone` says so. */
async function workOut(
  yard: Yard,
  ids: readonly string[],
  onReady: (ids: readonly string[]) => void,
  isGone: () => boolean,
): Promise<void> {
  let slice = performance.now();
  let shown = slice;
  for (const [k, id] of ids.entries()) {
    const reading = yard.piece(id);
    await yard.device.openPieces([id]);
    if (isGone()) return;
    reading.peek();
    const now = performance.now();
    if (now - slice < SLICE) continue;
    if (now - shown > SHOWS_EVERY) {
      onReady(ids.slice(0, k + 1));
      shown = now;
    }
    await new Promise((resolve) => setTimeout(resolve));
    slice = performance.now();
  }
  if (!isGone()) onReady(ids);
}

/**
 * Every piece of the job, those with records first; what shows them follows what is written and what arrives. A large job comes bit by bit: the page
 * answers meanwhile.
 * @param which `begun`: only those that records name
 */
export function usePieces(yard: Yard, which: 'all' | 'begun' = 'all'): KnownPieces {
  const [ready, setReady] = useState<Ready>({ list: '', ids: [] });
  const planned = which === 'all' ? yard.planned.value.keys() : [];
  const ids = [...new Set([...yard.device.knownPieces.value, ...planned])];
  const list = [yard.context.value?.revision.fingerprint ?? '', ...ids].join();
  useEffect(() => {
    const state = { isGone: false };
    void workOut(
      yard,
      ids,
      (done) => setReady({ list, ids: done }),
      () => state.isGone,
    );
    return () => {
      state.isGone = true;
    };
  }, [yard, list]);
  const known = ready.list === list ? ready.ids : [];
  const readings = known.map((id) => ({ id, reading: yard.piece(id).value }));
  const waiting = readings.filter(({ reading }) => reading.kind === 'reading').length;
  return {
    pieces: readings.flatMap(({ reading }) => (reading.kind === 'open' ? [reading.piece] : [])),
    absent: readings.flatMap(({ id, reading }) => (reading.kind === 'absent' ? [{ id, why: reading.why }] : [])),
    reading: ids.length - known.length + waiting,
  };
}
