/**
 * JSON in its canonical form (RFC 8785): keys in rising order of their UTF-16 units, no blanks, numbers as ECMAScript writes them. The same
 * content gives the same text, so that a hash of it names a revision.
 *
 * @throws TypeError for a number that JSON cannot say
 * @example { b: 1, a: [true, "x"] } → {"a":[true,"x"],"b":1}
 */
export function writeCanonical(value: unknown): string {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new TypeError(`${value} is not a number of JSON`);
  if (Array.isArray(value)) return `[${value.map(writeCanonical).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).filter(([, entry]) => entry !== undefined);
    entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
    return `{${entries.map(([key, entry]) => `${JSON.stringify(key)}:${writeCanonical(entry)}`).join(',')}}`;
  }
  return JSON.stringify(value);
}
