import { expect, it } from 'vitest';
import { findOverTorque, listShort, pickBolts, STATED_RANGE } from '../../../src/web/pieces/bolt-up/tightened.ts';
import { AsCastSample } from '../../assess/bolt-up/bolt-up-sample.ts';
import { demoFile, pieceOf } from '../../assess/yard/yard-sample.ts';

const card = new AsCastSample(pieceOf(demoFile(), 'P13', '1')).card('C45');

it('writes a connection down as its card says, with other packers by their own lengths', () => {
  const picked = pickBolts(card, STATED_RANGE)!;
  expect(picked.map(({ length_mm, packers_mm, turns }) => [length_mm, packers_mm, turns])).toEqual([
    [45, 0, null],
    [45, 0, null],
  ]);
  expect(picked.map(({ item }) => item)).toEqual(card.bolts.map(({ insert }) => insert.item.castIn.key));
  expect(pickBolts(card, 2)!.map(({ length_mm, packers_mm }) => [length_mm, packers_mm])).toEqual([
    [65, 20],
    [65, 20],
  ]);
});

it('names no bolts where one has no length, or there is no such range', () => {
  expect(pickBolts(card, 3)).toBeNull();
  const [first, ...rest] = card.bolts;
  const lengths = first!.lengths.map((row) => ({ ...row, choice: null, why: 'none' }));
  expect(pickBolts({ bolts: [{ ...first!, lengths }, ...rest] }, STATED_RANGE)).toBeNull();
  expect(pickBolts({ bolts: [] }, STATED_RANGE)).toBeNull();
});

it('stops at a bolt with fewer turns by hand than it must have, and at none that nobody counted', () => {
  const [a, b] = pickBolts(card, STATED_RANGE)!;
  expect(listShort(card, [a!, b!])).toEqual([]);
  // M16 needs 8 turns for one diameter.
  const short = listShort(card, [
    { ...a!, turns: 7 },
    { ...b!, turns: 8 },
  ]);
  expect(short.map(({ bolt, turns }) => [bolt.insert.item.number, turns])).toEqual([
    [card.bolts[0]!.insert.item.number, 7],
  ]);
});

it('knows a torque above the most, in N m', () => {
  const most = { ...card.tightening.limits[0]!, torque: 80_000 };
  const limited = { tightening: { ...card.tightening, most } };
  expect(findOverTorque(limited, 80)).toBeNull();
  expect(findOverTorque(limited, 81)).toBe(80);
  expect(findOverTorque({ tightening: { ...card.tightening, most: null } }, 500)).toBeNull();
});
