/** The answer of a weighted least-squares adjustment. */
export interface Adjustment {
  /** The unknowns, in the order of the columns. */
  readonly unknowns: readonly number[];
  /** Covariance of the unknowns from the standard deviations as given. */
  readonly covariance: readonly (readonly number[])[];
  /** Observed less adjusted, in the order of the rows. */
  readonly residuals: readonly number[];
  /** Covariance of the residuals, a row an observation. */
  readonly residualCovariance: readonly (readonly number[])[];
}

/** A pivot below this share of its diagonal term is what rounding left of zero. */
const ROUNDING = 1e-12;

/**
 * Adjusts linear observations: the unknowns x that make Σ((observed − A x)/σ)² least.
 *
 * Source: textbooks on adjustment: N = Aᵀ P A, x = N⁻¹ Aᵀ P l, Q_x = N⁻¹, Q_v = P⁻¹ − A N⁻¹ Aᵀ with P = diag(1/σ²). Meant for a few dozen
 * unknowns; columns are scaled, so that their units do not matter.
 *
 * @param rows the coefficients A, a row an observation
 * @param observed l, one an observation
 * @param deviations standard deviations σ, each above 0
 * @returns null where the observations leave some combination of the unknowns open
 */
export function adjust(
  rows: readonly (readonly number[])[],
  observed: readonly number[],
  deviations: readonly number[],
): Adjustment | null {
  const count = rows[0]?.length ?? 0;
  const weighted = rows.map((row, i) => row.map((coefficient) => coefficient / deviations[i]!));
  const scales = Array.from({ length: count }, (_, k) => Math.hypot(...weighted.map((row) => row[k]!)));
  if (scales.some((scale) => scale === 0)) return null;
  const scaled = weighted.map((row) => row.map((value, k) => value / scales[k]!));
  const inverse = invertNormal(scaled, count);
  if (inverse === null) return null;

  const right = scales.map((_, k) =>
    scaled.reduce((sum, row, i) => sum + (row[k]! * observed[i]!) / deviations[i]!, 0),
  );
  const unknowns = inverse.map((row, k) => dot(row, right) / scales[k]!);
  const covariance = inverse.map((row, j) => row.map((value, k) => value / (scales[j]! * scales[k]!)));
  // A N⁻¹ Aᵀ, an observation a row, in units of the deviations.
  const spread = scaled.map((row) => inverse.map((column) => dot(column, row)));
  return {
    unknowns,
    covariance,
    residuals: rows.map((row, i) => observed[i]! - dot(row, unknowns)),
    residualCovariance: rows.map((_, i) =>
      rows.map((__, j) => ((i === j ? 1 : 0) - dot(spread[i]!, scaled[j]!)) * deviations[i]! * deviations[j]!),
    ),
  };
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}

/** (Aᵀ A)⁻¹ by Cholesky for columns of length 1; null where they do not stand on their own. */
function invertNormal(rows: readonly (readonly number[])[], count: number): number[][] | null {
  const lower: number[][] = [];
  for (let i = 0; i < count; i += 1) {
    const line: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      let rest = rows.reduce((sum, row) => sum + row[i]! * row[j]!, 0);
      for (let k = 0; k < j; k += 1) rest -= line[k]! * (j === i ? line[k]! : lower[j]![k]!);
      if (j < i) line.push(rest / lower[j]![j]!);
      else if (rest > ROUNDING) line.push(Math.sqrt(rest));
      else return null;
    }
    lower.push(line);
  }
  const columns = Array.from({ length: count }, (_, k) => solveCholesky(lower, k));
  // The inverse is symmetric, so its columns are its rows.
  return columns;
}

/** Column k of the inverse of L Lᵀ. */
function solveCholesky(lower: readonly (readonly number[])[], k: number): number[] {
  const count = lower.length;
  const forward: number[] = [];
  for (let i = 0; i < count; i += 1) {
    let rest = i === k ? 1 : 0;
    for (let j = 0; j < i; j += 1) rest -= lower[i]![j]! * forward[j]!;
    forward.push(rest / lower[i]![i]!);
  }
  const column = new Array<number>(count).fill(0);
  for (let i = count - 1; i >= 0; i -= 1) {
    let rest = forward[i]!;
    for (let j = i + 1; j < count; j += 1) rest -= lower[j]![i]! * column[j]!;
    column[i] = rest / lower[i]![i]!;
  }
  return column;
}
