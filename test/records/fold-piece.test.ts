import { expect, test } from 'vitest';
import { findSeen } from '../../src/records/fold/find-seen.ts';
import { foldPiece, foldRecords, slotKey } from '../../src/records/fold/fold-piece.ts';
import type { FactRecord } from '../../src/records/record.ts';
import { cleared, correctionOf, held, idOf, measured, meet, PIECE, placed, Tablet } from './writing.ts';

const ITEM = { item: 'k1' };

function latestOf(records: Iterable<FactRecord>, item: string | null, slot: string) {
  return foldPiece(PIECE, records).slots.get(slotKey(item, slot));
}

test('one that has seen another comes after it, though its clock is a day behind', () => {
  const right = new Tablet(1);
  const behind = new Tablet(2, -86_400);
  const first = right.write(measured(100), 0, ITEM);
  meet(right, behind);
  const second = behind.write(measured(104), 60, ITEM);
  expect(second.id < first.id).toBe(true);
  const slot = latestOf([second, first], 'k1', 'place 2');
  expect(slot?.latest).toStrictEqual([second]);
  expect(slot?.earlier).toStrictEqual([first]);
  expect(foldPiece(PIECE, [second, first]).history).toStrictEqual([first, second]);
});

test('two that did not know of each other are both the latest: a conflict where they differ, none where they agree', () => {
  const [one, two] = [new Tablet(1), new Tablet(2)];
  const a = one.write(measured(100), 0, ITEM);
  const b = two.write(measured(104), 0, ITEM);
  expect(latestOf([a, b], 'k1', 'place 2')).toMatchObject({ latest: [a, b], isConflict: true, earlier: [] });
  const c = one.write(placed(true), 1, ITEM);
  const d = two.write(placed(true), 1, ITEM);
  expect(latestOf([a, b, c, d], 'k1', 'sight 2')).toMatchObject({ latest: [c, d], isConflict: false });
});

test('a record that has seen both settles it', () => {
  const [one, two] = [new Tablet(1), new Tablet(2)];
  one.write(measured(100), 0, ITEM);
  two.write(measured(104), 0, ITEM);
  meet(one, two);
  const chosen = two.write({ kind: 'measured', body: { ...measured(104).body, basis: 'chosen' } as never }, 9, ITEM);
  expect(latestOf(two.known.values(), 'k1', 'place 2')).toMatchObject({ latest: [chosen], isConflict: false });
});

test('an insert, a stage and a piece have slots of their own', () => {
  const one = new Tablet(1);
  one.write(measured(100), 0, { item: 'k1' });
  one.write(measured(100), 1, { item: 'k2' });
  one.write(cleared, 2);
  one.write(cleared, 3, { piece: '2'.repeat(24) });
  const state = foldPiece(PIECE, one.known.values());
  expect([...state.slots.keys()]).toStrictEqual(['place 2/k1', 'place 2/k2', 'clearance/']);
  expect([...foldRecords(one.known.values()).keys()]).toStrictEqual([PIECE, '2'.repeat(24)]);
});

test('order is carried by records that were taken out, and by those of other kinds and inserts', () => {
  const one = new Tablet(1);
  const first = one.write(measured(100), 0, ITEM);
  const mistyped = one.write(measured(1000), 1, ITEM);
  const correction = one.write(correctionOf(mistyped.id), 2, ITEM);
  const last = one.write(measured(101), 3, ITEM);
  expect(last.seen).toStrictEqual([correction.id]);
  const state = foldPiece(PIECE, one.known.values());
  expect(state.slots.get('place 2/k1')).toMatchObject({ latest: [last], earlier: [first] });
  expect([...state.withdrawn]).toStrictEqual([[mistyped.id, correction.id]]);
  expect(state.history).toStrictEqual([first, mistyped, correction, last]);
});

test('a slot goes back to what stood before when its last is taken out, and is gone when nothing is left', () => {
  const one = new Tablet(1);
  const first = one.write(held, 0);
  const second = one.write(cleared, 1);
  one.write(correctionOf(second.id), 2);
  expect(latestOf(one.known.values(), null, 'clearance')?.latest).toStrictEqual([first]);
  one.write(correctionOf(first.id), 3);
  expect(latestOf(one.known.values(), null, 'clearance')).toBeUndefined();
});

test('a correction that was corrected takes nothing out', () => {
  const one = new Tablet(1);
  const first = one.write(cleared, 0);
  const wrong = one.write(correctionOf(first.id), 1);
  const right = one.write(correctionOf(wrong.id), 2);
  const state = foldPiece(PIECE, one.known.values());
  expect([...state.withdrawn]).toStrictEqual([[wrong.id, right.id]]);
  expect(state.slots.get('clearance/')?.latest).toStrictEqual([first]);
});

