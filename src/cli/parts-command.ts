import { listBagLabels, listBench } from '../assess/parts/bench.ts';
import { answerParts, type PartsAnswer } from '../assess/parts/parts-answer.ts';
import type { SparesRule } from '../assess/parts/spares.ts';
import { listBenchRows, listLabelRows, listPartRows } from '../drawing/lists/part-rows.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import { readOrders, readStock } from '../files/csv/read-stock.ts';
import { writeBench, writeLabels, writeParts } from '../files/csv/write-parts.ts';
import { indexJob } from '../job/job-index.ts';
import { EXIT } from './exit-codes.ts';
import { loadJob } from './load-job.ts';
import { findPageWidth } from './page-width.ts';
import { checkFlags, type ListName, loadList, type PartsFlags, readListName, readToday } from './parts-options.ts';
import { printParts } from './print/parts.ts';
import { checkTarget, writeTarget } from './write-file.ts';

const exitOf: Readonly<Record<PartsAnswer['state'], number>> = {
  complete: EXIT.pass,
  short: EXIT.notPassed,
  open: EXIT.notChecked,
};

/** The answer as JSON: what was asked for, without the set-outs it was counted from. */
function writeJson(job: string, answer: PartsAnswer, rule: SparesRule): void {
  const { scope, today, pours, castings, needs, counts, shortages, lookAlikes, open, errors, notes, state } = answer;
  const isWhole = scope.pour === null && scope.panel === null;
  const written = {
    engine: ENGINE_VERSION,
    job,
    today,
    ...scope,
    state,
    castings: castings.map(({ setOut: _, parts: { mark, lines }, ...casting }) => ({ panel: mark, ...casting, lines })),
    pours: pours.map((one) => ({
      id: one.plan.pour.id,
      date: one.plan.pour.date,
      bench: listBench(one, rule),
      labels: listBagLabels(one),
    })),
    ...(isWhole ? { needs, counts } : {}),
    shortages,
    lookAlikes,
    open,
    errors,
    notes,
  };
  process.stdout.write(`${JSON.stringify(written, null, 2)}\n`);
}

function makeCsv(
  list: ListName,
  answer: PartsAnswer,
  rule: SparesRule,
): { readonly text: string; readonly rows: number } {
  switch (list) {
    case 'parts': {
      const rows = listPartRows(answer);
      return { text: writeParts(rows), rows: rows.length };
    }
    case 'bench': {
      const rows = listBenchRows(answer.pours, rule);
      return { text: writeBench(rows), rows: rows.length };
    }
    case 'labels': {
      const rows = listLabelRows(answer);
      return { text: writeLabels(rows), rows: rows.length };
    }
  }
}

function writeCsv(csv: string, list: ListName, answer: PartsAnswer, rule: SparesRule): void {
  const { text, rows } = makeCsv(list, answer, rule);
  writeTarget('--csv', csv, text);
  const why = rows > 0 ? '' : list === 'parts' ? ': there is no cast-in item' : ': no pour is planned (docs/parts.md)';
  process.stdout.write(`${rows === 1 ? '1 row' : `${rows} rows`} of ${list} written to ${csv}${why}\n`);
}

/**
 * Lists the parts of a job, of a pour with its bench and bags, or of a panel: what is needed, against stock and orders where they are given.
 * @param now the day that counts as today where none is named
 * @returns the exit code
 * @throws UsageError where the job or a list cannot be read, an option cannot be used or the file cannot be written
 */
export function runParts(path: string, flags: PartsFlags, now: Date): number {
  const today = readToday(flags.today, now);
  const list = readListName(flags);
  const job = loadJob(path);
  checkFlags(job.file, flags);
  if (flags.csv !== undefined)
    checkTarget('--csv', flags.csv, '.csv', flags.overwrite ?? false, ', so that a spreadsheet opens it');
  const stock = loadList('--stock', flags.stock, readStock);
  const orders = loadList('--orders', flags.orders, readOrders);
  const scope = { pour: flags.pour ?? null, panel: flags.panel ?? null };
  const answer = answerParts(indexJob(job.file), scope, { stock, orders, today });
  const rule = job.file.library.yard.spares;
  if (flags.csv !== undefined) writeCsv(flags.csv, list, answer, rule);
  else if (flags.json) writeJson(job.file.job.project.name, answer, rule);
  else process.stdout.write(printParts({ job, path, flags, answer, rule, width: findPageWidth() }));
  return exitOf[answer.state];
}
