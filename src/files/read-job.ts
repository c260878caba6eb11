import { schedules } from './csv/columns.ts';
import { readSchedules } from './csv/read-schedules.ts';
import type { FileTexts, JobReading } from './job-reading.ts';
import { readJobJson } from './json.ts';

function refuse(message: string): JobReading {
  return { ok: false, faults: [{ file: '', path: '', value: '', expected: 'a job file or schedules', message }] };
}

/**
 * Reads a job from the texts of its files: one job file (JSON), or a folder of schedules (panels.csv, inserts.csv, connections.csv,
 * catalogue.csv, loads.csv, and job.json for the rest). Reading from disk or a drop zone is the caller's.
 *
 * @param files texts by file name, without folders; other files of a folder are passed over
 */
export function readJob(files: FileTexts): JobReading {
  const named = new Map([...files].map(([name, content]) => [name.toLowerCase(), content] as const));
  const known = schedules.map((schedule) => schedule.file);
  if (known.some((name) => named.has(name))) return readSchedules(named);
  const documents = [...files].filter(([name]) => name.toLowerCase().endsWith('.json'));
  const [only] = documents;
  if (only !== undefined && documents.length === 1) return readJobJson(only[0], only[1]);
  if (documents.length > 1) {
    return refuse(`several JSON files are here: ${documents.map(([name]) => name).join(', ')}; expected one job file`);
  }
  return refuse(`no job is here; expected a job file (.json) or the schedules ${known.join(', ')}`);
}
