import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { hashLogLine, LOG_START } from '../../src/records/log-line.ts';

test('a line of the log is the SHA-256 of the line before, the job and the record, set apart by line feeds', () => {
  const hash = createHash('sha256').update('{}').digest('hex');
  const byNode = createHash('sha256')
    .update(`${'0'.repeat(64)}\nabcdefghijkl\n${hash}`, 'utf8')
    .digest('hex');
  expect(hashLogLine(LOG_START, 'abcdefghijkl', hash)).toBe(byNode);
});
