import { expect, test } from 'vitest';
import { foldPiece, foldRecords } from '../../src/records/fold/fold-piece.ts';
import type { FactRecord } from '../../src/records/record.ts';
import { idOf, measured, PIECE, Tablet } from './writing.ts';

/** Records of one piece, 20 inserts in turn, each having seen the one before of its insert. */
function manyOf(piece: string, count: number, inserts = 20): FactRecord[] {
  const base = new Tablet(1).write(measured(100), 0, { item: 'k0', piece });
  const chance = Number.parseInt(piece.slice(-6), 16);
  const ids = Array.from({ length: count }, (_, n) => idOf(n, chance));
  return ids.map((id, n): FactRecord => {
    const before = ids[n - inserts];
    return { ...base, id, item: `k${n % inserts}`, seen: before === undefined ? [] : [before] };
  });
}

/** The fastest of some runs [ms]: other tests run beside. Ends as soon as one is fast enough. */
function fastest(limit: number, run: () => void): number {
  let best = Number.POSITIVE_INFINITY;
  for (let runs = 0; runs < 8 && best >= limit; runs += 1) {
    const start = performance.now();
    run();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

test('a chain of 50,000 records in one piece ends, and not by the square of it', () => {
  const chain = manyOf(PIECE, 50_000, 1);
  const state = foldPiece(PIECE, [...chain].reverse());
  expect(state.slots.get('place 2/k0')?.latest).toHaveLength(1);
  // The square of it would be a thousand million steps.
  expect(fastest(2000, () => foldPiece(PIECE, chain))).toBeLessThan(2000);
});

test('wrong clocks do not make it slow: 50,000 records whose ids run backwards', () => {
  const chain = manyOf(PIECE, 50_000, 1);
  const ids = chain.map(({ id }) => id).reverse();
  const turned = chain.map((record, n) => ({ ...record, id: ids[n]!, seen: n === 0 ? [] : [ids[n - 1]!] }));
  expect(fastest(2000, () => foldPiece(PIECE, turned))).toBeLessThan(2000);
  const { history } = foldPiece(PIECE, turned);
  expect(history.map(({ id }) => id)).toStrictEqual(ids);
});

test('100,000 records are folded in less than a second, a pour of 8 pieces in milliseconds', () => {
  const pieces = Array.from({ length: 667 }, (_, n) => n.toString(16).padStart(24, '0'));
  const all = pieces.flatMap((piece) => manyOf(piece, 150));
  expect(all.length).toBeGreaterThan(100_000);
  const every = fastest(1000, () => foldRecords(all));
  const pour = fastest(2, () => foldRecords(all.slice(0, 8 * 150)));
  process.stdout.write(`fold: 100,050 records ${every.toFixed(0)} ms, 1,200 of a pour ${pour.toFixed(1)} ms\n`);
  expect(every).toBeLessThan(1000);
  expect(pour).toBeLessThan(40);
});
