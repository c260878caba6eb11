import type { PlateHole } from './plate-hole.ts';

/**
 * The constraints of a plate over bolts that move along a ray, as rows of numbers that are written again at each step: bolts stand at
 * hole + base + r · direction. Unknowns: shift in the plate's axes [mm, mm], length · turn [mm], r.
 */
export interface ReachProgram {
  readonly count: number;
  /** Largest distance of a hole from the origin [mm]: the turn's unknown is a length with it. */
  readonly length: number;
  readonly unknowns: Float64Array;
  /** Multiplier of each constraint, read when the curvature is summed. */
  readonly weights: Float64Array;
  /** Half the squared distance of bolt and slot axis, less half the squared slack: at most 0 where the bolt is in its hole [mm²]. */
  readonly values: Float64Array;
  /** Four each. */
  readonly gradients: Float64Array;
  /** Upper triangle of the weighted sum of second derivatives. */
  readonly curvature: Float64Array;
  /** Writes values, gradients and curvature at the unknowns. */
  evaluate(base: Float64Array, direction: Float64Array): void;
  /** Writes half the second derivative of each value along a step; of the turn's circle it leaves out what is of second order. */
  bend(step: Float64Array, out: Float64Array): void;
}

/** Prepares the rows for holes; places from the origin that the plate is turned about, best near the holes' middle. */
export function prepareProgram(holes: readonly PlateHole[]): ReachProgram {
  const count = holes.length;
  const column = (of: (hole: PlateHole) => number) => Float64Array.from(holes, of);
  const xs = column(({ at }) => at[0]);
  const ys = column(({ at }) => at[1]);
  const slotX = column(({ angle }) => Math.cos(angle));
  const slotY = column(({ angle }) => Math.sin(angle));
  const half = column(({ slot }) => slot / 2);
  const limit = column(({ slack }) => (slack * slack) / 2);
  const length = Math.max(...holes.map(({ at }) => Math.hypot(...at)), 1e-9);
  const unknowns = new Float64Array(4);
  const weights = new Float64Array(count);
  const values = new Float64Array(count);
  const gradients = new Float64Array(4 * count);
  const m = new Float64Array(10);
  /** Per hole: how the bolt goes with the turn's unknown and with r, and the direction that alone counts (0, 0: all do). */
  const ways = new Float64Array(6 * count);

  const evaluate = (base: Float64Array, direction: Float64Array): void => {
    const a = unknowns[0];
    const b = unknowns[1];
    const r = unknowns[3];
    const cos = Math.cos(unknowns[2] / length);
    const sin = Math.sin(unknowns[2] / length);
    m.fill(0);
    for (let i = 0; i < count; i += 1) {
      const ux = direction[2 * i];
      const uy = direction[2 * i + 1];
      const px = xs[i] + base[2 * i] + r * ux;
      const py = ys[i] + base[2 * i + 1] + r * uy;
      // Bolt and direction in the plate's axes, and how the bolt moves there with the turn.
      const boltX = cos * px + sin * py;
      const boltY = cos * py - sin * px;
      const goX = cos * ux + sin * uy;
      const goY = cos * uy - sin * ux;
      const turnX = boltY / length;
      const turnY = -boltX / length;
      let wx = boltX - xs[i] - a;
      let wy = boltY - ys[i] - b;
      const along = wx * slotX[i] + wy * slotY[i];
      const isBeside = Math.abs(along) < half[i];
      const taken = isBeside ? along : along > 0 ? half[i] : -half[i];
      wx -= taken * slotX[i];
      wy -= taken * slotY[i];
      values[i] = (wx * wx + wy * wy) / 2 - limit[i];
      const k = 4 * i;
      gradients[k] = -wx;
      gradients[k + 1] = -wy;
      gradients[k + 2] = wx * turnX + wy * turnY;
      gradients[k + 3] = wx * goX + wy * goY;
      const weight = weights[i];
      const j = 6 * i;
      ways[j] = turnX;
      ways[j + 1] = turnY;
      ways[j + 2] = goX;
      ways[j + 3] = goY;
      ways[j + 4] = isBeside ? -slotY[i] : 0;
      ways[j + 5] = isBeside ? slotX[i] : 0;
      if (isBeside) {
        // Only what is across the slot counts.
        const cx = -slotY[i];
        const cy = slotX[i];
        const turn = cx * turnX + cy * turnY;
        const go = cx * goX + cy * goY;
        m[0] += weight * cx * cx;
        m[1] += weight * cx * cy;
        m[2] -= weight * cx * turn;
        m[3] -= weight * cx * go;
        m[4] += weight * cy * cy;
        m[5] -= weight * cy * turn;
        m[6] -= weight * cy * go;
        m[7] += weight * turn * turn;
        m[8] += weight * turn * go;
        m[9] += weight * go * go;
      } else {
        m[0] += weight;
        m[2] -= weight * turnX;
        m[3] -= weight * goX;
        m[4] += weight;
        m[5] -= weight * turnY;
        m[6] -= weight * goY;
        m[7] += weight * (turnX * turnX + turnY * turnY);
        m[8] += weight * (turnX * goX + turnY * goY);
        m[9] += weight * (goX * goX + goY * goY);
      }
      // The turn goes round a circle: its second derivatives.
      m[7] -= (weight * (wx * boltX + wy * boltY)) / (length * length);
      m[8] += (weight * (wx * goY - wy * goX)) / length;
    }
  };

  const bend = (step: Float64Array, out: Float64Array): void => {
    for (let i = 0; i < count; i += 1) {
      const j = 6 * i;
      const wx = ways[j] * step[2] + ways[j + 2] * step[3] - step[0];
      const wy = ways[j + 1] * step[2] + ways[j + 3] * step[3] - step[1];
      const across = wx * ways[j + 4] + wy * ways[j + 5];
      out[i] = (ways[j + 4] === 0 && ways[j + 5] === 0 ? wx * wx + wy * wy : across * across) / 2;
    }
  };

  return { count, length, unknowns, weights, values, gradients, curvature: m, evaluate, bend };
}
