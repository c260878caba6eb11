import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { writeCanonical } from '../../src/job/canonical.ts';
import { fingerprintJob, hashText } from '../../src/job/fingerprint.ts';
import { readJobDocument } from '../../src/job/read-job-document.ts';
import { sampleJob } from './sample-job.ts';

describe('fingerprints', () => {
  it('gives the published hash of "abc" (FIPS 180-4, example B.1)', () => {
    expect(hashText('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('hashes the UTF-8 of a text, as another program does', () => {
    for (const text of ['', 'Ø 20 × 96', 'ferrule '.repeat(5000)])
      expect(hashText(text)).toBe(createHash('sha256').update(text).digest('hex'));
  });

  it('prints the first twelve digits on a sheet', () => {
    const document = readJobDocument(sampleJob());
    if (!document.ok) throw new Error('the sample job is wrong');
    const full = createHash('sha256').update(writeCanonical(document.file)).digest('hex');
    expect(fingerprintJob(document.file)).toBe(full.slice(0, 12));
  });
});
