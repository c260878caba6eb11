import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hashText } from '../../../src/job/fingerprint.ts';
import { hashLogLine } from '../../../src/records/log-line.ts';
import type { FactRecord } from '../../../src/records/record.ts';
import { writeRecord } from '../../../src/records/record-text.ts';
import { checkHead } from '../../../src/records/verify/check-lines.ts';
import { examineLine, type LogLine } from '../../../src/records/verify/examine-line.ts';
import { played } from '../interleavings.ts';
import { cleared, FROZEN, held, idOf, measured, meet, poured, Tablet } from '../writing.ts';
import { check, makeLog } from './make-log.ts';

/** Two tablets that write in turn, six records. */
function sixLines(): LogLine[] {
  const [one, two] = [new Tablet(1), new Tablet(2)];
  const write = [one, two, one, two, one, two].map((tablet, second) => {
    tablet.write(measured(100 + second), second, { item: `k${second}` });
    return tablet.written.at(-1)!;
  });
  return makeLog(write);
}

function swap<Key extends keyof LogLine>(lines: LogLine[], a: number, b: number, keys: readonly Key[]): LogLine[] {
  const take = (from: LogLine) => Object.fromEntries(keys.map((key) => [key, from[key]]));
  return lines.map((line) => {
    if (line.number === a) return { ...line, ...take(lines[b - 1]!) };
    return line.number === b ? { ...line, ...take(lines[a - 1]!) } : line;
  });
}

function change(lines: LogLine[], number: number, to: (line: LogLine) => Partial<LogLine>): LogLine[] {
  return lines.map((line) => (line.number === number ? { ...line, ...to(line) } : line));
}

/** As somebody would who owns the store: all hashes of the log made anew. */
function rechain(lines: LogLine[]): LogLine[] {
  let before = '0'.repeat(64);
  return lines.map((line, index) => {
    before = hashLogLine(before, line.job, line.hash);
    return { ...line, number: index + 1, logHash: before };
  });
}

const edit = ({ text }: LogLine) => text.replace('"x_mm":10', '"x_mm":20');

test('logs of tablets that work as they should have no finding', () => {
  fc.assert(
    fc.property(played, ({ tablets }) => {
      // Each sends in its order, one tablet after the other; a server has all before anybody reads it.
      expect(check(makeLog(tablets.flatMap(({ written }) => written)))).toStrictEqual([]);
    }),
    { numRuns: 300 },
  );
});

test('a changed byte of a text', () => {
  const lines = change(sixLines(), 3, (line) => ({ text: edit(line) }));
  expect(check(lines)).toMatchObject([
    { kind: 'text changed', at: { line: 3, number: 2, typedAt: expect.any(String) } },
  ]);
});

test('a text that is no JSON any more', () => {
  const lines = change(sixLines(), 3, ({ text }) => ({ text: text.slice(1) }));
  expect(check(lines)).toMatchObject([{ kind: 'text changed', at: { line: 3, number: 2, typedAt: null } }]);
});

test('a changed text with its hash made to fit: the log and the next record of the device tell', () => {
  const lines = change(sixLines(), 3, (line) => ({ text: edit(line), hash: hashText(edit(line)) }));
  expect(check(lines)).toMatchObject([
    { kind: 'log broken', at: { line: 3 } },
    { kind: 'link broken', at: { line: 5 }, before: { line: 3 } },
  ]);
});

test('with the hashes of the log made anew too the next record of the device tells; of its last record only a head that was written down', () => {
  const sound = sixLines();
  const middle = rechain(change(sound, 3, (line) => ({ text: edit(line), hash: hashText(edit(line)) })));
  expect(check(middle)).toMatchObject([{ kind: 'link broken', at: { line: 5 } }]);
  const last = rechain(change(sound, 6, (line) => ({ text: edit(line), hash: hashText(edit(line)) })));
  expect(check(last)).toStrictEqual([]);
  const head = { number: 6, hash: sound[5]!.logHash };
  const byNumber = (lines: LogLine[]) => new Map(lines.map((line) => [line.number, examineLine(line)]));
  expect(checkHead(byNumber(last), head, null)).toMatchObject([{ kind: 'head differs', found: last[5]!.logHash }]);
  expect(checkHead(byNumber(sound), head, null)).toStrictEqual([]);
  expect(checkHead(byNumber(sound), { ...head, hash: head.hash.slice(0, 12) }, null)).toStrictEqual([]);
});

test('a removed record', () => {
  const lines = sixLines().filter(({ number }) => number !== 3);
  expect(check(lines)).toMatchObject([
    { kind: 'lines missing', from: 3, to: 3 },
    { kind: 'records missing', device: 'ddddddddddddddd1', from: 2, to: 2, next: { line: 5 } },
  ]);
});

test('a removed record with the gap closed and the log made anew', () => {
  const lines = sixLines().filter(({ number }) => number !== 3);
  expect(check(rechain(lines))).toMatchObject([{ kind: 'records missing', from: 2, to: 2, next: { line: 4 } }]);
  const renumbered = lines.map((line, index) => ({ ...line, number: index + 1 }));
  expect(check(renumbered)[0]).toMatchObject({ kind: 'log broken', at: { line: 3 } });
});

