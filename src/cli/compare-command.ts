import { type Comparison, compareEditions, compareModes } from '../assess/compare-editions.ts';
import type { ConnectionAnswer } from '../assess/connection-answer.ts';
import { toJsonNumber } from '../calc/json-number.ts';
import { type StandardName, standardNames } from '../engine/standards/standard-name.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import { UsageError } from './exit-codes.ts';
import { findConnection } from './find-connection.ts';
import type { LoadedJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import {
  printComparison,
  printDifferences,
  printEditionCounts,
  printEditionReasons,
  printModeComparison,
} from './print/editions.ts';
import { layPoint, layText } from './print/table.ts';
import { Progress } from './progress.ts';
import { OWN_FACTORS } from './rule-job.ts';

/**
 * The job's own standard and those asked for beside it.
 * @throws UsageError where a name is not known, or is there already
 */
function readStandards(own: StandardName, also: readonly string[]): readonly StandardName[] {
  const standards: StandardName[] = [own];
  for (const name of also) {
    const standard = standardNames.find((known) => known === name);
    const others = standardNames.filter((known) => !standards.includes(known));
    const expected = `expected ${others.map((other) => `"${other}"`).join(' or ')}`;
    if (standard === undefined) throw new UsageError(`--also "${name}": not known, ${expected}`);
    if (standards.includes(standard))
      throw new UsageError(
        standard === own
          ? `--also "${name}": the standard of the job's own rules, ${expected}`
          : `--also "${name}": named twice, ${expected}`,
      );
    standards.push(standard);
  }
  return standards;
}

function writeComparison({ file }: LoadedJob, comparison: Comparison, modes: ReturnType<typeof compareModes> | null) {
  const { standards, connections, counts } = comparison;
  return {
    engine: ENGINE_VERSION,
    job: file.job.project.name,
    standards,
    connections: connections.map(({ mark, answers, differs }) => ({
      mark,
      panel: answers[0]!.panel,
      face: answers[0]!.face,
      inserts: answers[0]!.inserts,
      differs,
      answers: answers.map(({ state, ratio, governing, reasons }, i) => ({
        standard: standards[i],
        state,
        ratio: toJsonNumber(ratio),
        governing,
        reasons,
      })),
    })),
    ...(modes === null ? {} : { modes: modes.map(({ mode, ratios }) => ({ mode, ratios: ratios.map(toJsonNumber) })) }),
    counts: counts.map((own, i) => ({ standard: standards[i], ...own })),
  };
}

function printPage(
  { file, cautions }: LoadedJob,
  comparison: Comparison,
  modes: ReturnType<typeof compareModes> | null,
  width: number,
): string {
  const head = `${file.job.project.name}, checked side by side by ${comparison.standards.join(', ')} with engine ${ENGINE_VERSION}`;
  if (comparison.connections.length === 0)
    return `${layText(head, width)}\n\n${layText('No connection in this job: nothing to compare. Add rows to connections.csv and inserts.csv, or connections to the job file.', width, '', '')}\n`;
  return [
    `${layText(head, width)}\n\n${printComparison(comparison, width)}\n`,
    modes === null || modes.length === 0
      ? ''
      : `\nMode by mode, the most used first\n${printModeComparison(modes, comparison, width)}\n`,
    `\nWhat differs\n${printDifferences(comparison, width)}\n`,
    printEditionReasons(comparison, width),
    `\n${printEditionCounts(comparison, width)}\n`,
    `\nCautions\n${[OWN_FACTORS, ...cautions].map((text) => layPoint(text, width)).join('\n')}\n`,
  ].join('');
}

/**
 * Shows a job, or one connection of it, by its own standard and others side by side.
 * @returns every answer, for the exit code
 * @throws UsageError where a standard or the connection is not there
 */
export function showComparison(
  job: LoadedJob,
  options: { readonly also: readonly string[]; readonly connection?: string | undefined; readonly json?: boolean },
): readonly ConnectionAnswer[] {
  const { file } = job;
  const standards = readStandards(file.library.rules.standard, options.also);
  const { connection } = options;
  const connections =
    connection === undefined ? file.job.connections : [findConnection(file, connection, `--connection ${connection}`)];
  const asked = { ...file, job: { ...file.job, connections } };
  const progress = new Progress('checking connections');
  const comparison = compareEditions(asked, standards, (done, total) => progress.tell(done, total));
  progress.end();
  const modes = connection === undefined ? null : compareModes(asked, connection, standards);
  process.stdout.write(
    options.json
      ? `${JSON.stringify(writeComparison(job, comparison, modes), null, 2)}\n`
      : printPage(job, comparison, modes, findPageWidth()),
  );
  return comparison.connections.flatMap(({ answers }) => answers);
}
