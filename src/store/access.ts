import { randomBytes } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { JobFile } from '../job/documents/job-file.ts';
import type { JobHead } from '../wire/jobs.ts';
import type { DraftCache } from './draft-cache.ts';
import type { Absent, Conflicting } from './job-store.ts';
import type { JobRow, Tables } from './tables.ts';

/** What every part of the store works with. */
export interface Access {
  readonly db: Kysely<Tables>;
  readonly drafts: DraftCache;
  /** The moment, as ISO 8601 in UTC. */
  readonly now: () => string;
  readonly newId: () => string;
}

const LETTERS = 'abcdefghijkmnpqrstuvwxyz23456789';

/** Twelve letters and digits by chance, 60 bits; none that looks like another. */
export function drawId(): string {
  return [...randomBytes(12)].map((byte) => LETTERS[byte % LETTERS.length]).join('');
}

/** The row of a job, or that it is not there. */
export async function findJob(db: Kysely<Tables>, id: string): Promise<JobRow | Absent> {
  const row = await db.selectFrom('jobs').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) return { kind: 'absent', isRemoved: false };
  return row.removed_at === null ? row : { kind: 'absent', isRemoved: true };
}

export function isAbsent(found: JobRow | Absent): found is Absent {
  return 'kind' in found;
}

export function showHead(row: JobRow): JobHead {
  return {
    id: row.id,
    name: row.name,
    number: row.number,
    version: row.version,
    savedAt: row.saved_at,
    panels: row.panels,
    connections: row.connections,
    revision: row.revision === null ? null : JSON.parse(row.revision),
    issued: row.issued,
  };
}

/** What the row of a job repeats of its file, so that a list reads no files. */
export function describeFile(file: JobFile) {
  const { project, panels, connections, revision } = file.job;
  return {
    name: project.name,
    number: project.number,
    panels: panels.length,
    connections: connections.length,
    revision: revision === null ? null : JSON.stringify(revision),
    shape: file.version,
  };
}

/** A call on a version that is not the last one. */
export function showConflict(row: JobRow, cause: Conflicting['cause']): Conflicting {
  return { kind: 'conflict', cause, version: row.version, savedAt: row.saved_at };
}
