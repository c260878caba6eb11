import { type ExplainedCombination, explainConnection } from '../assess/assess-connection.ts';
import { assessJob, type JobAnswer } from '../assess/assess-job.ts';
import { chooseConnectionBolt } from '../assess/bolt-of-connection.ts';
import { findCapacities } from '../assess/capacities.ts';
import type { ConnectionAnswer } from '../assess/connection-answer.ts';
import { writeAnchorage } from '../calc/anchorage-output.ts';
import { toJsonNumber } from '../calc/json-number.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import { indexJob } from '../job/job-index.ts';
import { resolveConnection } from '../job/resolve/resolve-connection.ts';
import { writeCapacities } from './capacity-json.ts';
import { showComparison } from './compare-command.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { findConnection, refuseMark } from './find-connection.ts';
import { type LoadedJob, loadJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import { printConnection } from './print/connection.ts';
import {
  listFailing,
  listReasons,
  listWarnings,
  printAssumptions,
  printConnections,
  printCounts,
  printOthers,
} from './print/job.ts';
import { layPoint, layText } from './print/table.ts';
import { Progress } from './progress.ts';
import { ruleJob } from './rule-job.ts';

/** Options of `onepour check`. */
export interface CheckOptions {
  readonly json?: boolean;
  readonly connection?: string;
  readonly panel?: string;
  readonly steps?: boolean;
  /** Another standard in place of the job's own. */
  readonly by?: string;
  /** Further standards to set beside the job's own. */
  readonly also?: readonly string[];
}

/** The exit code that answers call for. */
function exitOf(answers: readonly ConnectionAnswer[]): number {
  const has = (...states: readonly ConnectionAnswer['state'][]) => answers.some(({ state }) => states.includes(state));
  if (has('fails', 'not covered', 'cannot be computed')) return EXIT.notPassed;
  return has('strength not checked') || answers.length === 0 ? EXIT.notChecked : EXIT.pass;
}

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

function checkOne({ file, cautions }: LoadedJob, mark: string, options: CheckOptions): number {
  const resolution = resolveConnection(indexJob(file), findConnection(file, mark, `--connection ${mark}`));
  const asked = findCapacities(resolution);
  const keepsSteps = options.steps ?? false;
  const explained = explainConnection(resolution, keepsSteps);
  if (options.json) {
    const { answer, combinations, resistances } = explained;
    writeJson({
      engine: ENGINE_VERSION,
      standard: file.library.rules.standard,
      ...answer,
      ratio: toJsonNumber(answer.ratio),
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
    process.stdout.write(
      `${printConnection({ resolution, standard: file.library.rules.standard, explained, asked, bolt, keepsSteps, cautions, width })}\n`,
    );
  }
  return exitOf([explained.answer]);
}

function section(title: string, text: string): string {
  return text === '' ? '' : `\n${title}\n${text}\n`;
}

/** What fails and where to go on from there, then what is not covered, then what to look at. */
function printReasons(connections: readonly ConnectionAnswer[], width: number): readonly string[] {
  const failing = listFailing(connections, width);
  const next = 'onepour choose JOB MARK tries other inserts, for one of these or all';
  return [
    ...failing,
    ...(failing.length === 0 ? [] : [layText(next, width, '    ')]),
    ...listReasons(connections, width),
    ...listWarnings(connections, width),
  ];
}

/** The answer for a job as a page of text. */
export function printJob(job: LoadedJob, answer: JobAnswer, width: number): string {
  const { project } = job.file.job;
  const { connections } = answer;
  return [
    `${layText(`${project.name}, checked by ${job.file.library.rules.standard} with engine ${ENGINE_VERSION}`, width)}\n\n`,
    connections.length === 0
      ? `${layText('No connection in this job: nothing to check. Add rows to connections.csv and inserts.csv, or connections to the job file.', width, '', '')}\n`
      : `${printConnections(connections, width)}\n`,
    section('Why not, and what to look at', printReasons(connections, width).join('\n')),
    section(
      'Taken as given',
      [...job.assumptions.map((text) => layPoint(text, width)), printAssumptions(connections, width)]
        .filter((text) => text !== '')
        .join('\n'),
    ),
    section('Not computed', printOthers(answer, width)),
    `\n${printCounts(answer, width)}\n`,
    section('Cautions', job.cautions.map((text) => layPoint(text, width)).join('\n')),
  ].join('');
}

/**
 * Checks a job, a panel of it, or one connection in full; by further standards side by side where they are named.
 * @returns the exit code
 * @throws UsageError where the job cannot be read or has no such panel, connection or standard
 */
export function runCheck(path: string, options: CheckOptions): number {
  const { also, by, connection, json } = options;
  const job = ruleJob(loadJob(path), by);
  if (also !== undefined) {
    if (by !== undefined)
      throw new UsageError("--by: not together with --also, which starts from the job's own standard");
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
      connections: answer.connections.map((connection) => ({ ...connection, ratio: toJsonNumber(connection.ratio) })),
    });
  else process.stdout.write(printJob(chosen, answer, findPageWidth()));
  return exitOf(answer.connections);
}

/** The job with one panel only; the whole job where none is named. */
function choosePanel(job: LoadedJob, mark: string | undefined): LoadedJob {
  if (mark === undefined) return job;
  const { panels, castIns, connections } = job.file.job;
  const marks = panels.map((panel) => panel.mark);
  if (!marks.includes(mark)) throw refuseMark(`--panel ${mark}`, mark, marks, 'panels');
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
