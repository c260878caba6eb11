import type { Connection } from '../job/documents/connection.ts';
import type { JobIndex } from '../job/job-index.ts';
import { resolveConnection } from '../job/resolve/resolve-connection.ts';
import { assessConnection } from './assess-connection.ts';
import type { ConnectionState } from './connection-answer.ts';

/** What a connection comes to in one state of a job. */
export interface BriefAnswer {
  readonly state: ConnectionState;
  /** Null: nothing was computed. */
  readonly ratio: number | null;
}

/** One connection now and after a change. */
export interface ComparedState {
  readonly key: string;
  readonly mark: string;
  readonly panel: string;
  readonly before: BriefAnswer;
  readonly after: BriefAnswer;
}

function assessBriefly(index: JobIndex, connection: Connection): BriefAnswer {
  const { state, ratio } = assessConnection(resolveConnection(index, connection));
  return { state, ratio };
}

/** Assesses one connection in two states of a job that both have it as it is. */
export function compareStates(before: JobIndex, after: JobIndex, connection: Connection): ComparedState {
  return {
    key: connection.key,
    mark: connection.mark,
    panel: connection.panel,
    before: assessBriefly(before, connection),
    after: assessBriefly(after, connection),
  };
}
