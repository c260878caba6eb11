import { assessConnection } from '../assess/assess-connection.ts';
import { findCapacities, findCapacityLine } from '../assess/capacities.ts';
import type { ConnectionAnswer } from '../assess/connection-answer.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import { indexJob } from '../job/job-index.ts';
import { resolveConnection } from '../job/resolve/resolve-connection.ts';
import { writeCapacities, writeCapacityLine } from './capacity-json.ts';
import { EXIT } from './exit-codes.ts';
import { findConnection } from './find-connection.ts';
import { type LoadedJob, loadJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import { printBasis } from './print/basis.ts';
import { type ListedCapacity, printCapacities, printCapacityList } from './print/capacities.ts';
import { printAssumptions } from './print/job.ts';
import { layPoint, layText } from './print/table.ts';
import { Progress } from './progress.ts';
import { ruleJob } from './rule-job.ts';

/** Options of `onepour carries`. */
export interface CarriesOptions {
  readonly json?: boolean;
  /** Another standard in place of the job's own. */
  readonly by?: string;
}

function writeJson(value: object): void {
  process.stdout.write(`${JSON.stringify({ engine: ENGINE_VERSION, ...value }, null, 2)}\n`);
}

function list({ file }: LoadedJob): readonly ListedCapacity[] {
  const { connections } = file.job;
  const index = indexJob(file);
  const progress = new Progress('asking what connections carry');
  const listed = connections.map((connection, i) => {
    const resolution = resolveConnection(index, connection);
    const { mark, panel, face } = resolution;
    const inserts = connection.inserts.map(({ insert }) => insert);
    progress.tell(i, connections.length);
    return { mark, panel, face, inserts, asked: findCapacityLine(resolution) };
  });
  progress.end();
  return listed;
}

function listAll(job: LoadedJob, options: CarriesOptions): number {
  const { project } = job.file.job;
  const { standard } = job.file.library.rules;
  const listed = list(job);
  if (options.json)
    writeJson({
      job: project.name,
      standard,
      connections: listed.map(({ asked, ...head }) => ({
        ...head,
        ...(asked.kind === 'computed'
          ? { carries: writeCapacityLine(asked.value) }
          : { carries: null, reasons: asked.reasons }),
      })),
    });
  else {
    const width = findPageWidth();
    const head = `${project.name}: what each connection carries at most, by ${standard} with engine ${ENGINE_VERSION}`;
    process.stdout.write(`${layText(head, width, '', '')}\n\n${printCapacityList(listed, job.cautions, width)}`);
  }
  if (listed.length === 0) return EXIT.notChecked;
  const isClean = listed.every(({ asked }) => asked.kind === 'computed' && asked.value.reasons.length === 0);
  return isClean ? EXIT.pass : EXIT.notPassed;
}

/** What a number of this page never is. */
const NO_PASS = 'No number here is a pass: what the connection must carry is checked by onepour check.';

function printTaken(answer: ConnectionAnswer, width: number): string[] {
  return answer.assumptions.length === 0 ? [] : ['', 'Taken as given', printAssumptions([answer], width)];
}

function askOne({ file, cautions }: LoadedJob, mark: string, options: CarriesOptions): number {
  const resolution = resolveConnection(indexJob(file), findConnection(file, mark, mark));
  const { panel, face } = resolution;
  const { standard } = file.library.rules;
  const answer = assessConnection(resolution);
  const asked = findCapacities(resolution);
  const width = findPageWidth();
  if (options.json)
    writeJson({
      standard,
      mark,
      panel,
      face,
      state: answer.state,
      ...(asked.kind === 'computed'
        ? { carries: writeCapacities(asked.value) }
        : { carries: null, reasons: asked.reasons }),
    });
  else
    process.stdout.write(
      [
        layText(`Connection ${mark}, panel ${panel}, ${face}, by ${standard} with engine ${ENGINE_VERSION}`, width),
        printBasis(resolution, answer, width),
        '',
        ...(asked.kind === 'computed'
          ? [printCapacities(asked.value, width)]
          : ['CANNOT BE COMPUTED', ...asked.reasons.map((reason) => layPoint(reason, width))]),
        ...printTaken(answer, width),
        '',
        'Cautions',
        ...[NO_PASS, ...cautions].map((text) => layPoint(text, width)),
        '',
      ].join('\n'),
    );
  return asked.kind === 'computed' && asked.value.reasons.length === 0 ? EXIT.pass : EXIT.notPassed;
}

/**
 * Says what each connection of a job carries at most, or one in full. It checks no load.
 * @returns the exit code
 * @throws UsageError where the job cannot be read or has no such connection
 */
export function runCarries(path: string, mark: string | undefined, options: CarriesOptions): number {
  const job = ruleJob(loadJob(path), options.by);
  return mark === undefined ? listAll(job, options) : askOne(job, mark, options);
}
