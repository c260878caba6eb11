import fc from 'fast-check';
import { expect, test } from 'vitest';
import { foldPiece, foldRecords } from '../../src/records/fold/fold-piece.ts';
import { decidesPiece, slotOf } from '../../src/records/slots.ts';
import { tries } from '../long.ts';
import { played } from './interleavings.ts';
import { PlainFold } from './plain-fold.ts';
import { meet, PIECE } from './writing.ts';

const RUNS = { numRuns: tries(700, 150) };

test('any order, twice or more, gives the same state', () => {
  const shuffled = played.chain(({ records }) =>
    fc.record({
      records: fc.constant(records),
      again: fc
        .tuple(fc.shuffledSubarray([...records], { minLength: records.length }), fc.shuffledSubarray([...records]))
        .map(([all, twice]) => [...all, ...twice.map((record) => structuredClone(record))]),
    }),
  );
  fc.assert(
    fc.property(shuffled, ({ records, again }) => {
      expect([...foldRecords(again)]).toStrictEqual([...foldRecords(records)]);
    }),
    { numRuns: tries(2000, 300) },
  );
});

test('tablets that have all met say the same, whoever met whom first, and so does each piece by itself', () => {
  fc.assert(
    fc.property(played, fc.nat(3), ({ tablets, records }, first) => {
      const turned = [...tablets.slice(first), ...tablets.slice(0, first)];
      for (const tablet of turned) for (const other of turned) meet(tablet, other);
      for (const tablet of turned) meet(turned[0]!, tablet);
      const all = foldRecords(records);
      for (const { known } of turned) expect([...foldRecords(known.values())]).toStrictEqual([...all]);
      for (const [piece, state] of all) expect(foldPiece(piece, records)).toStrictEqual(state);
    }),
    RUNS,
  );
});

test('late ones: a state after each batch is that of the records that are there', () => {
  fc.assert(
    fc.property(played, fc.infiniteStream(fc.nat(3)), ({ records }, batches) => {
      const there: (typeof records)[number][] = [];
      const rest = records.map((record) => ({ record, batch: batches.next().value as number }));
      for (const batch of [2, 0, 3, 1]) {
        there.push(...rest.filter((each) => each.batch === batch).map(({ record }) => record));
        const plain = new PlainFold(there);
        for (const slot of foldPiece(PIECE, there).slots.values())
          expect(slot.latest.map(({ id }) => id)).toStrictEqual(plain.latest(slot.latest[0]!));
      }
      expect([...foldRecords(there)]).toStrictEqual([...foldRecords(records)]);
    }),
    RUNS,
  );
});

test('the quick fold is the plain one', () => {
  fc.assert(
    fc.property(played, ({ records }) => {
      const plain = new PlainFold(records);
      for (const [piece, state] of foldRecords(records)) {
        const own = records.filter((record) => record.piece === piece);
        expect(state.history.map(({ id }) => id).sort()).toStrictEqual(own.map(({ id }) => id).sort());
        expect([...state.withdrawn.keys()].sort()).toStrictEqual(
          own
            .map(({ id }) => id)
            .filter((id) => plain.isWithdrawn(id))
            .sort(),
        );
        for (const slot of state.slots.values()) {
          expect(slot.latest.map(({ id }) => id)).toStrictEqual(plain.latest(slot.latest[0]!));
          const texts = new Set(slot.latest.map(({ kind, body }) => JSON.stringify([kind, body])));
          expect(slot.isConflict).toBe(texts.size > 1);
          const others = own.filter(
            (record) => record.item === slot.item && slotOf(record) === slot.slot && !state.withdrawn.has(record.id),
          );
          expect(slot.latest.length + slot.earlier.length).toBe(others.length);
        }
        for (const item of new Set(own.map((record) => record.item)))
          expect(state.heads.get(item ?? '')).toStrictEqual(plain.heads(piece, item));
      }
    }),
    RUNS,
  );
});

test('the history comes after what it has seen, and by id where nothing orders it', () => {
  fc.assert(
    fc.property(played, ({ records }) => {
      const { history } = foldPiece(PIECE, records);
      const done = new Set<string>();
      const ids = new Set(history.map(({ id }) => id));
      const isReady = (record: (typeof history)[number]) => record.seen.every((id) => done.has(id) || !ids.has(id));
      for (const record of history) {
        const ready = history.filter((other) => !done.has(other.id) && isReady(other)).map(({ id }) => id);
        expect(record.id).toBe(ready.sort()[0]);
        done.add(record.id);
      }
    }),
    RUNS,
  );
});

test('what a record has seen is what its writer knew: of the piece where it decides about it, else of its insert', () => {
  fc.assert(
    fc.property(played, ({ tablets, records }) => {
      const plain = new PlainFold(records);
      const byId = new Map(records.map((record) => [record.id, record]));
      for (const { knewThen } of tablets) {
        for (const [id, knew] of knewThen) {
          const record = byId.get(id)!;
          const ancestors = plain.ancestors(id);
          for (const other of ancestors) expect(knew.has(other)).toBe(true);
          for (const other of knew)
            if (decidesPiece(record) || byId.get(other)!.item === record.item) expect(ancestors.has(other)).toBe(true);
        }
      }
    }),
    RUNS,
  );
});