test('the first record of a device removed', () => {
  const lines = rechain(sixLines().slice(1));
  expect(check(lines)).toMatchObject([{ kind: 'records missing', from: 1, to: 1 }]);
});

test('a record taken off the end tells nothing, unless another one has seen it or a head was written down', () => {
  const sound = sixLines();
  expect(check(sound.slice(0, 5))).toStrictEqual([]);
  const byNumber = new Map(sound.slice(0, 5).map((line) => [line.number, examineLine(line)]));
  expect(checkHead(byNumber, { number: 6, hash: sound[5]!.logHash }, null)).toMatchObject([
    { kind: 'head differs', number: 6, found: null },
  ]);

  const [one, two] = [new Tablet(1), new Tablet(2)];
  const hold = one.write(held, 0);
  meet(one, two);
  two.write(cleared, 1);
  const lines = rechain(makeLog([one.written[0]!, two.written[0]!]).slice(1));
  expect(check(lines)).toMatchObject([{ kind: 'seen missing', at: { line: 1 }, seen: [hold.id] }]);
  expect(check(lines, [hold.id])).toStrictEqual([]);
});

test.each([
  [
    'whole lines',
    ['job', 'id', 'piece', 'item', 'kind', 'device', 'deviceNumber', 'previous', 'hash', 'logHash', 'text'],
  ],
  [
    'records, their hashes of the log left in place',
    ['job', 'id', 'piece', 'item', 'kind', 'device', 'deviceNumber', 'previous', 'hash', 'text'],
  ],
] as const)('reordered: %s', (_, keys) => {
  expect(check(swap(sixLines(), 2, 5, keys))).toMatchObject([
    { kind: 'out of order', at: { line: 5, number: 1 }, belongs: 2 },
    { kind: 'out of order', at: { line: 2, number: 3 }, belongs: 5 },
  ]);
});

test('a log that is wrong throughout is told line by line, without a search for each', () => {
  const one = new Tablet(1);
  for (let second = 0; second < 60; second += 1) one.write({ kind: 'comment', body: { text: 'x' } }, second);
  const lines = makeLog(one.written).map((line) => ({ ...line, logHash: hashText(line.id) }));
  expect(check(lines).map(({ kind }) => kind)).toStrictEqual(lines.map(() => 'log broken'));
});

test('a column that says something else than the text', () => {
  const lines = change(sixLines(), 4, () => ({ piece: '3'.repeat(24) }));
  expect(check(lines)).toMatchObject([
    { kind: 'column changed', column: 'piece', stored: '3'.repeat(24), said: '1'.repeat(24), at: { line: 4 } },
  ]);
  const renamed = change(sixLines(), 4, () => ({ deviceNumber: 7 }));
  expect(check(renamed)).toMatchObject([{ kind: 'column changed', column: 'running number', stored: '7', said: '2' }]);
});

test('a copied tablet: two texts under one number, told once for as long as both go on', () => {
  const one = new Tablet(1);
  one.write(held, 0);
  one.write(cleared, 1);
  one.write(poured, 2);
  one.write(held, 3);
  // The copy goes on from the same first record.
  const base = one.written[1]!.record;
  const second = writeRecord({ ...base, id: idOf(5, 5), chain: base.chain } as FactRecord);
  const third = writeRecord({ ...base, id: idOf(6, 6), chain: { number: 3, previous: second.hash } } as FactRecord);
  const lines = makeLog([...one.written, second, third]);
  const findings = check(lines);
  expect(findings).toMatchObject([{ kind: 'fork', device: one.id, from: 2, to: 3 }]);
  expect(findings[0]).toMatchObject({ records: [{ line: 2 }, { line: 5 }, { line: 3 }, { line: 6 }] });
});

test('a record that says it is the first and is not, and one that is and says it is not', () => {
  const one = new Tablet(1);
  one.write(held, 0);
  one.write(cleared, 1);
  const [first, second] = one.written.map(({ record }) => record) as [FactRecord, FactRecord];
  const late = writeRecord({ ...second, chain: { number: 2, previous: null } });
  expect(check(makeLog([one.written[0]!, late]))).toMatchObject([{ kind: 'link broken', at: { line: 2 } }]);
  const early = writeRecord({ ...first, chain: { number: 1, previous: 'b'.repeat(64) } });
  expect(check(makeLog([early]))).toMatchObject([{ kind: 'link broken', at: { line: 1 }, before: null }]);
});

test('a head that a clearance was given on is held against the log', () => {
  const one = new Tablet(1);
  one.write(held, 0);
  const [line] = makeLog(one.written);
  const given = (hash: string) => ({
    ...cleared,
    body: { ...cleared.body, frozen: { ...FROZEN, head: { number: 1, hash } } },
  });
  const two = new Tablet(2);
  two.write(given(line!.logHash) as typeof cleared, 1);
  expect(check(makeLog([...one.written, ...two.written]))).toStrictEqual([]);
  two.write(given('c'.repeat(64)) as typeof cleared, 2);
  expect(check(makeLog([...one.written, ...two.written]))).toMatchObject([
    { kind: 'head differs', number: 1, found: line!.logHash, by: { line: 3 } },
  ]);
});
