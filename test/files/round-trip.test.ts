import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeSchedules } from '../../src/files/csv/write-schedules.ts';
import { writeJobJson } from '../../src/files/json.ts';
import { readJob } from '../../src/files/read-job.ts';
import { mustRead } from '../job/read.ts';
import { tries } from '../long.ts';
import { jobArbitrary } from './job-arbitrary.ts';
import { messagesOf } from './schedules.ts';

describe('writing and reading again', () => {
  it('gives the same job as JSON', () => {
    fc.assert(
      fc.property(jobArbitrary, (document) => {
        const file = mustRead(document);
        const again = readJob(new Map([['job.json', writeJobJson(file)]]));
        expect(messagesOf(again)).toEqual([]);
        expect(again.ok && again.file).toEqual(file);
      }),
      { numRuns: tries(150, 60) },
    );
  });
  it('gives the same job as schedules', () => {
    fc.assert(
      fc.property(jobArbitrary, (document) => {
        const file = mustRead(document);
        const again = readJob(writeSchedules(file));
        expect(messagesOf(again)).toEqual([]);
        expect(again.ok && again.file).toEqual(file);
      }),
      { numRuns: tries(400, 120) },
    );
  });
  it('leaves nothing to an assumption', () => {
    fc.assert(
      fc.property(jobArbitrary, (document) => {
        const again = readJob(writeSchedules(mustRead(document)));
        expect(again.ok && again.assumptions).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });
});
