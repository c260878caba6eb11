import { expect, test } from 'vitest';
import type { FactRecord } from '../../../src/records/record.ts';
import { writeRecord } from '../../../src/records/record-text.ts';
import { checkExport } from '../../../src/records/verify/check-export.ts';
import { cleared, held, JOB, measured, poured, Tablet } from '../writing.ts';

function exported() {
  const one = new Tablet(1);
  for (const [second, draft] of [held, measured(100), cleared, poured].entries()) one.write(draft, second);
  return one.written;
}

function check(texts: readonly string[]) {
  return checkExport({ format: 'onepour-records', version: 1, job: JOB, device: 'ddddddddddddddd1', texts });
}

test('a file that begins in the middle of a chain is sound', () => {
  const texts = exported().map(({ text }) => text);
  expect(check(texts)).toStrictEqual([]);
  expect(check(texts.slice(2))).toStrictEqual([]);
});

test('a changed byte, a text that is no record, one that is gone', () => {
  const texts = exported().map(({ text }) => text);
  const changed = texts.map((text) => text.replace('"x_mm":100', '"x_mm":900'));
  expect(check(changed)).toMatchObject([{ kind: 'link broken', at: { line: 3, number: 3 }, before: { line: 2 } }]);
  expect(check([...texts.slice(0, 1), texts[1]!.slice(1), ...texts.slice(2)])).toMatchObject([
    { kind: 'no record', at: { line: 2, id: null } },
    { kind: 'records missing', from: 2, to: 2 },
  ]);
  expect(check(texts.filter((_, index) => index !== 1))).toMatchObject([{ kind: 'records missing', from: 2, to: 2 }]);
});

test('an id with two texts, and a record of another job', () => {
  const written = exported();
  const texts = written.map(({ text }) => text);
  const last = written.at(-1)!.record;
  const other = writeRecord({ ...last, body: { reason: 'other' } } as FactRecord);
  expect(check([...texts, other.text, texts.at(-1)!])).toMatchObject([
    { kind: 'two texts', at: { line: 5 }, other: { line: 4 } },
    { kind: 'fork', from: 4, to: 4 },
  ]);
  const elsewhere = writeRecord({ ...last, job: 'otherotherot' });
  expect(check([...texts.slice(0, 3), elsewhere.text])).toMatchObject([
    { kind: 'column changed', column: 'job', said: 'otherotherot', at: { line: 4 } },
  ]);
});
