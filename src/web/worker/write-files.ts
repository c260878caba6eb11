import type { ConnectionAnswer } from '../../assess/connection-answer.ts';
import { writeList } from '../../files/csv/write-list.ts';
import { writeSchedules } from '../../files/csv/write-schedules.ts';
import { writeJobJson } from '../../files/json.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { listResults, resultColumns } from '../../say/result-rows.ts';

/** A job file as text. */
export function writeWhole(file: JobFile): string {
  return writeJobJson(file);
}

/** The schedules of a job, by the names of their files. */
export function writeAllSchedules(file: JobFile): readonly (readonly [string, string])[] {
  return [...writeSchedules(file)];
}

/** Answers of connections as a table. */
export function writeAnswers(answers: readonly ConnectionAnswer[]): string {
  return writeList(resultColumns, listResults(answers));
}
