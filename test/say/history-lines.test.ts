import { expect, it } from 'vitest';
import { foldPiece } from '../../src/records/fold/fold-piece.ts';
import { type FactRecord, factRecord, type KindAndBody } from '../../src/records/record.ts';
import { listHistory, tellClock, tellPrintedAct } from '../../src/say/history-lines.ts';
import { writerOf } from '../../src/say/quantities.ts';

const PIECE = 'b'.repeat(24);
const idOf = (k: number) => `01900000-0000-7000-8000-${String(k).padStart(12, '0')}`;
const look: KindAndBody = { kind: 'placed', body: { stage: 1, type: true, face: true, firm: true, note: null } };

function record(k: number, said: KindAndBody, over: Partial<FactRecord>): FactRecord {
  return factRecord.parse({
    v: 1,
    id: idOf(k),
    job: 'abcdefghijkl',
    piece: PIECE,
    item: null,
    seen: k === 1 ? [] : [idOf(k - 1)],
    revision: null,
    checkKey: null,
    measuredAt: '2026-11-30T06:00:00Z',
    typedAt: '2026-11-30T06:00:30Z',
    clock_s: null,
    person: 'pppppppppppp',
    measuredBy: null,
    device: 'abcd000000000000',
    app: '0.4.0',
    chain: { number: k, previous: null },
    ...said,
    ...over,
  });
}

const records = [
  record(1, look, { item: 'k4' }),
  record(2, look, { item: 'k5' }),
  record(3, look, { item: 'k6' }),
  record(4, { kind: 'correction', body: { of: idOf(3), reason: 'not looked at' } }, { item: 'k6' }),
  record(
    5,
    { kind: 'measured', body: { stage: 1, x_mm: 1203, y_mm: 600, level_mm: null, basis: 'sheet' } },
    { item: 'k4', typedAt: '2026-11-30T09:00:00Z', measuredBy: 'qqqqqqqqqqqq', clock_s: -86_400 },
  ),
];

const lines = listHistory(foldPiece(PIECE, records), {
  person: (id) => ({ pppppppppppp: 'M. Nobody', qqqqqqqqqqqq: 'S. Nobody' })[id] ?? null,
  number: (item) => Number(item.slice(1)),
  piece: () => null,
  record: (id) => records.find((one) => one.id === id) ?? null,
  write: writerOf('metric'),
});

it('tells a history in the order of what was known, alike acts as one, the withdrawn one in its place', () => {
  expect(lines.map(({ act, withdrawn, chain }) => [act, withdrawn, chain])).toEqual([
    ['checked inserts 4, 5 before the cage: type, face, firm as shown', null, 'abcd 1, 2'],
    ['checked insert 6 before the cage: type, face, firm as shown', 'withdrawn by M. Nobody: not looked at', 'abcd 3'],
    ['withdrew “M. Nobody checked insert 6 before the cage: type, face, firm as shown”: not looked at', null, 'abcd 4'],
    ['measured insert 4 before the cage: x 1203 mm, y 600 mm, typed from the sheet', null, 'abcd 5'],
  ]);
});

it('tells who measured and who typed, two times where they lie apart, and a clock that was off', () => {
  const [first, , , typed] = lines;
  expect(typed).toMatchObject({ who: 'S. Nobody', typedBy: 'M. Nobody', isLate: true });
  expect(typed?.clock).toBe('clock of the device 24 h fast');
  expect(first).toMatchObject({ who: 'M. Nobody', typedBy: null, isLate: false, clock: null });
});

it.each([
  [null, null],
  [299, null],
  [-299, null],
  [300, 'clock of the device 5 min slow'],
  [-7_200, 'clock of the device 2 h fast'],
  [2_592_000, 'clock of the device 30 days slow'],
])('tells a clock that is %s s behind the server’s as %s', (clock_s, words) => {
  expect(tellClock(clock_s)).toBe(words);
});

it('prints by which hash a photo is found, and what is to be known of its clock', () => {
  const photo = record(
    1,
    {
      kind: 'photo',
      body: {
        photo: 'c0ffee'.padEnd(64, '1'),
        type: 'image/jpeg',
        bytes: 9,
        width: 3,
        height: 2,
        of: 'defect',
        note: 'honeycomb',
      },
    },
    {},
  );
  const line = { act: 'photographed a defect; honeycomb', clock: null, records: [photo] };
  expect(tellPrintedAct(line)).toBe('photographed a defect; honeycomb [photo c0ffee111111]');
  expect(tellPrintedAct({ ...line, records: [photo, photo], clock: 'clock of the device 6 min slow' })).toBe(
    'photographed a defect; honeycomb [photos c0ffee111111, c0ffee111111] (clock of the device 6 min slow)',
  );
  expect(tellPrintedAct({ ...line, records: records.slice(0, 1) })).toBe(line.act);
});
