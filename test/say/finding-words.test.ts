import { expect, test } from 'vitest';
import type { Finding, RecordPlace } from '../../src/records/verify/finding.ts';
import { type FindingNames, tellFinding } from '../../src/say/finding-words.ts';

const at: RecordPlace = {
  line: 12,
  id: '019df192-76e8-7000-8000-000000000001',
  device: 'ddddddddddddddd1',
  number: 7,
  piece: '1'.repeat(24),
  typedAt: '2026-05-04T06:08:09.000Z',
};
const before: RecordPlace = { ...at, line: 11, number: 6, piece: null, typedAt: null };
const names: FindingNames = { piece: () => 'P03 no. 2', lines: 'log' };
const HERE =
  'line 12, record 019df192-76e8-7000-8000-000000000001, device ddddddddddddddd1 no. 7, piece P03 no. 2, typed 2026-05-04 06:08 UTC';
const BEFORE = 'line 11, record 019df192-76e8-7000-8000-000000000001, device ddddddddddddddd1 no. 6';
const HASH = `${'ab'.repeat(31)}cd`;

/** Every kind of finding: the compiler wants each. */
const TOLD: {
  readonly [Kind in Finding['kind']]: readonly [Omit<Extract<Finding, { kind: Kind }>, 'kind'>, string][];
} = {
  'text changed': [[{ at }, `changed: ${HERE}: its text is not the one that was taken in`]],
  'no record': [[{ at, why: 'no JSON' }, `unreadable: ${HERE}: no JSON`]],
  'column changed': [
    [{ at, column: 'device', stored: 'a', said: 'b' }, `changed: ${HERE}: stored under device a, its text says b`],
  ],
  'lines missing': [
    [{ from: 3, to: 3 }, 'removed: line 3 of the log is not there'],
    [{ from: 3, to: 5 }, 'removed: lines 3 to 5 of the log are not there'],
  ],
  'out of order': [[{ at, belongs: 9 }, `reordered: ${HERE}: it belongs on line 9`]],
  'log broken': [
    [
      { at },
      `changed: ${HERE}: it does not continue the line before it; this record or its line was changed, or a line before it was taken out`,
    ],
  ],
  'records missing': [
    [
      { device: 'ddddddddddddddd1', from: 5, to: 6, next: at },
      `removed: device ddddddddddddddd1 nos. 5 to 6 not there, though a later one is: ${HERE}; taken out, or left behind on the device`,
    ],
  ],
  'link broken': [
    [
      { at, before },
      `changed: ${HERE}: it does not hold the hash of the record before it (${BEFORE}); one of both was changed, or the device was copied`,
    ],
    [
      { at, before: null },
      `changed: ${HERE}: what it holds of the record before it does not go with its running number`,
    ],
  ],
  fork: [
    [
      { device: 'ddddddddddddddd1', from: 7, to: 7, records: [at, before] },
      `copied device: ddddddddddddddd1 wrote two texts under no. 7: ${HERE}; ${BEFORE}`,
    ],
  ],
  'seen missing': [
    [
      { at, seen: ['x'] },
      `removed: ${HERE}: it was written after 1 record that is not there: x; taken out, or not sent yet`,
    ],
    [
      { at, seen: ['x', 'y'] },
      `removed: ${HERE}: it was written after 2 records that are not there: x, y; taken out, or not sent yet`,
    ],
  ],
  aside: [
    [{ at, why: 'no record' }, `kept aside: ${HERE}: no record`],
    [
      { at: { line: null, id: null, device: null, number: null, piece: null, typedAt: null }, why: 'no JSON' },
      'kept aside: a text without an id: no JSON',
    ],
  ],
  'aside changed': [[{ at }, `changed: ${HERE}: what was kept aside is not the text that came`]],
  'two texts': [[{ at, other: before }, `two texts: ${HERE}: the id stands for another text too (${BEFORE})`]],
  'photo missing': [[{ at, photo: HASH }, `photo missing: ${HASH}, of ${HERE}; taken away, or not sent yet`]],
  'photo changed': [[{ at, photo: HASH, found: 'c' }, `photo changed: ${HASH}, of ${HERE}: its bytes have the hash c`]],
  'head differs': [
    [
      { number: 40, hash: HASH, found: null, by: null },
      'removed: the head that was written down is 40:abababababab, and the log has no such line: it was taken out, and with it what may have followed',
    ],
    [
      { number: 4, hash: HASH, found: 'cd'.repeat(32), by: at },
      `rewritten: the head on ${HERE} is 4:abababababab, and line 4 has cdcdcdcdcdcd: something up to there was changed, and the hashes after it`,
    ],
  ],
};

const cases = Object.entries(TOLD).flatMap(([kind, told]) =>
  told.map(([content, words]) => [kind, { kind, ...content } as Finding, words] as const),
);

test.each(cases)('%s', (_, finding, words) => {
  expect(tellFinding(finding, names)).toBe(words);
});

test('in a file its texts are counted, and a piece that no record names is told by its id', () => {
  const told = tellFinding({ kind: 'no record', at, why: 'x' }, { piece: () => null, lines: 'file' });
  expect(told).toMatch(/^unreadable: text 12, record .*, piece 1{24}, typed /);
});
