import type { PlateHole } from './plate-hole.ts';

/** Sums of the fourth, sixth and eighth powers. */
export const POWERS = 3;

/**
 * Prepares sums over the holes of powers of what a bolt goes off along a direction of the unit sphere, over the slack; in a slot, across it. Given over
 * their means over all directions, which are exact, less 1.
 *
 * Source: for standard normal x, y: E(ax² + by²)² = 3a² + 2ab + 3b², and so on for the third and fourth power (moments 1, 3, 15, 105); over the
 * sphere of d dimensions that divided by d (d + 2) … (textbooks).
 * @param axes bolts for one standard deviation of each dimension (x and y in turn, mm)
 */
export function preparePowerSums(
  holes: readonly PlateHole[],
  axes: readonly Float64Array[],
): (direction: Float64Array, out: Float64Array) => void {
  const degrees = axes.length;
  const count = holes.length;
  // Two rows a hole: what of x and y counts.
  const rows = Float64Array.from(
    holes.flatMap(({ slot, slack, angle }) =>
      slot > slack ? [-Math.sin(angle) / slack, Math.cos(angle) / slack, 0, 0] : [1 / slack, 0, 0, 1 / slack],
    ),
  );
  const means = new Float64Array(POWERS);
  for (let i = 0; i < count; i += 1) {
    const [a, b] = findSpread(i, rows, axes);
    const [second, third] = [degrees * (degrees + 2), degrees * (degrees + 2) * (degrees + 4)];
    means[0] += (3 * a * a + 2 * a * b + 3 * b * b) / second;
    means[1] += (15 * a ** 3 + 9 * a * a * b + 9 * a * b * b + 15 * b ** 3) / third;
    means[2] +=
      (105 * a ** 4 + 60 * a ** 3 * b + 54 * a * a * b * b + 60 * a * b ** 3 + 105 * b ** 4) / (third * (degrees + 6));
  }
  return (direction, out) => {
    out.fill(0);
    for (let i = 0; i < count; i += 1) {
      const x = direction[2 * i];
      const y = direction[2 * i + 1];
      const one = rows[4 * i] * x + rows[4 * i + 1] * y;
      const two = rows[4 * i + 2] * x + rows[4 * i + 3] * y;
      const square = one * one + two * two;
      out[0] += square * square;
      out[1] += square * square * square;
      out[2] += square * square * square * square;
    }
    for (let j = 0; j < POWERS; j += 1) out[j] = out[j] / means[j] - 1;
  };
}

/** Variances of the two numbers of a hole along their principal axes, for a standard normal point. */
function findSpread(i: number, rows: Float64Array, axes: readonly Float64Array[]): readonly [number, number] {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const axis of axes) {
    const one = rows[4 * i] * axis[2 * i] + rows[4 * i + 1] * axis[2 * i + 1];
    const two = rows[4 * i + 2] * axis[2 * i] + rows[4 * i + 3] * axis[2 * i + 1];
    xx += one * one;
    xy += one * two;
    yy += two * two;
  }
  const middle = (xx + yy) / 2;
  const half = Math.hypot((xx - yy) / 2, xy);
  return [middle + half, Math.max(0, middle - half)];
}
