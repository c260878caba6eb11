import { expect, it } from 'vitest';
import { listTightenedGaps } from '../../../src/assess/bolt-up/tightened-gaps.ts';
import type { BodyOf, RecordOf } from '../../../src/records/record.ts';
import { demoFile, pieceOf } from '../yard/yard-sample.ts';
import { AsCastSample } from './bolt-up-sample.ts';

const cast = new AsCastSample(pieceOf(demoFile(), 'P13', '1'));
const card = cast.card('C45');
const picked = card.bolts.map(({ insert, lengths }) => ({
  item: insert.item.castIn.key,
  length_mm: lengths[0]!.choice!.length,
  turns: 9,
  packers_mm: 0,
}));

function gapsOf(change: Partial<BodyOf<'tightened'>>) {
  const body: BodyOf<'tightened'> = {
    connection: card.connection.key,
    connectionMark: 'C45',
    how: 'torque wrench',
    torque_Nm: 20,
    tool: { name: null, serial: 'W 1', calibratedUntil: '2026-12-14' },
    bolts: picked,
    lubricated: true,
    note: null,
    ...change,
  };
  // Written on 14 December 2026.
  return listTightenedGaps(
    card,
    cast.tablet.write('setter', null, { kind: 'tightened', body }) as RecordOf<'tightened'>,
  );
}

it('names a wrench without a number or beyond its calibration, to the day', () => {
  expect(gapsOf({})).toEqual([]);
  expect(gapsOf({ tool: { name: null, serial: null, calibratedUntil: '2026-12-13' } })).toEqual([
    'no number of the wrench is recorded',
    'the wrench was calibrated until 2026-12-13 only, and used on 2026-12-14',
  ]);
  expect(gapsOf({ how: 'snug', torque_Nm: null, tool: null })).toEqual([]);
});

it('names a bolt of another length than was picked for the packers that were under the plate', () => {
  const [first, ...rest] = picked;
  const number = card.bolts[0]!.insert.item.number;
  expect(gapsOf({ bolts: [{ ...first!, length_mm: 55 }, ...rest] })).toEqual([
    `insert ${number}: a bolt of 55 mm went in, 45 mm was picked`,
  ]);
  // For packers of 10 the card picks 55.
  expect(gapsOf({ bolts: [{ ...first!, length_mm: 55, packers_mm: 10 }, ...rest] })).toEqual([]);
});
