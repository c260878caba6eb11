import type { Connection } from '../../job/documents/connection.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { gatherParts } from '../../job/resolve/connection-seat.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { assessConnection } from '../assess-connection.ts';
import type { ConnectionAnswer, ConnectionState } from '../connection-answer.ts';
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

/** What a person should look at once a choice is made. */
export interface LookAt {
  /** What the choice brings. */
  readonly brought: readonly string[];
  /** What was to be looked at already, and still is. */
  readonly kept: readonly string[];
}

/** The choices for a job. */
export interface JobChoice {
  /** One for each connection chosen for, in the job's order. */
  readonly choices: readonly ConnectionChoice[];
  /** What to look at with the first choice of a connection, by mark. */
  readonly lookAt: ReadonlyMap<string, LookAt>;
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

/** Makes the first choice in the draft, and makes sure that the connection then passes. Null where nothing changes. */
function takeFirst(
  draft: JobDraft,
  connection: Connection,
  { ranked: [first] }: ConnectionChoice,
): ConnectionAnswer | null {
  if (first === undefined || first.isAsDesigned) return null;
  const { holding } = draft.index.file.library;
  const changed = changeParts(gatherParts(draft.index, connection), first, holding.ways);
  draft.take(changed.connection, changed.castIns);
  const answer = assessConnection(resolveConnection(draft.index, changed.connection));
  if (answer.state !== 'passes')
    throw new Error(
      `connection ${connection.mark} with ${first.item.id}: ${answer.state} once applied, though it was to pass`,
    );
  return answer;
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
  const lookAt = new Map<string, LookAt>();
  const passing: string[] = [];
  const withoutAction: string[] = [];
  let checks = 0;
  for (const [done, connection] of connections.entries()) {
    const { state, warnings } = assessConnection(resolveConnection(draft.index, connection));
    checks += 1;
    if (isNamed || ASKS.has(state) || (scope.all && state === 'passes')) {
      const choice = chooseConnection(draft, connection, options);
      choices.push(choice);
      const taken = takeFirst(draft, connection, choice);
      checks += choice.checks + (taken === null ? 0 : 1);
      const now = taken?.warnings ?? warnings;
      if (choice.ranked.length > 0)
        lookAt.set(connection.mark, {
          brought: now.filter((text) => !warnings.includes(text)),
          kept: now.filter((text) => warnings.includes(text)),
        });
    } else (state === 'passes' ? passing : withoutAction).push(connection.mark);
    onProgress(done + 1, connections.length);
  }
  return { choices, lookAt, passing, withoutAction, file: draft.toFile(), checks };
}
