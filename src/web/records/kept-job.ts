import type { JobFile } from '../../job/documents/job-file.ts';
import { JOB_FILE_VERSION } from '../../job/documents/job-file-version.ts';
import type { RecordDatabase } from './record-db.ts';
import type { DeviceJob } from './record-device.ts';

/** A job as it lies on this device; null: it was never taken, or its file cannot be read by this version. */
export async function readKeptJob(db: RecordDatabase, id: string, before: DeviceJob | null): Promise<DeviceJob | null> {
  const kept = await db.get('jobs', id);
  if (kept === undefined) return null;
  const { inForce } = kept;
  if (inForce === null) return { ...kept, inForce: null };
  // The same file stays the same object: what is computed of it is computed once.
  if (before?.id === id && before.inForce?.fingerprint === inForce.fingerprint)
    return { ...kept, inForce: before.inForce };
  const found = await db.get('files', inForce.fingerprint);
  if (found === undefined) return null;
  const file = await readKeptFile(found.file);
  return file === null ? null : { ...kept, inForce: { ...inForce, file } };
}

/** A file that an earlier version of the program kept may be of an earlier shape: it is brought up, as any file that is opened. */
async function readKeptFile(file: JobFile): Promise<JobFile | null> {
  if (file.version === JOB_FILE_VERSION) return file;
  // The reader of documents is large, and hardly ever wanted.
  const { readJobDocument } = await import('../../job/read-job-document.ts');
  const read = readJobDocument(file);
  return read.ok ? read.file : null;
}
