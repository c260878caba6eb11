import { nameText } from '../../records/name-text.ts';
import { readRecord, type StoredRecord } from '../../records/record-text.ts';

/** A text that came as a record, and why it is none of this job. */
export interface NoRecord {
  readonly kind: 'aside';
  readonly text: string;
  /** As far as the text has them. */
  readonly id: string | null;
  readonly piece: string | null;
  readonly why: string;
}

export type SortedText = { readonly kind: 'record'; readonly stored: StoredRecord } | NoRecord;

/** Halves of signs: a text that has one is changed wherever it is written as UTF-8. */
const HALF_SIGN = /\p{Surrogate}/u;

/** Tells texts that are records of a job from others. */
export function sortText(job: string, text: string): SortedText {
  const putAside = (why: string): NoRecord => ({ kind: 'aside', text, ...nameText(text), why });
  if (HALF_SIGN.test(text)) return putAside('the text holds half of a sign, so that it cannot be kept byte for byte');
  const read = readRecord(text);
  if (!read.ok) return putAside(read.why);
  const { record } = read.stored;
  if (record.job !== job) return putAside(`the record is of job ${record.job}, and came as one of job ${job}`);
  return { kind: 'record', stored: read.stored };
}
