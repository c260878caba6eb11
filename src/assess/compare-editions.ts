import type { StandardName } from '../engine/standards/standard-name.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import { indexJob } from '../job/job-index.ts';
import { resolveConnection } from '../job/resolve/resolve-connection.ts';
import { explainConnection } from './assess-connection.ts';
import { assessJob, type JobAnswer } from './assess-job.ts';
import type { ConnectionAnswer, Decisive } from './connection-answer.ts';

/** One connection by several editions. */
export interface ComparedConnection {
  readonly mark: string;
  /** One answer an edition, in the order of `Comparison.standards`. */
  readonly answers: readonly ConnectionAnswer[];
  /** Whether the editions come to different states. */
  readonly differs: boolean;
}

/** A job by several editions, the job's own first. */
export interface Comparison {
  readonly standards: readonly StandardName[];
  readonly connections: readonly ComparedConnection[];
  /** One a standard. */
  readonly counts: readonly JobAnswer['counts'][];
}

/** The largest ratio of one mode over all combinations, one an edition; null where the edition has none. */
export interface ComparedMode {
  readonly mode: Decisive;
  readonly ratios: readonly (number | null)[];
}

/** The same job under another standard; its documents are not touched. */
export function rule(file: JobFile, standard: StandardName): JobFile {
  return { ...file, library: { ...file.library, rules: { ...file.library.rules, standard } } };
}

/**
 * Assesses a job by each edition as if its rules named it. Loads stay as they are given.
 * @param standards the editions, in the order in which they are shown
 * @param onProgress told how many of all the answers are done
 */
export function compareEditions(
  file: JobFile,
  standards: readonly StandardName[],
  onProgress: (done: number, total: number) => void = () => {},
): Comparison {
  const answers = standards.map((standard, i) =>
    assessJob(rule(file, standard), (done, total) => onProgress(i * total + done, standards.length * total)),
  );
  const connections = file.job.connections.map(({ mark }, k): ComparedConnection => {
    const own = answers.map((answer) => answer.connections[k]!);
    return { mark, answers: own, differs: own.some(({ state }) => state !== own[0]!.state) };
  });
  return { standards, connections, counts: answers.map(({ counts }) => counts) };
}

/** The largest ratio of each mode of one connection by one edition. */
function findModes(file: JobFile, mark: string): ReadonlyMap<Decisive, number> {
  const connection = file.job.connections.find((candidate) => candidate.mark === mark);
  if (connection === undefined) throw new Error(`connection ${mark} is not in the job`);
  const { answer, combinations } = explainConnection(resolveConnection(indexJob(file), connection), false);
  const modes = new Map<Decisive, number>();
  const take = (mode: Decisive, ratio: number | null) => {
    if (ratio !== null) modes.set(mode, Math.max(ratio, modes.get(mode) ?? 0));
  };
  for (const { result, bending } of combinations) {
    for (const row of result?.rows ?? []) if (row.applies) take(row.mode, row.ratio);
    for (const { kind, ratio } of result?.interaction ?? []) take(`interaction-${kind}`, ratio);
    if (bending?.kind === 'checked') take('plate-bending', bending.ratio);
  }
  // Two rows of an edge may count together, which none of them says by itself.
  if (answer.governing !== null) take(answer.governing.mode, answer.ratio);
  return modes;
}

/**
 * Mode by mode, what each edition makes of one connection: the most used first.
 * @throws Error where the job has no connection of that mark
 */
export function compareModes(file: JobFile, mark: string, standards: readonly StandardName[]): readonly ComparedMode[] {
  const found = standards.map((standard) => findModes(rule(file, standard), mark));
  const modes = new Set(found.flatMap((own) => [...own.keys()]));
  const largest = ({ ratios }: ComparedMode) => Math.max(...ratios.map((ratio) => ratio ?? 0));
  return [...modes]
    .map((mode) => ({ mode, ratios: found.map((own) => own.get(mode) ?? null) }))
    .sort((a, b) => largest(b) - largest(a));
}
