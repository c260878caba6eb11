import { isRecord } from '../json-record.ts';

/** A value that is another one, with its place. `undefined`: there is nothing. */
export interface ValueChange {
  readonly path: readonly (string | number)[];
  readonly before: unknown;
  readonly after: unknown;
}

/** Lines without a sense: the same after half a turn. */
const lineKeys: ReadonlySet<unknown> = new Set(['direction_deg', 'slotAngle_deg']);

function isSameNumber(a: number, b: number, key: unknown, within: number): boolean {
  const isAngle = typeof key === 'string' && key.endsWith('_deg');
  if (!isAngle) return Math.abs(a - b) <= within;
  const period = lineKeys.has(key) ? 180 : 360;
  const off = (((a - b) % period) + period) % period;
  return Math.min(off, period - off) <= within;
}

/**
 * Everything in which two plain values differ, each change as deep as it lies; lists entry by entry.
 *
 * @param within numbers no further apart than this are the same; directions are compared round the circle, those of lines (bars, slots) round half of it
 * @param passedOver keys that are not compared
 */
export function findValueChanges(
  before: unknown,
  after: unknown,
  { within, passedOver = [] }: { readonly within: number; readonly passedOver?: readonly string[] },
): ValueChange[] {
  const skipped = new Set(passedOver);
  const compare = (a: unknown, b: unknown, path: readonly (string | number)[]): ValueChange[] => {
    if (typeof a === 'number' && typeof b === 'number')
      return isSameNumber(a, b, path.at(-1), within) ? [] : [{ path, before: a, after: b }];
    if (Array.isArray(a) && Array.isArray(b)) {
      const longer = a.length > b.length ? a : b;
      return longer.flatMap((_: unknown, i) => compare(a[i], b[i], [...path, i]));
    }
    if (isRecord(a) && isRecord(b)) {
      const keys = [...new Set([...Object.keys(a), ...Object.keys(b)])].filter((key) => !skipped.has(key));
      return keys.flatMap((key) => compare(a[key], b[key], [...path, key]));
    }
    return a === b ? [] : [{ path, before: a, after: b }];
  };
  return compare(before, after, []);
}
