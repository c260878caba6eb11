/** Eigenvalues of a symmetric matrix, largest first, each with its unit eigenvector. */
export type EigenPairs = readonly { readonly value: number; readonly vector: readonly number[] }[];

const SWEEPS = 60;
/** Off-diagonal terms below this share of the matrix are rounding. */
const ROUNDING = 1e-17;

/**
 * All eigenpairs of a symmetric matrix of any size by cyclic Jacobi rotations: meant for a few rows.
 *
 * Source: textbooks (Golub and Van Loan, Matrix Computations, 8.5).
 * @param rows the matrix; only symmetric ones are understood
 */
export function findSymmetricEigenPairs(rows: readonly (readonly number[])[]): EigenPairs {
  const size = rows.length;
  const m = rows.map((row) => [...row]);
  const v = rows.map((_, i) => rows.map((__, j) => (i === j ? 1 : 0)));
  const whole = m.reduce((sum, row) => row.reduce((part, value) => part + Math.abs(value), sum), 0);
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let off = 0;
    for (let p = 0; p < size; p += 1)
      for (let q = p + 1; q < size; q += 1) {
        off += Math.abs(m[p]![q]!);
        rotate(m, v, p, q);
      }
    if (off <= ROUNDING * whole) break;
  }
  return m.map((row, k) => ({ value: row[k]!, vector: v.map((line) => line[k]!) })).sort((a, b) => b.value - a.value);
}

/** One rotation in the plane p, q that makes m[p][q] vanish. */
function rotate(m: number[][], v: number[][], p: number, q: number): void {
  const off = m[p]![q]!;
  if (off === 0) return;
  const theta = (m[q]![q]! - m[p]![p]!) / (2 * off);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const cos = 1 / Math.hypot(t, 1);
  const sin = t * cos;
  for (const row of m) turnPair(row, p, q, cos, sin);
  const [rowP, rowQ] = [m[p]!, m[q]!];
  for (let k = 0; k < m.length; k += 1) {
    const [mp, mq] = [rowP[k]!, rowQ[k]!];
    rowP[k] = cos * mp - sin * mq;
    rowQ[k] = sin * mp + cos * mq;
  }
  rowP[q] = 0;
  rowQ[p] = 0;
  for (const row of v) turnPair(row, p, q, cos, sin);
}

function turnPair(row: number[], p: number, q: number, cos: number, sin: number): void {
  const [vp, vq] = [row[p]!, row[q]!];
  row[p] = cos * vp - sin * vq;
  row[q] = sin * vp + cos * vq;
}
