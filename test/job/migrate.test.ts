import { describe, expect, it } from 'vitest';
import { defaultYard } from '../../src/job/default-yard.ts';
import { JOB_FILE_VERSION } from '../../src/job/documents/job-file-version.ts';
import { migrateJobFile, migrationSteps } from '../../src/job/migrate.ts';
import { faultsOf, mustRead } from './read.ts';
import { type Json, sampleCastIn, sampleJob, samplePanel } from './sample-job.ts';

/** A file of version 1, by hand: holding parts alone, no yard, no pours. */
function fileOfVersion1(parts: readonly Json[] = [], castIns?: readonly Json[]): Json {
  const file = sampleJob({ parts, ...(castIns === undefined ? {} : { castIns }) });
  const { pours: _pours, revision: _revision, ...job } = file.job as Json; // safe: the sample is written so
  const { yard: _pin, ...pins } = job.pins as Json; // safe: as above
  const { yard: _yard, holding, ...library } = file.library as Json; // safe: as above
  const { ways: _ways, ...old } = holding as Json; // safe: as above
  return { ...file, version: 1, job: { ...job, pins }, library: { ...library, holding: old } };
}

/** A file of version 0, by hand: one thickness a panel, inserts without a role. */
function oldFile(): Json {
  const file = fileOfVersion1();
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
  1: {
    before: {
      format: 'onepour-job',
      version: 1,
      job: { pins: { rules: { id: 'r', edition: '1' } } },
      library: {
        holding: {
          parts: [
            { id: 'PL', name: 'Plate', kind: 'fixing plate', thread: 'M16', recess_mm: 10, reusable: true },
            { id: 'CH', name: 'Chair', kind: 'chair', recess_mm: 0, reusable: false },
            { id: 'BAR', name: 'Bar', kind: 'bar', recess_mm: 0, reusable: false },
          ],
        },
      },
    },
    after: {
      format: 'onepour-job',
      version: 1,
      job: { pins: { rules: { id: 'r', edition: '1' }, yard: { id: 'default-yard', edition: '1' } } },
      library: {
        holding: {
          parts: [
            { id: 'PL', name: 'Plate', kind: 'fixing plate', thread: 'M16', reusable: true },
            { id: 'CH', name: 'Chair', kind: 'chair', reusable: false },
            { id: 'BAR', name: 'Bar', kind: 'other', reusable: false },
          ],
          ways: [
            {
              ...{ id: 'PL', name: 'Plate', method: 'stick-on plate', thread: 'M16', recess_mm: 10 },
              parts: [{ part: 'PL', count: 1 }],
            },
            { id: 'CH', name: 'Chair', method: 'chair', thread: null, recess_mm: 0, chairs: ['CH'] },
          ],
        },
        yard: defaultYard,
      },
    },
  },
  2: {
    before: { format: 'onepour-job', version: 2, library: { rules: { id: 'r', clearance_mm: 5 } } },
    after: { format: 'onepour-job', version: 2, library: { rules: { id: 'r', clearance_mm: 5, acceptance: null } } },
  },
  3: {
    before: {
      format: 'onepour-job',
      version: 3,
      job: { connections: [{ mark: 'C1' }] },
      library: { rules: { id: 'r', acceptance: null } },
    },
    after: {
      format: 'onepour-job',
      version: 3,
      job: { connections: [{ mark: 'C1', positionBox: null }] },
      library: { rules: { id: 'r', acceptance: null, positionZones: null } },
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
    expect(migration.kind === 'current' && migration.changes).toEqual(migrationSteps.map((step) => step.change));
  });
  it('reads a whole file of version 1 with a plate as one held in a way of that name', () => {
    const plate = {
      ...{ id: 'PL16', name: 'Plate', kind: 'fixing plate', thread: 'M16' },
      ...{ height_mm: 10, recess_mm: 10, reusable: true },
    };
    const castIns = [900, 1100].map((x, i) => sampleCastIn(String(i + 1), x, 500, { holding: 'PL16', recess_mm: 10 }));
    const file = mustRead(fileOfVersion1([plate], castIns));
    expect(file.library.holding.ways).toMatchObject([{ id: 'PL16', method: 'stick-on plate', recess_mm: 10 }]);
    expect(file.job.castIns.map((c) => c.holding)).toEqual(['PL16', 'PL16']);
    expect([file.library.yard, file.job.pours, file.job.revision]).toEqual([defaultYard, [], null]);
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
    [{ format: 'onepour-job', version: '1' }, 'version: "1" is not a version; expected a version from 0 to 4'],
    [{ format: 'onepour-job' }, 'version: nothing is not a version; expected a version from 0 to 4'],
  ])('refuses what is no job file: %j', (document, line) => {
    expect(faultsOf(document)).toEqual([line]);
  });
});
