import { writeCanonical } from '../job/canonical.ts';
import { hashText } from '../job/fingerprint.ts';
import { type FactRecord, factRecord } from './record.ts';

/** A record with the text that is stored, sent and hashed: what was once written is never written anew. */
export interface StoredRecord {
  readonly record: FactRecord;
  readonly text: string;
  /** SHA-256 of the text. */
  readonly hash: string;
}

/** Longer texts are no records [characters]. */
export const LONGEST_TEXT = 65_536;

/** What reading a text came to; `why` says where and what was expected. */
export type RecordReading =
  | { readonly ok: true; readonly stored: StoredRecord }
  | { readonly ok: false; readonly why: string };

/** Writes a record down (RFC 8785) and hashes it. */
export function writeRecord(record: FactRecord): StoredRecord {
  const text = writeCanonical(record);
  return { record, text, hash: hashText(text) };
}

/** Reads the text of a record. Its hash is that of the text as it came. */
export function readRecord(text: string): RecordReading {
  if (text.length > LONGEST_TEXT)
    return { ok: false, why: `the text has ${text.length} characters, expected at most ${LONGEST_TEXT}` };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return { ok: false, why: `no JSON: ${error instanceof Error ? error.message : error}` };
  }
  const read = factRecord.safeParse(value);
  if (read.success) return { ok: true, stored: { record: read.data, text, hash: hashText(text) } };
  const [issue] = read.error.issues;
  return {
    ok: false,
    why: issue === undefined ? 'no record' : `${issue.path.join('.') || 'record'}: ${issue.message}`,
  };
}
