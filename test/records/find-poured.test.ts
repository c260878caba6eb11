import { expect, test } from 'vitest';
import { findPoured, findPouredWithdrawn } from '../../src/records/fold/find-poured.ts';
import { foldPiece } from '../../src/records/fold/fold-piece.ts';
import type { FactRecord, KindAndBody } from '../../src/records/record.ts';
import { cleared, clearedIf, correctionOf, held, meet, override, PIECE, poured, Tablet } from './writing.ts';

function pouredAfter(...before: readonly KindAndBody[]) {
  const one = new Tablet(1);
  for (const [second, draft] of before.entries()) one.write(draft, second);
  one.write(poured, 99);
  return findPoured(foldPiece(PIECE, one.known.values()));
}

test.each([
  [[cleared], 'cleared'],
  [[clearedIf], 'cleared with a condition'],
  [[override], 'on an override'],
  [[], 'without clearance'],
  [[held], 'while held'],
  [[held, cleared], 'cleared'],
  [[cleared, held], 'while held'],
  [[held, override], 'on an override'],
] as const)('poured after %j', (before, clearance) => {
  expect(pouredAfter(...before)).toMatchObject({ clearance, tooLate: null });
});

test('not poured', () => {
  const one = new Tablet(1);
  one.write(cleared, 0);
  expect(findPoured(foldPiece(PIECE, one.known.values()))).toBeNull();
});

test('of two clearances that did not know of each other the worse counts for the pour that saw both', () => {
  const [one, two] = [new Tablet(1), new Tablet(2)];
  one.write(cleared, 0);
  two.write(held, 0);
  meet(one, two);
  one.write(poured, 1);
  expect(findPoured(foldPiece(PIECE, one.known.values()))?.clearance).toBe('while held');
});

test('a clearance on another tablet that the pour did not know of makes nothing good', () => {
  const [one, two] = [new Tablet(1), new Tablet(2)];
  two.write(cleared, 0);
  const pour = one.write(poured, 10);
  meet(one, two);
  expect(findPoured(foldPiece(PIECE, one.known.values()))).toStrictEqual({
    poured: [pour],
    clearance: 'without clearance',
    tooLate: 'unknown to it',
  });
});

test('a clearance given after the pour is late', () => {
  const one = new Tablet(1);
  one.write(poured, 0);
  one.write(cleared, 1);
  expect(findPoured(foldPiece(PIECE, one.known.values()))).toMatchObject({
    clearance: 'without clearance',
    tooLate: 'late',
  });
  // Poured again on paper: the first still stands.
  one.write(poured, 2);
  expect(findPoured(foldPiece(PIECE, one.known.values()))).toMatchObject({ clearance: 'without clearance' });
});

test('a hold that the pour knew of is not taken away by withdrawing it afterwards; a clearance that was a mistake is none', () => {
  const one = new Tablet(1);
  one.write(cleared, 0);
  const hold = one.write(held, 1);
  one.write(poured, 2);
  one.write(correctionOf(hold.id), 3);
  expect(findPoured(foldPiece(PIECE, one.known.values()))?.clearance).toBe('while held');

  const two = new Tablet(2);
  const mistake = two.write(cleared, 0);
  two.write(poured, 1);
  two.write(correctionOf(mistake.id), 2);
  expect(findPoured(foldPiece(PIECE, two.known.values()))?.clearance).toBe('without clearance');
});

test('a hold withdrawn before the pour is no hold', () => {
  const one = new Tablet(1);
  one.write(cleared, 0);
  const hold = one.write(held, 1);
  one.write(correctionOf(hold.id), 2);
  one.write(poured, 3);
  expect(findPoured(foldPiece(PIECE, one.known.values()))?.clearance).toBe('cleared');
});

test('a pour that was taken out is still found', () => {
  const one = new Tablet(1);
  const pour = one.write(poured, 0);
  one.write(correctionOf(pour.id), 1);
  const state = foldPiece(PIECE, one.known.values());
  expect(findPoured(state)).toBeNull();
  expect(findPouredWithdrawn(state)).toStrictEqual([pour]);
});

test('a pour and a clearance that claim to have seen each other: the ring is broken at the first by id, for what was seen through it too', () => {
  const one = new Tablet(1);
  const pour = one.write(poured, 0);
  const given = one.write(cleared, 1);
  const ring = [{ ...pour, seen: [given.id] } as FactRecord, given];
  expect(findPoured(foldPiece(PIECE, ring))).toMatchObject({ clearance: 'without clearance', tooLate: 'late' });
});
