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
  readonly steps: StepsTable;
}

export type JobRow = JobsTable;
