import { writeCanonical } from '../../job/canonical.ts';
import { hashText } from '../../job/fingerprint.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import { writeRecord } from '../../records/record-text.ts';
import type { PiecePlan } from './piece-plan.ts';
import { recordsOf } from './piece-slots.ts';

/** Questions whose answers a clearance rests on; what comes after it is not among them. */
const RESTS_ON: ReadonlySet<string> = new Set([
  'started',
  'mark',
  'form',
  'sight 1',
  'sight 2',
  'place 1',
  'place 2',
  'decision',
]);

/**
 * SHA-256 of what a clearance of a piece rests on: by which revision, what the yard had to do (check keys), and every record about it that was not
 * taken back. The same on every device that holds the same records.
 * @param fingerprint of the revision
 */
export function hashInputs(fingerprint: string, { keys, formKey }: PiecePlan, { slots }: PieceState): string {
  const counting = recordsOf(...[...slots.values()].filter(({ slot }) => RESTS_ON.has(slot)));
  const byName = (a: readonly [string, string], b: readonly [string, string]) => (a[0] < b[0] ? -1 : 1);
  return hashText(
    writeCanonical({
      revision: fingerprint,
      form: formKey,
      keys: [...keys].sort(byName),
      records: counting.map((record) => [record.id, writeRecord(record).hash] as const).sort(byName),
    }),
  );
}
