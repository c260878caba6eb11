import type { PreparedAnchorage } from './prepared.ts';
import type { Verdict } from './result.ts';
import { isAtMost } from './rounding.ts';

/** True when a load ratio is within the resistance; exactly 1 passes, NaN never does. */
export function isWithin(ratio: number): boolean {
  return isAtMost(ratio, 1);
}

/**
 * The one decision. A ratio above 1 fails; else anything uncovered means "not covered"; else it passes.
 * @param ratio largest load ratio; null where no action was given
 * @param isCovered false where any rule in use is outside the document's range or not covered
 * @returns the verdict; null where nothing was asked (no action) and nothing is out of scope
 */
export function decideVerdict(ratio: number | null, isCovered: boolean): Verdict | null {
  if (ratio !== null && !isWithin(ratio)) return 'fail';
  if (!isCovered) return 'not covered';
  return ratio === null ? null : 'pass';
}

/** Design resistance by the safety factor of a row; the same arithmetic as the edition's own rule, without a call to it. */
export function findDesign(
  { safetyDivides }: Pick<PreparedAnchorage, 'safetyDivides'>,
  characteristic: number,
  safety: number,
): number {
  return safetyDivides ? characteristic / safety : safety * characteristic;
}

/** action / design, with zero over zero as 0 and a load on nothing as Infinity. */
export function loadRatio(action: number, design: number): number {
  if (action <= 0) return 0;
  return design > 0 ? action / design : Number.POSITIVE_INFINITY;
}
