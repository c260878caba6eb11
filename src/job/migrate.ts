import { JOB_FILE_VERSION } from './documents/job-file.ts';
import { type DocumentFault, showValue } from './fault.ts';
import { isRecord, type JsonRecord } from './json-record.ts';

/** One change of a job file's shape. A shipped step is never edited. */
export interface MigrationStep {
  readonly from: number;
  readonly change: string;
  readonly apply: (file: JsonRecord) => JsonRecord;
}

/** Applies a change to every object of a list; anything else is left for the schema to complain about. */
function mapRecords(list: unknown, change: (record: JsonRecord) => JsonRecord): unknown {
  return Array.isArray(list) ? list.map((entry: unknown) => (isRecord(entry) ? change(entry) : entry)) : list;
}

/** Version 0 knew one thickness a panel and fixing inserts only. */
function addLayersAndRoles(file: JsonRecord): JsonRecord {
  if (!isRecord(file.job)) return file;
  const { inserts, panels, ...rest } = file.job;
  return {
    ...file,
    job: {
      ...rest,
      panels: mapRecords(panels, (panel) => ({
        ...panel,
        layers: [{ kind: 'structural', thickness_mm: panel.thickness_mm }],
      })),
      castIns: mapRecords(inserts, (insert) => ({ ...insert, role: 'fixing' })),
    },
  };
}

/** All steps, counting up without gaps. */
export const migrationSteps: readonly MigrationStep[] = [
  { from: 0, change: 'panels have layers; inserts are cast-in items with a role', apply: addLayersAndRoles },
];

/** A file brought to the shape of today, or why it cannot be. */
export type Migration =
  | { readonly kind: 'current'; readonly document: JsonRecord; readonly changes: readonly string[] }
  | { readonly kind: 'refused'; readonly fault: DocumentFault };

function refuse(path: readonly string[], found: unknown, expected: string, text: string): Migration {
  return { kind: 'refused', fault: { path, value: showValue(found), expected, text } };
}

/**
 * Brings a job file of any earlier version to today's shape. The file alone decides; nothing is asked elsewhere.
 * Refused: something that is no job file, and a file of a newer version.
 */
export function migrateJobFile(document: unknown): Migration {
  if (!isRecord(document)) {
    return refuse(
      [],
      document,
      'a job file',
      `this is no job file: it holds ${showValue(document)}; expected an object { "format": "onepour-job", … }`,
    );
  }
  const { format, version } = document;
  if (format !== 'onepour-job') {
    return refuse(
      ['format'],
      format,
      '"onepour-job"',
      `${showValue(format)} is not a job file; expected "onepour-job"`,
    );
  }
  const expected = `a version from 0 to ${JOB_FILE_VERSION}`;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return refuse(['version'], version, expected, `${showValue(version)} is not a version; expected ${expected}`);
  }
  if (version > JOB_FILE_VERSION) {
    const text = `this file is of version ${version}, newer than this program, which reads up to version ${JOB_FILE_VERSION}; use a newer program`;
    return refuse(['version'], version, expected, text);
  }
  const steps = migrationSteps.slice(version);
  const migrated = steps.reduce((file, step) => ({ ...step.apply(file), version: step.from + 1 }), document);
  return { kind: 'current', document: migrated, changes: steps.map((step) => step.change) };
}
