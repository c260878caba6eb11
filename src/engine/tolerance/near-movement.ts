import type { PlateHole } from './plate-hole.ts';

/** A movement that is nearly the best one, found in a fixed number of steps. */
export interface NearMovement {
  /** Shift, and length · turn [mm]. */
  a: number;
  b: number;
  h: number;
  /** Largest distance over slack that it leaves, and each hole's. */
  most: number;
  readonly sizes: Float64Array;
}

/** More steps come nearer, and cost more: with three, what is left of the variance is some per cent. */
const ROUNDS = 3;
/** How much of a least-squares step is taken at first and then: a full one goes to and fro. */
const PARTS = [0.6, 0.35, 0.35] as const;
/** What a hole without any distance counts, so that the sums are never singular. */
const LEAST_WEIGHT = 1e-4;

/**
 * Prepares holes for a quick guess of the best movement over bolts that are off by small amounts: reweighted least squares (Lawson's way to a least
 * largest distance: what is far counts more in the next step), with a small turn. It is no answer: it starts the exact solution, and stands in for it where
 * only what both have in common is wanted.
 * @returns a function of how far each bolt is off (x and y in turn, mm); its result is written over by the next call
 */
export function prepareNearMovement(holes: readonly PlateHole[], length: number): (off: Float64Array) => NearMovement {
  const count = holes.length;
  const column = (of: (hole: PlateHole) => number) => Float64Array.from(holes, of);
  const turnX = column(({ at }) => -at[1] / length);
  const turnY = column(({ at }) => at[0] / length);
  const slotX = column(({ angle }) => Math.cos(angle));
  const slotY = column(({ angle }) => Math.sin(angle));
  const half = column(({ slot }) => slot / 2);
  const share = column(({ slack }) => 1 / slack);
  const restX = new Float64Array(count);
  const restY = new Float64Array(count);
  const found: NearMovement = { a: 0, b: 0, h: 0, most: 0, sizes: new Float64Array(count) };
  const { sizes } = found;

  const measure = (off: Float64Array): void => {
    found.most = 0;
    for (let i = 0; i < count; i += 1) {
      let x = off[2 * i] - found.a - found.h * turnX[i];
      let y = off[2 * i + 1] - found.b - found.h * turnY[i];
      if (half[i] > 0) {
        const along = x * slotX[i] + y * slotY[i];
        const taken = Math.max(-half[i], Math.min(half[i], along));
        x -= taken * slotX[i];
        y -= taken * slotY[i];
      }
      restX[i] = x;
      restY[i] = y;
      sizes[i] = Math.sqrt(x * x + y * y) * share[i];
      if (sizes[i] > found.most) found.most = sizes[i];
    }
  };

  const improve = (part: number): void => {
    let all = 0;
    let sumX = 0;
    let sumY = 0;
    let squares = 0;
    let offX = 0;
    let offY = 0;
    let moment = 0;
    for (let i = 0; i < count; i += 1) {
      const size = sizes[i] / found.most;
      const weight = (size * size * size * size + LEAST_WEIGHT) * share[i] * share[i];
      all += weight;
      sumX += weight * turnX[i];
      sumY += weight * turnY[i];
      squares += weight * (turnX[i] * turnX[i] + turnY[i] * turnY[i]);
      offX += weight * restX[i];
      offY += weight * restY[i];
      moment += weight * (turnX[i] * restX[i] + turnY[i] * restY[i]);
    }
    const lever = squares - (sumX * sumX + sumY * sumY) / all;
    const turn = lever > 1e-12 * squares ? (moment - (sumX * offX + sumY * offY) / all) / lever : 0;
    found.h += part * turn;
    found.a += (part * (offX - sumX * turn)) / all;
    found.b += (part * (offY - sumY * turn)) / all;
  };

  return (off) => {
    found.a = 0;
    found.b = 0;
    found.h = 0;
    measure(off);
    for (let round = 0; round < ROUNDS && found.most > 0; round += 1) {
      improve(PARTS[round]!);
      measure(off);
    }
    return found;
  };
}
