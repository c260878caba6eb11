import type { FactRecord } from '../../records/record.ts';
import type { KeptRecord, RecordDatabase } from './record-db.ts';

/** The record of a kept text. It was read with its schema before it was put there, so that it is not again each time a piece is folded. */
export function parseKept({ text }: Pick<KeptRecord, 'text'>): FactRecord {
  return JSON.parse(text) as FactRecord;
}

/** All records of a piece on this device. */
export async function readPieceRecords(db: RecordDatabase, piece: string): Promise<readonly FactRecord[]> {
  return (await db.getAllFromIndex('records', 'piece', piece)).map(parseKept);
}

/** Every piece that a record of the job names, in the order of their ids. */
export async function listPieces(db: RecordDatabase, job: string): Promise<readonly string[]> {
  return db.getAllKeysFromIndex('pieces', 'job', job);
}
