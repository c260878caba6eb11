import { type Asked, type Capacities, findCapacities } from '../../assess/capacities.ts';
import type { ChooseOptions, ConnectionChoice } from '../../assess/choose/choice.ts';
import { chooseJob, type LookAt } from '../../assess/choose/choose-job.ts';
import { type ComparedMode, compareModes, rule } from '../../assess/compare-editions.ts';
import type { ConnectionAnswer } from '../../assess/connection-answer.ts';
import { lookAtConnection } from '../../assess/look-at-connection.ts';
import { type StandardName, standardNames } from '../../engine/standards/standard-name.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import type { HeldJob } from './held-job.ts';

function findMark({ job }: JobFile, mark: string) {
  const connection = job.connections.find((one) => one.mark === mark);
  if (connection === undefined) throw new Error(`connection ${mark} is not in the job`);
  return connection;
}

/** What a connection carries at most. @throws Error where the job has none of that mark */
export function askCapacities(held: HeldJob, mark: string): Asked<Capacities> {
  return findCapacities(resolveConnection(held.index, findMark(held.file, mark)));
}

/** One connection by every edition, the job's own first. */
export interface EditionsCompared {
  readonly standards: readonly StandardName[];
  /** One an edition. */
  readonly answers: readonly ConnectionAnswer[];
  readonly modes: readonly ComparedMode[];
}

/** One connection by all editions, loads as they are given. @throws Error where the job has none of that mark */
export function askEditions({ file }: HeldJob, mark: string): EditionsCompared {
  const own = file.library.rules.standard;
  const standards = [own, ...standardNames.filter((name) => name !== own)];
  const answers = standards.map((standard) => {
    const looked = lookAtConnection(rule(file, standard), mark);
    if (looked === null) throw new Error(`connection ${mark} is not in the job`);
    return looked.explanation.answer;
  });
  return { standards, answers, modes: compareModes(file, mark, standards) };
}

/** Inserts tried in one connection, and what to look at with the first of them. */
export interface ChoiceAnswer {
  readonly choice: ConnectionChoice;
  readonly lookAt: LookAt | null;
}

/** Tries every insert of the catalogue in a connection. @throws Error where the job has none of that mark */
export function askChoice({ file }: HeldJob, mark: string, options: ChooseOptions): ChoiceAnswer {
  const { choices, lookAt } = chooseJob(file, { connection: mark, panel: null, all: true }, options);
  const [choice] = choices;
  if (choice === undefined) throw new Error(`connection ${mark} is not in the job`);
  return { choice, lookAt: lookAt.get(mark) ?? null };
}
