import type { Connection } from '../../job/documents/connection.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { gatherParts } from '../../job/resolve/connection-seat.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { assessConnection } from '../assess-connection.ts';
import type { ConnectionState } from '../connection-answer.ts';
import { changeParts } from './apply-choice.ts';
import type { ChooseOptions, ConnectionChoice } from './choice.ts';
import { chooseConnection } from './choose-connection.ts';
import { JobDraft } from './job-draft.ts';

/** Which connections are chosen for: one, those of a panel, or all; else each that does not pass. */
export interface ChooseScope {
  readonly connection: string | null;
  readonly panel: string | null;
  /** Those that pass as they stand, too. */
  readonly all: boolean;
}

/** The choices for a job. */
export interface JobChoice {
  /** One for each connection chosen for, in the job's order. */
  readonly choices: readonly ConnectionChoice[];
  /** Connections of the scope that pass as they stand and were left alone, and those without an action. */
  readonly passing: readonly string[];
  readonly withoutAction: readonly string[];
  /** The job with the first choice of each connection made. */
  readonly file: JobFile;
  /** How many full checks it took. */
  readonly checks: number;
}

/** States that ask for a choice; a connection without an action has none to be judged by. */
const ASKS: ReadonlySet<ConnectionState> = new Set<ConnectionState>(['fails', 'not covered', 'cannot be computed']);

function isInScope({ connection, panel }: ChooseScope, candidate: Connection): boolean {
  return (connection === null || candidate.mark === connection) && (panel === null || candidate.panel === panel);
}

/** Makes the first choice in the draft, and makes sure that the connection then passes. Returns how many checks that took. */
function takeFirst(draft: JobDraft, connection: Connection, { ranked: [first] }: ConnectionChoice): number {
  if (first === undefined || first.isAsDesigned) return 0;
  const { holding } = draft.index.file.library;
  const changed = changeParts(gatherParts(draft.index, connection), first, holding.parts);
  draft.take(changed.connection, changed.castIns);
  const { state } = assessConnection(resolveConnection(draft.index, changed.connection));
  if (state !== 'passes')
    throw new Error(
      `connection ${connection.mark} with ${first.item.id}: ${state} once applied, though it was to pass`,
    );
  return 1;
}

/**
 * Chooses inserts for the connections of a job, in the job's order. Each choice counts as made when the next connection is looked at:
 * what is "already used" and what stands in the way are those of the job with the first choices so far.
 *
 * Its time grows in line with the job: counts are kept, not taken anew.
 * @param onProgress told after each connection how many of how many are done
 */
export function chooseJob(
  file: JobFile,
  scope: ChooseScope,
  options: ChooseOptions,
  onProgress: (done: number, total: number) => void = () => {},
): JobChoice {
  const draft = new JobDraft(file);
  const connections = file.job.connections.filter((candidate) => isInScope(scope, candidate));
  const isNamed = scope.connection !== null;
  const choices: ConnectionChoice[] = [];
  const passing: string[] = [];
  const withoutAction: string[] = [];
  let checks = 0;
  for (const [done, connection] of connections.entries()) {
    const { state } = assessConnection(resolveConnection(draft.index, connection));
    checks += 1;
    if (isNamed || ASKS.has(state) || (scope.all && state === 'passes')) {
      const choice = chooseConnection(draft, connection, options);
      choices.push(choice);
      checks += choice.checks + takeFirst(draft, connection, choice);
    } else (state === 'passes' ? passing : withoutAction).push(connection.mark);
    onProgress(done + 1, connections.length);
  }
  return { choices, passing, withoutAction, file: draft.toFile(), checks };
}
