import { expect, test } from 'vitest';
import { readExport, writeExport } from '../../src/records/export.ts';
import { JOB } from './writing.ts';

const content = { job: JOB, device: 'dddddddddddddddd', texts: ['{"a":"ü\\n"}', 'no JSON at all'] };

test('texts come back byte for byte, what is no record too', () => {
  const read = readExport(writeExport(content));
  expect(read).toMatchObject({ ok: true, value: content });
});

test.each([
  ['{', /^no JSON/],
  ['[]', /"onepour-records" was expected/],
  ['{"format":"other","version":1}', /"onepour-records" was expected/],
  ['{"format":"onepour-records","version":2}', /version 2, this program reads 1/],
  [writeExport({ ...content, job: 'x' }), /^job: .*12 small letters/],
  [JSON.stringify({ ...JSON.parse(writeExport(content)), texts: [1] }), /^texts\.0: /],
])('%s', (text, why) => {
  const read = readExport(text);
  expect(read.ok ? '' : read.why).toMatch(why);
});
