import { findBasePlateHole, type PlateHole } from './clearance-holes.ts';
import type { Thread } from './threads.ts';
import { listWashers } from './washers.ts';

/** The washer that a hole needs [mm]. */
export interface WasherChoice {
  readonly kind: 'ISO 7089' | 'ISO 7093-1' | 'plate';
  /** Outside diameter, or side of a plate washer: at least. */
  readonly outside: number;
  readonly thickness: number;
}

/** A hole wider than the bolt by more than this takes a plate washer [mm]. */
const WIDEST_FOR_FLAT = 3;
/** A plate washer is at least so thick [mm]. */
const LEAST_PLATE = 4;

/**
 * Gives the smallest washer that covers a hole wherever in it the bolt may stand.
 *
 * Source: derived: a bolt at one end of the hole leaves its far end at l − d/2 from the axis, l = length over all, so the washer's
 * outside is at least 2 l − d. A plate washer of at least 4 mm where the hole is wider than d + 3, with the sizes over base plate holes:
 * Steel Construction New Zealand, 2016 (NZS 3404). Slots: by their length.
 * Example: M16 in 18 mm → ISO 7089, 30 × 3; in 22 mm → plate 50 × 6.
 */
export function chooseWasher(thread: Thread, hole: PlateHole): WasherChoice {
  const d = thread.diameter;
  const needed = 2 * (hole.diameter + hole.slot) - d;
  if (hole.diameter <= d + WIDEST_FOR_FLAT) {
    const flat = listWashers(thread).find(({ outside }) => outside >= needed);
    if (flat !== undefined) return { kind: flat.standard, outside: flat.outside, thickness: flat.thickness };
  }
  const base = findBasePlateHole(thread);
  return {
    kind: 'plate',
    outside: Math.max(needed, base?.washerOutside ?? 0),
    thickness: Math.max(LEAST_PLATE, base?.washerThickness ?? 0),
  };
}
