import type { JobFile } from '../../src/job/documents/job-file.ts';
import { showPath } from '../../src/job/fault.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { readJobDocument } from '../../src/job/read-job-document.ts';
import { resolveConnection } from '../../src/job/resolve/resolve-connection.ts';
import type { Resolution, ResolvedConnection } from '../../src/job/resolve/resolved-connection.ts';

/** The job, or an error that lists the faults. */
export function mustRead(document: unknown): JobFile {
  const read = readJobDocument(document);
  if (!read.ok) throw new Error(read.faults.map((fault) => `${showPath(fault.path)}: ${fault.text}`).join('\n'));
  return read.file;
}

/** The faults as lines "path: text". */
export function faultsOf(document: unknown): string[] {
  const read = readJobDocument(document);
  return read.ok ? [] : read.faults.map((fault) => `${showPath(fault.path)}: ${fault.text}`);
}

export function resolveFirst(document: unknown): Resolution {
  const file = mustRead(document);
  return resolveConnection(indexJob(file), file.job.connections[0]!);
}

export function mustResolve(document: unknown): ResolvedConnection {
  const resolution = resolveFirst(document);
  if (resolution.kind === 'unresolved') throw new Error(resolution.reasons.join('\n'));
  return resolution;
}
