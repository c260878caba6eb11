import { type FactRecord, factRecord, type RecordDraft } from './record.ts';
import type { StoredRecord } from './record-text.ts';

/** What a device adds to a draft. */
export interface WritingContext {
  /** A new UUID of version 7. */
  readonly id: string;
  /** As `findSeen` gives it. */
  readonly seen: readonly string[];
  /** Now, by the device's clock: ISO 8601 in UTC. */
  readonly now: string;
  readonly clock_s: number | null;
  readonly person: string;
  readonly device: string;
  /** Version of the program. */
  readonly app: string;
  /** The last record of this device; null: none yet. */
  readonly previous: ChainLink | null;
}

/** What the next record needs to know of the one before it. */
export interface ChainLink {
  readonly number: number;
  /** SHA-256 of its text. */
  readonly hash: string;
}

/** Where a device's chain stands after a record. */
export function linkOf({ record, hash }: Pick<StoredRecord, 'record' | 'hash'>): ChainLink {
  return { number: record.chain.number, hash };
}

/** The place of the next record in the chain of its device. */
function nextLink(previous: ChainLink | null): FactRecord['chain'] {
  return previous === null ? { number: 1, previous: null } : { number: previous.number + 1, previous: previous.hash };
}

/**
 * A record of a draft.
 * @throws TypeError where it is no sound record: which field, and what was expected. Nothing may be written down then.
 */
export function makeRecord(draft: RecordDraft, context: WritingContext): FactRecord {
  const { id, seen, now, clock_s, person, device, app, previous } = context;
  const read = factRecord.safeParse({
    v: 1,
    id,
    job: draft.job,
    piece: draft.piece,
    item: draft.item,
    seen,
    revision: draft.revision,
    checkKey: draft.checkKey,
    measuredAt: draft.measuredAt ?? now,
    typedAt: now,
    clock_s,
    person,
    measuredBy: draft.measuredBy,
    device,
    app,
    chain: nextLink(previous),
    kind: draft.kind,
    body: draft.body,
  });
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  throw new TypeError(`${draft.kind}: ${issue?.path.join('.') || 'record'}: ${issue?.message ?? 'no record'}`);
}
