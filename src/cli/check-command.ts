import { type ExplainedCombination, explainConnection } from '../assess/assess-connection.ts';
import { assessJob, type JobAnswer } from '../assess/assess-job.ts';
import { chooseConnectionBolt } from '../assess/bolt-of-connection.ts';
import { findCapacities } from '../assess/capacities.ts';
import type { ConnectionAnswer } from '../assess/connection-answer.ts';
import { writeAnchorage } from '../calc/anchorage-output.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import { indexJob } from '../job/job-index.ts';
import { resolveConnection } from '../job/resolve/resolve-connection.ts';
import { writeCapacities } from './capacity-json.ts';
import { showComparison } from './compare-command.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { findConnection } from './find-connection.ts';
import { type LoadedJob, loadJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import { printConnection } from './print/connection.ts';
import { CAUTIONS, printAssumptions, printConnections, printCounts, printOthers, printReasons } from './print/job.ts';
import { layPoint } from './print/table.ts';
import { Progress } from './progress.ts';

/** Options of `onepour check`. */
export interface CheckOptions {
  readonly json?: boolean;
  readonly connection?: string;
  readonly panel?: string;
  readonly steps?: boolean;
  /** Further standards to set beside the job's own. */
  readonly also?: readonly string[];
}

/** The exit code that answers call for. */
function exitOf(answers: readonly ConnectionAnswer[]): number {
  const has = (...states: readonly ConnectionAnswer['state'][]) => answers.some(({ state }) => states.includes(state));
  if (has('fails', 'not covered', 'cannot be computed')) return EXIT.notPassed;
  return has('strength not checked') || answers.length === 0 ? EXIT.notChecked : EXIT.pass;
}

// JSON has no infinity: a load on nothing shows as a null ratio beside "fails".
const toJson = (ratio: number | null) => (ratio === Number.POSITIVE_INFINITY ? null : ratio);

function writeJson(value: object): void {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}

type Solved = Extract<ExplainedCombination['combination'], { kind: 'solved' }>;

/** Forces on the inserts as `anchorage` takes them. */
function writeActions(inserts: readonly string[], { actions }: Solved): object[] {
  return actions.inserts.map(({ N, Vx, Vy }, i) => ({
    id: inserts[i],
    N_kN: N / 1000,
    Vx_kN: Vx / 1000,
    Vy_kN: Vy / 1000,
  }));
}

function checkOne({ file }: LoadedJob, mark: string, options: CheckOptions): number {
  const resolution = resolveConnection(indexJob(file), findConnection(file, mark, `--connection ${mark}`));
  const asked = findCapacities(resolution);
  const keepsSteps = options.steps ?? false;
  const explained = explainConnection(resolution, keepsSteps);
  if (options.json) {
    const { answer, combinations, resistances } = explained;
    writeJson({
      engine: ENGINE_VERSION,
      ...answer,
      ratio: toJson(answer.ratio),
      combinations: combinations.map(({ combination, result }) => ({
        name: combination.name,
        actions: combination.kind === 'solved' ? writeActions(answer.inserts, combination) : null,
        result: result === null ? null : writeAnchorage(result, [], keepsSteps),
        ...(combination.kind === 'unsolved' ? { reason: combination.reason } : {}),
      })),
      resistances: resistances === null ? null : writeAnchorage(resistances, [], keepsSteps),
      carriesAtMost: asked.kind === 'computed' ? writeCapacities(asked.value) : null,
    });
  } else {
    const width = findPageWidth();
    const capacities = asked.kind === 'computed' ? asked.value : null;
    const bolt = resolution.kind === 'resolved' ? chooseConnectionBolt(resolution, capacities) : null;
    process.stdout.write(`${printConnection({ resolution, explained, asked, bolt, keepsSteps, width })}\n`);
  }
  return exitOf([explained.answer]);
}

function section(title: string, text: string): string {
  return text === '' ? '' : `\n${title}\n${text}\n`;
}

/** The answer for a job as a page of text. */
export function printJob(job: LoadedJob, answer: JobAnswer, width: number): string {
  const { project } = job.file.job;
  const { connections } = answer;
  return [
    `${project.name}, checked by ${job.file.library.rules.standard} with engine ${ENGINE_VERSION}\n\n`,
    connections.length === 0
      ? 'No connection in this job: nothing to check. Add rows to connections.csv and inserts.csv, or connections to the job file.\n'
      : `${printConnections(connections, width)}\n`,
    section('Why not, and what to look at', printReasons(connections, width)),
    section(
      'Taken as given',
      [...job.assumptions.map((text) => layPoint(text, width)), printAssumptions(connections, width)]
        .filter((text) => text !== '')
        .join('\n'),
    ),
    section('Not computed', printOthers(answer, width)),
    `\n${printCounts(answer)}\n`,
    section('Cautions', CAUTIONS.map((text) => layPoint(text, width)).join('\n')),
  ].join('');
}

/**
 * Checks a job, a panel of it, or one connection in full; by further standards side by side where they are named.
 * @returns the exit code
 * @throws UsageError where the job cannot be read or has no such panel, connection or standard
 */
export function runCheck(path: string, options: CheckOptions): number {
  const job = loadJob(path);
  const { also, connection, json } = options;
  if (also !== undefined) {
    if (options.steps) throw new UsageError('--steps: not together with --also, one edition at a time');
    return exitOf(showComparison(choosePanel(job, options.panel), { also, connection, json: json ?? false }));
  }
  if (connection !== undefined) return checkOne(job, connection, options);
  if (options.steps) throw new UsageError('--steps: needs --connection MARK, the connection to print step by step');
  const chosen = choosePanel(job, options.panel);
  const progress = new Progress('checking connections');
  const answer = assessJob(chosen.file, (done, total) => progress.tell(done, total));
  progress.end();
  if (options.json)
    writeJson({
      engine: ENGINE_VERSION,
      job: chosen.file.job.project.name,
      standard: chosen.file.library.rules.standard,
      assumptions: chosen.assumptions,
      ...answer,
      connections: answer.connections.map((connection) => ({ ...connection, ratio: toJson(connection.ratio) })),
    });
  else process.stdout.write(printJob(chosen, answer, findPageWidth()));
  return exitOf(answer.connections);
}

/** The job with one panel only; the whole job where none is named. */
function choosePanel(job: LoadedJob, mark: string | undefined): LoadedJob {
  if (mark === undefined) return job;
  const { panels, castIns, connections } = job.file.job;
  const marks = panels.map((panel) => panel.mark);
  if (!marks.includes(mark))
    throw new UsageError(`--panel ${mark}: not in this job, expected one of ${marks.join(', ')}`);
  return {
    ...job,
    file: {
      ...job.file,
      job: {
        ...job.file.job,
        castIns: castIns.filter(({ panel }) => panel === mark),
        connections: connections.filter(({ panel }) => panel === mark),
      },
    },
  };
}