test('of two corrections of one record the first by id is named', () => {
  const [one, two] = [new Tablet(1), new Tablet(2)];
  const first = one.write(cleared, 0);
  meet(one, two);
  const [a, b] = [two.write(correctionOf(first.id), 1), one.write(correctionOf(first.id), 2)];
  expect(foldPiece(PIECE, [b, a, first]).withdrawn.get(first.id)).toBe(a.id);
});

/** As a faulty program might write it. */
function forged(record: FactRecord, id: string, seen: readonly string[], of?: string): FactRecord {
  const body = of === undefined ? record.body : { of, reason: 'x' };
  return { ...record, id, seen, body } as FactRecord;
}

test('corrections of themselves and of each other end, and take nothing out', () => {
  const one = new Tablet(1);
  const base = one.write(correctionOf(idOf(9, 9)), 0);
  const [a, b, c] = [idOf(1, 1), idOf(2, 2), idOf(3, 3)];
  const ring = [forged(base, a, [], b), forged(base, b, [], c), forged(base, c, [], a)];
  expect(foldPiece(PIECE, ring).withdrawn.size).toBe(0);
  expect(foldPiece(PIECE, [forged(base, a, [], a)]).withdrawn.size).toBe(0);
  // One from outside the ring opens it: a is out, so b is not, so c is out.
  const open = [...ring, forged(base, idOf(4, 4), [], a)];
  expect([...foldPiece(PIECE, open).withdrawn.keys()].sort()).toStrictEqual([a, c]);
});

test('records that claim to have seen each other in a ring end in the same state in any order', () => {
  const base = new Tablet(1).write(measured(100), 0, ITEM);
  const ids = [1, 2, 3, 4, 5].map((n) => idOf(n, n)) as [string, string, string, string, string];
  const [a, b, c, d, e] = ids;
  // a → b → c → a is the ring; d has seen it, e has seen d and itself.
  const records = [
    forged(base, a, [b]),
    forged(base, b, [c]),
    forged(base, c, [a]),
    forged(base, d, [c]),
    forged(base, e, [d, e]),
  ];
  const state = foldPiece(PIECE, records);
  // The ring is broken at its first: a has seen nothing, so that nobody has seen b.
  expect(state.slots.get('place 2/k1')?.latest.map(({ id }) => id)).toStrictEqual([b, e]);
  expect(state.history.map(({ id }) => id)).toStrictEqual([a, c, b, d, e]);
  expect(foldPiece(PIECE, [...records].reverse())).toStrictEqual(state);
});

test('two texts under one id: the first by its canonical text, whichever came first', () => {
  const one = new Tablet(1).write(measured(100), 0, ITEM);
  const other = { ...one, body: measured(104).body } as FactRecord;
  expect(foldRecords([other, one])).toStrictEqual(foldRecords([one, other]));
  expect(latestOf([other, one], 'k1', 'place 2')?.latest).toStrictEqual([one]);
});

test('photos, comments, dockets, results and lots stand beside each other', () => {
  const one = new Tablet(1);
  const a = one.write({ kind: 'comment', body: { text: 'wet' } }, 0);
  const b = one.write({ kind: 'comment', body: { text: 'cold' } }, 1, ITEM);
  const c = one.write({ kind: 'docket', body: { number: '17', mix: null, at: null } }, 2);
  const d = one.write(correctionOf(a.id), 3);
  const state = foldPiece(PIECE, [d, c, b, a]);
  expect([...state.beside]).toStrictEqual([
    ['comment', [b]],
    ['docket', [c]],
  ]);
  expect(state.slots.size).toBe(0);
});

test('one that decides about the piece has seen what was known of each insert; one about an insert only of that one', () => {
  const one = new Tablet(1);
  const a = one.write(measured(100), 0, { item: 'k1' });
  const b = one.write(measured(100), 1, { item: 'k2' });
  const clearance = one.write(cleared, 2);
  expect(clearance.seen).toStrictEqual([a.id, b.id]);
  expect(one.write(measured(101), 3, { item: 'k1' }).seen).toStrictEqual([a.id]);
  expect(one.write({ kind: 'comment', body: { text: 'wet' } }, 4).seen).toStrictEqual([clearance.id]);
  const decided = one.write(held, 5);
  expect(decided.seen).toHaveLength(2);
});

test('a correction and a decision have seen what they name', () => {
  const state = foldPiece(PIECE, []);
  const [a, b] = [idOf(1, 1), idOf(2, 2)];
  expect(findSeen(state, { item: null, ...correctionOf(a) })).toStrictEqual([a]);
  const computed = { state: 'works', ratio: 0.5, engine: '1' } as const;
  const body = { about: [b, a], verdict: 'accepted', role: 'qa', registration: null, reason: 'ok', computed } as const;
  expect(findSeen(state, { item: 'k1', kind: 'decision', body })).toStrictEqual([a, b]);
});
