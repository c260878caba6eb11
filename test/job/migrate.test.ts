import { describe, expect, it } from 'vitest';
import { JOB_FILE_VERSION } from '../../src/job/documents/job-file.ts';
import { migrateJobFile, migrationSteps } from '../../src/job/migrate.ts';
import { faultsOf, mustRead } from './read.ts';
import { type Json, sampleCastIn, sampleJob, samplePanel } from './sample-job.ts';

/** A file of version 0, by hand: one thickness a panel, inserts without a role. */
function oldFile(): Json {
  const file = sampleJob();
  const { castIns: _castIns, panels: _panels, ...job } = file.job as Json; // safe: the sample is written so
  const { role: _role, ...first } = sampleCastIn('1', 900, 500);
  const { role: _role2, ...second } = sampleCastIn('2', 1100, 500);
  return { ...file, version: 0, job: { ...job, panels: [samplePanel()], inserts: [first, second] } };
}

/** What each step is tried on: an old file in, a look at the new one out. One entry a step; the first test below wants them all. */
const examples: Readonly<Record<number, { readonly before: Json; readonly after: Json }>> = {
  0: {
    before: {
      format: 'onepour-job',
      version: 0,
      job: { panels: [{ mark: 'P1', thickness_mm: 180 }], inserts: [{ id: '1' }] },
    },
    after: {
      format: 'onepour-job',
      version: 0,
      job: {
        panels: [{ mark: 'P1', thickness_mm: 180, layers: [{ kind: 'structural', thickness_mm: 180 }] }],
        castIns: [{ id: '1', role: 'fixing' }],
      },
    },
  },
};

describe('migration of job files', () => {
  it('counts its steps up to the version of today without gaps, and every step has an example', () => {
    expect(migrationSteps.map((step) => step.from)).toEqual(Array.from({ length: JOB_FILE_VERSION }, (_, i) => i));
    expect(Object.keys(examples).map(Number)).toEqual(migrationSteps.map((step) => step.from));
  });
  it.each(migrationSteps)('step from version $from: $change', (step) => {
    expect(step.apply(examples[step.from]!.before)).toEqual(examples[step.from]!.after);
  });
  it('reads a whole file of version 0 as the job it was', () => {
    const file = mustRead(oldFile());
    expect(file.version).toBe(JOB_FILE_VERSION);
    expect(file.job.castIns.map((c) => c.role)).toEqual(['fixing', 'fixing']);
    expect(file.job.panels[0]!.layers).toEqual([{ kind: 'structural', thickness_mm: 180 }]);
  });
  it('says what it changed', () => {
    const migration = migrateJobFile(oldFile());
    expect(migration.kind === 'current' && migration.changes).toEqual([migrationSteps[0]!.change]);
  });
  it('leaves a file of today alone', () => {
    const file = sampleJob();
    expect(migrateJobFile(file)).toEqual({ kind: 'current', document: file, changes: [] });
  });
  it('refuses a newer file by its version alone', () => {
    expect(faultsOf({ format: 'onepour-job', version: JOB_FILE_VERSION + 1, anything: true })).toEqual([
      `version: this file is of version ${JOB_FILE_VERSION + 1}, newer than this program, which reads up to version ${JOB_FILE_VERSION}; use a newer program`,
    ]);
  });
  it.each([
    [[], ': this is no job file: it holds []; expected an object { "format": "onepour-job", … }'],
    [{ format: 'shopping-list', version: 1 }, 'format: "shopping-list" is not a job file; expected "onepour-job"'],
    [{ format: 'onepour-job', version: '1' }, 'version: "1" is not a version; expected a version from 0 to 1'],
    [{ format: 'onepour-job' }, 'version: nothing is not a version; expected a version from 0 to 1'],
  ])('refuses what is no job file: %j', (document, line) => {
    expect(faultsOf(document)).toEqual([line]);
  });
});
