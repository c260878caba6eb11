import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findPoured, findPouredWithdrawn } from '../../src/records/fold/find-poured.ts';
import { foldPiece } from '../../src/records/fold/fold-piece.ts';
import { tries } from '../long.ts';
import { played } from './interleavings.ts';
import { PlainFold } from './plain-fold.ts';
import { PIECE } from './writing.ts';

test('poured without a clearance that it knew of is never said to be cleared, in any order', () => {
  let bare = 0;
  let good = 0;
  const shuffled = played.chain(({ records }) =>
    fc.tuple(fc.constant(records), fc.shuffledSubarray([...records], { minLength: records.length })),
  );
  fc.assert(
    fc.property(shuffled, ([records, arrived]) => {
      const plain = new PlainFold(records);
      const state = foldPiece(PIECE, arrived);
      const pours = records.filter(({ piece, kind }) => piece === PIECE && kind === 'poured');
      const counted = pours.filter(({ id }) => !plain.isWithdrawn(id));
      const answer = findPoured(state);
      expect(findPouredWithdrawn(state).length).toBe(pours.length - counted.length);
      expect(answer?.poured.length ?? 0).toBe(counted.length);
      if (answer === null) return;
      const isBare = counted.some(({ id }) => {
        const seen = plain.ancestors(id);
        const isGiven = (kind: string) => kind === 'cleared' || kind === 'override';
        const given = records.filter((record) => seen.has(record.id) && isGiven(record.kind));
        return (
          given.every((record) => plain.isWithdrawn(record.id)) ||
          given.every((record) => plain.isWithdrawn(record.id, seen))
        );
      });
      if (isBare) {
        bare += 1;
        expect(['without clearance', 'while held']).toContain(answer.clearance);
      } else good += 1;
    }),
    { numRuns: tries(1500, 500) },
  );
  // Both sides were met; each comes up in about one run of twelve or more, so that chance alone never misses it.
  expect(bare).toBeGreaterThan(5);
  expect(good).toBeGreaterThan(5);
});

test('what comes after a pour never makes it better', () => {
  const order = ['cleared', 'cleared with a condition', 'on an override', 'without clearance', 'while held'];
  fc.assert(
    fc.property(played, ({ records }) => {
      const plain = new PlainFold(records);
      for (const poured of records) {
        if (poured.kind !== 'poured' || poured.piece !== PIECE || plain.isWithdrawn(poured.id)) continue;
        const known = plain.ancestors(poured.id);
        // Other pours of the piece are judged by themselves; here they only carry order.
        const before = records
          .filter(({ id }) => known.has(id))
          .map((other) =>
            other.kind === 'poured' ? { ...other, kind: 'comment' as const, body: { text: 'x' } } : other,
          );
        const then = findPoured(foldPiece(PIECE, [...before, poured]))!;
        const now = findPoured(foldPiece(PIECE, records))!;
        expect(order.indexOf(now.clearance)).toBeGreaterThanOrEqual(order.indexOf(then.clearance));
      }
    }),
    { numRuns: tries(1000, 350) },
  );
});
