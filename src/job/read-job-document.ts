import * as z from 'zod';
import { checkCastIns } from './check/check-cast-ins.ts';
import { checkCatalogue } from './check/check-catalogue.ts';
import { checkConnections } from './check/check-connections.ts';
import { checkHandedPartners } from './check/check-handed.ts';
import { checkHolding } from './check/check-holding.ts';
import { checkNames, checkReferences } from './check/check-names.ts';
import { checkPanels } from './check/check-panels.ts';
import { checkPins } from './check/check-pins.ts';
import { checkPours } from './check/check-pours.ts';
import { checkRules } from './check/check-rules.ts';
import { type JobFile, jobFile } from './documents/job-file.ts';
import { explainIssues } from './explain-issue.ts';
import type { DocumentFault } from './fault.ts';
import { isRecord } from './json-record.ts';
import { migrateJobFile } from './migrate.ts';
import { placeJob, siftJob } from './sift.ts';

/** A whole job file, or everything that is wrong with it. `changes`: what was brought up to today's shape. */
export type JobDocument =
  | { readonly ok: true; readonly file: JobFile; readonly changes: readonly string[] }
  | { readonly ok: false; readonly faults: readonly DocumentFault[] };

/** All keys that a JSON Schema names anywhere. */
function collectKeys(schema: unknown, keys: Set<string>): Set<string> {
  if (Array.isArray(schema)) for (const entry of schema) collectKeys(entry, keys);
  if (!isRecord(schema)) return keys;
  if (isRecord(schema.properties)) for (const key of Object.keys(schema.properties)) keys.add(key);
  for (const value of Object.values(schema)) collectKeys(value, keys);
  return keys;
}

/**
 * Reads a job file from plain JSON values: earlier versions are brought up to date, then the shape is checked, then the meaning.
 * All faults are found at once; with any fault nothing is read.
 */
export function readJobDocument(document: unknown): JobDocument {
  const migration = migrateJobFile(document);
  if (migration.kind === 'refused') return { ok: false, faults: [migration.fault] };
  const read = jobFile.safeParse(migration.document);
  const shapeFaults = read.success
    ? []
    : explainIssues(read.error.issues, migration.document, [
        ...collectKeys(z.toJSONSchema(jobFile, { io: 'input' }), new Set()),
      ]);
  const sifted = read.success ? placeJob(read.data) : siftJob(migration.document);
  const faults = [
    ...shapeFaults,
    ...checkNames(sifted),
    ...checkReferences(sifted),
    ...checkPins(migration.document),
    ...checkCatalogue(sifted),
    ...checkPanels(sifted),
    ...checkCastIns(sifted),
    ...checkConnections(sifted),
    ...checkHolding(sifted),
    ...checkRules(migration.document),
    ...checkPours(sifted),
    ...checkHandedPartners(sifted),
  ];
  if (faults.length > 0 || !read.success) return { ok: false, faults };
  return { ok: true, file: read.data, changes: migration.changes };
}
