/** A point or a direction in two or three dimensions, right-handed. */
export type Vector = readonly number[];

/** Rows of a square matrix. */
export type Matrix = readonly Vector[];

export function dot(a: Vector, b: Vector): number {
  return a.reduce((sum, value, k) => sum + value * b[k]!, 0);
}

export function plus(a: Vector, b: Vector): Vector {
  return a.map((value, k) => value + b[k]!);
}

export function minus(a: Vector, b: Vector): Vector {
  return a.map((value, k) => value - b[k]!);
}

export function times(a: Vector, factor: number): Vector {
  return a.map((value) => value * factor);
}

export function lengthOf(a: Vector): number {
  return Math.hypot(...a);
}

/** M v. */
export function multiply(matrix: Matrix, v: Vector): Vector {
  return matrix.map((row) => dot(row, v));
}

/** A B. */
export function compose(a: Matrix, b: Matrix): Matrix {
  return a.map((row) => b[0]!.map((_, k) => row.reduce((sum, value, i) => sum + value * b[i]![k]!, 0)));
}

export function transpose(matrix: Matrix): Matrix {
  return matrix[0]!.map((_, k) => matrix.map((row) => row[k]!));
}

/** The mean of points, each with its weight. */
export function meanOf(points: readonly Vector[], weights: readonly number[]): Vector {
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return points[0]!.map((_, k) => points.reduce((sum, point, i) => sum + weights[i]! * point[k]!, 0) / whole);
}
