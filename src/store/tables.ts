/** The tables, in words that every database knows. Times are ISO 8601 in UTC, bodies JSON as text. */

interface JobsTable {
  readonly id: string;
  /** Number of edits. */
  readonly version: number;
  readonly saved_at: string;
  readonly created_at: string;
  readonly removed_at: string | null;
  /** Version of the shape of the file, see JOB_FILE_VERSION. */
  readonly shape: number;
  readonly name: string;
  readonly number: string | null;
  readonly panels: number;
  readonly connections: number;
  /** What the file says of its revision, as JSON. */
  readonly revision: string | null;
  /** Letter issued last. */
  readonly issued: string | null;
}

interface EditsTable {
  readonly job: string;
  /** What the job became by it. */
  readonly version: number;
  readonly edit_id: string;
  readonly editor: string;
  readonly saved_at: string;
  readonly body: string;
}

/** Full copies: edits after one are applied to it. */
interface CopiesTable {
  readonly job: string;
  readonly version: number;
  readonly body: string;
}

interface IssuesTable {
  readonly job: string;
  readonly letter: string;
  readonly version: number;
  readonly issued_at: string;
  readonly fingerprint: string;
  /** Status, date, note and recipients, as JSON. */
  readonly transmittal: string;
  /** The canonical text that the fingerprint is of. */
  readonly body: string;
}

interface KeptTable {
  readonly id: string;
  readonly job: string;
  readonly base: number;
  readonly editor: string;
  readonly reason: string;
  readonly kept_at: string;
  readonly body: string;
}

/** The log: records of all jobs, each line chained to the one before. Lines are only ever added. */
interface RecordsTable {
  /** Running number over all jobs, from 1 without a gap. */
  readonly number: number;
  readonly job: string;
  readonly id: string;
  readonly piece: string;
  readonly item: string | null;
  readonly kind: string;
  readonly device: string;
  /** Running number of its device. */
  readonly device_number: number;
  /** Hash of the device's record before, as the record says. */
  readonly previous: string | null;
  /** SHA-256 of the text. */
  readonly hash: string;
  /** See hashLogLine. */
  readonly log_hash: string;
  /** As its device wrote it. */
  readonly text: string;
  readonly received_at: string;
}

/** Texts that came as records and are none, or whose id stands for another text. */
interface AsidesTable {
  readonly job: string;
  /** SHA-256 of the body. */
  readonly hash: string;
  readonly id: string | null;
  readonly piece: string | null;
  readonly why: string;
  /** The text written as a string of JSON: what is no record may hold signs that a database cannot. */
  readonly body: string;
  readonly at: string;
}

/** Running numbers under which a device wrote two texts. */
interface ForksTable {
  readonly device: string;
  readonly number: number;
  readonly found_at: string;
}

interface PeopleTable {
  readonly id: string;
  /** Null: erased. */
  readonly name: string | null;
  /** As JSON. */
  readonly roles: string;
  readonly registration: string | null;
}

interface StepsTable {
  readonly number: number;
  readonly done_at: string;
}

export interface Tables {
  readonly jobs: JobsTable;
  readonly edits: EditsTable;
  readonly copies: CopiesTable;
  readonly issues: IssuesTable;
  readonly kept: KeptTable;
  readonly records: RecordsTable;
  readonly asides: AsidesTable;
  readonly forks: ForksTable;
  readonly people: PeopleTable;
  readonly steps: StepsTable;
}

export type JobRow = JobsTable;
export type RecordRow = RecordsTable;
