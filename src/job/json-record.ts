/** An object as JSON gives it. */
export type JsonRecord = Readonly<Record<string, unknown>>;

/** Whether a value is a JSON object (not a list, not null). */
export function isRecord(value: unknown): value is JsonRecord {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
