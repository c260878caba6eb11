/** A pivot below this share of its diagonal term is lifted to it: the step is then short in that direction, not wild. */
const LEAST_PIVOT = 1e-13;

/**
 * Takes a symmetric 4×4 matrix apart, M = L D Lᵀ, in its own place; pivots that are not positive are lifted.
 * @param m upper triangle m00, m01, m02, m03, m11, m12, m13, m22, m23, m33; afterwards 1/D on the diagonal and L beside it
 */
export function factorFour(m: Float64Array): void {
  const i0 = 1 / lift(m[0], m[0]);
  const l1 = m[1] * i0;
  const l2 = m[2] * i0;
  const l3 = m[3] * i0;
  const i1 = 1 / lift(m[4] - l1 * m[1], m[4]);
  const v2 = m[5] - l1 * m[2];
  const v3 = m[6] - l1 * m[3];
  const l12 = v2 * i1;
  const l13 = v3 * i1;
  const i2 = 1 / lift(m[7] - l2 * m[2] - l12 * v2, m[7]);
  const u3 = m[8] - l2 * m[3] - l12 * v3;
  const l23 = u3 * i2;
  const i3 = 1 / lift(m[9] - l3 * m[3] - l13 * v3 - l23 * u3, m[9]);
  m[0] = i0;
  m[1] = l1;
  m[2] = l2;
  m[3] = l3;
  m[4] = i1;
  m[5] = l12;
  m[6] = l13;
  m[7] = i2;
  m[8] = l23;
  m[9] = i3;
}

function lift(pivot: number, diagonal: number): number {
  const least = LEAST_PIVOT * Math.abs(diagonal) + Number.MIN_VALUE * 1e16;
  return Math.max(pivot, least);
}

/**
 * Solves M d = r with what `factorFour` left.
 * @param d receives the solution
 */
export function solveFour(m: Float64Array, r: Float64Array, d: Float64Array): void {
  const y0 = r[0];
  const y1 = r[1] - m[1] * y0;
  const y2 = r[2] - m[2] * y0 - m[5] * y1;
  const y3 = r[3] - m[3] * y0 - m[6] * y1 - m[8] * y2;
  const d3 = y3 * m[9];
  const d2 = y2 * m[7] - m[8] * d3;
  const d1 = y1 * m[4] - m[5] * d2 - m[6] * d3;
  d[0] = y0 * m[0] - m[1] * d1 - m[2] * d2 - m[3] * d3;
  d[1] = d1;
  d[2] = d2;
  d[3] = d3;
}

/**
 * Adds a weight times the square of a vector of four to a matrix that is stored as the others here.
 * @param at where the vector begins in `vectors`
 */
export function addSquareFour(matrix: Float64Array, weight: number, vectors: Float64Array, at: number): void {
  const v0 = vectors[at];
  const v1 = vectors[at + 1];
  const v2 = vectors[at + 2];
  const v3 = vectors[at + 3];
  matrix[0] += weight * v0 * v0;
  matrix[1] += weight * v0 * v1;
  matrix[2] += weight * v0 * v2;
  matrix[3] += weight * v0 * v3;
  matrix[4] += weight * v1 * v1;
  matrix[5] += weight * v1 * v2;
  matrix[6] += weight * v1 * v3;
  matrix[7] += weight * v2 * v2;
  matrix[8] += weight * v2 * v3;
  matrix[9] += weight * v3 * v3;
}
