/** Two numbers closer than this, relative, are one: rounding of turned or drawn coordinates must not decide. */
const ROUNDING = 1e-9;

/** Whether a number is at most a limit, or above it only by rounding; NaN never is. */
export function isAtMost(value: number, limit: number): boolean {
  return value <= limit * (1 + ROUNDING);
}

/** What still counts as below a limit: equal but for rounding does not. */
export function justBelow(limit: number): number {
  return limit * (1 - ROUNDING);
}
