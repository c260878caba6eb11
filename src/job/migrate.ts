import { defaultYard } from './default-yard.ts';
import { JOB_FILE_VERSION } from './documents/job-file-version.ts';
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

/** The methods that a part of version 1 stood for by itself. */
const methodOfKind: Readonly<Record<string, string>> = {
  'fixing plate': 'stick-on plate',
  magnet: 'magnet',
  'side form bolt': 'through the side form',
  'template board': 'template board',
  'bridging bar': 'bridging bar',
  chair: 'chair',
  'recess former': 'recess former',
};

/** A part of version 1, with the way of holding that it stood for if it was one by itself. */
function splitPart(part: JsonRecord): { readonly part: JsonRecord; readonly ways: readonly JsonRecord[] } {
  const { recess_mm, ...rest } = part;
  const method = typeof part.kind === 'string' ? methodOfKind[part.kind] : undefined;
  const kept = part.kind === 'bar' ? { ...rest, kind: 'other' } : rest;
  if (method === undefined) return { part: kept, ways: [] };
  const way = {
    id: part.id,
    name: part.name,
    method,
    thread: part.thread ?? null,
    recess_mm: recess_mm ?? 0,
    ...(method === 'chair' ? { chairs: [part.id] } : { parts: [{ part: part.id, count: 1 }] }),
  };
  return { part: kept, ways: [way] };
}

/** Version 1 held an insert by one part, knew no yard, and named no pours. */
function addWaysAndYard(file: JsonRecord): JsonRecord {
  if (!isRecord(file.library) || !isRecord(file.job)) return file;
  const { holding, ...library } = file.library;
  const { pins } = file.job;
  const { id, edition } = defaultYard;
  const split =
    isRecord(holding) && Array.isArray(holding.parts)
      ? holding.parts.map((part: unknown) => (isRecord(part) ? splitPart(part) : { part, ways: [] }))
      : null;
  return {
    ...file,
    job: { ...file.job, ...(isRecord(pins) ? { pins: { ...pins, yard: { id, edition } } } : {}) },
    library: {
      ...library,
      holding:
        split === null || !isRecord(holding)
          ? holding
          : { ...holding, parts: split.map(({ part }) => part), ways: split.flatMap(({ ways }) => ways) },
      yard: defaultYard,
    },
  };
}

/** Rules of version 2 set no limits up to which QA may accept an insert that is off. */
function addAcceptance(file: JsonRecord): JsonRecord {
  if (!isRecord(file.library) || !isRecord(file.library.rules)) return file;
  return { ...file, library: { ...file.library, rules: { ...file.library.rules, acceptance: null } } };
}

/** Version 3 had one tolerance for all, and no ± box of a connection. */
function addPositionZones(file: JsonRecord): JsonRecord {
  const { library, job } = file;
  const isKnown = isRecord(library) && isRecord(library.rules);
  return {
    ...file,
    ...(isKnown ? { library: { ...library, rules: { ...(library.rules as JsonRecord), positionZones: null } } } : {}),
    ...(isRecord(job)
      ? {
          job: {
            ...job,
            connections: mapRecords(job.connections, (connection) => ({ ...connection, positionBox: null })),
          },
        }
      : {}),
  };
}

/** All steps, counting up without gaps. */
export const migrationSteps: readonly MigrationStep[] = [
  { from: 0, change: 'panels have layers; inserts are cast-in items with a role', apply: addLayersAndRoles },
  {
    from: 1,
    change:
      'inserts are held in ways made of parts (fixing plates taken as stick-on: look at each); no yard is described',
    apply: addWaysAndYard,
  },
  { from: 2, change: 'the rules set no limits up to which QA may accept an insert that is off', apply: addAcceptance },
  { from: 3, change: 'no position zone was agreed, and no connection has a box of one', apply: addPositionZones },
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
