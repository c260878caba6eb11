// Runs every benchmark and prints one table; ends with 1 where a target is missed. Started by scripts/bench.mjs, which
// bundles Onepour's parts to dist/engine-parts.mjs first.

import { HyperFormula } from 'hyperformula';
import polygonClipping from 'polygon-clipping';
import { benchAreas } from './areas.mjs';
import { benchOneChoice, benchWholeChoice } from './choose.mjs';
import { benchClash } from './clash.mjs';
import { benchClearanceProbability } from './clearance-probability.mjs';
import * as parts from './dist/engine-parts.mjs';
import { benchEditions } from './editions.mjs';
import { benchFolder } from './folder.mjs';
import { benchHoleFit } from './hole-fit.mjs';
import { benchPlates } from './plates.mjs';
import { benchSpreadsheet } from './spreadsheet.mjs';
import { benchWholeJob } from './whole-job.mjs';
import { benchZone } from './zone.mjs';

const LARGEST_RESIDUAL = 1e-9;
const WHOLE_JOB_FACTOR = 1.5;
const WHOLE_JOB_MB = 300;
const EDITION_FACTOR = 1.05;
const CLASH_RATIO = 50;
const CHANCE_RATIO = 20;
const CHANCE_MEDIAN = 100;
/** Four times the panels may take four times as long, and a quarter more. */
const FOLDER_FACTOR = 4 * 1.25;
const FOLDER_MB = 500;
/** The movement of a plate with eight holes [µs]. */
const HOLE_FIT_US = 200;
/** Where an insert of four may sit under ten combinations [ms], and full checks for it. */
const ZONE_MS = 100;
const ZONE_CHECKS = 2000;
const CHOICE_FACTOR = 1.2;
/** Four times the job may take four times as long, and a quarter more. */
const WHOLE_CHOICE_FACTOR = 4 * 1.25;

const start = performance.now();
const lines = [
  ...(await section('the same formulas in a spreadsheet engine', measureSpreadsheet)),
  ...(await section('exact areas against a polygon library', measureAreas)),
  ...(await section('plates', measurePlates)),
  ...(await section('the choice of the edition', measureEditions)),
  ...(await section('a whole job', measureWholeJob)),
  ...(await section('choosing inserts', measureChoice)),
  ...(await section('clashes in the form', measureClash)),
  ...(await section('plates over their bolts', measureHoleFit)),
  ...(await section('chances that plates go on', measureChances)),
  ...(await section('where inserts may sit', measureZone)),
  ...(await section('a pour folder', measureFolder)),
];
printTable(lines);
const required = lines.filter(({ met }) => met !== null);
const missed = required.filter(({ met }) => !met);
const seconds = ((performance.now() - start) / 1000).toFixed(0);
say('');
say('Ours and the peer take turns in one process; times and ratios are medians of the rounds (areas: least times).');
say(
  'Other work on the machine moves the times more than the ratios; run again before reading much into a few percent.',
);
say(
  `${required.length - missed.length} targets met, ${missed.length} missed, in ${seconds} s (Node ${process.versions.node})`,
);
process.exitCode = missed.length === 0 ? 0 : 1;

async function section(name, measure) {
  process.stderr.write(`bench: ${name} …\n`);
  return measure();
}

function measureSpreadsheet() {
  const { formulaCells, rows } = benchSpreadsheet(HyperFormula, parts);
  return rows.map((row) => compareTimes({ ...row, name: `${row.name} (${formulaCells} formula cells)` }));
}

async function measureAreas() {
  return (await benchAreas(polygonClipping, parts)).map(compareTimes);
}

function compareTimes({ name, ours_us, peer_us, ratio, target }) {
  return {
    name,
    ours: showUs(ours_us),
    peer: showUs(peer_us),
    ratio: `${ratio.toFixed(ratio < 100 ? 1 : 0)} x`,
    target: target === null ? 'none' : `>= ${target} x`,
    met: target === null ? null : ratio >= target,
  };
}

async function measurePlates() {
  return (await benchPlates(parts)).flatMap(({ name, ours_us, target_us, worstResidual, solved, count }) => [
    {
      name: `plate: ${name}, mean of ${count}`,
      ours: showUs(ours_us),
      target: `<= ${target_us} us`,
      met: ours_us <= target_us,
    },
    {
      name: `plate: ${name}, residual below ${LARGEST_RESIDUAL}`,
      ours: `${solved} (worst ${worstResidual.toExponential(1)})`,
      target: `all ${count}`,
      met: solved === count && worstResidual < LARGEST_RESIDUAL,
    },
  ]);
}

async function measureEditions() {
  const { aloneUs, mixedUs, ratio } = await benchEditions();
  return [
    {
      name: 'EN 1992-4 among four editions; peer: in a process that knows it alone',
      ours: showUs(mixedUs),
      peer: showUs(aloneUs),
      ratio: `${ratio.toFixed(3)} x`,
      target: `<= ${EDITION_FACTOR} x`,
      met: ratio <= EDITION_FACTOR,
    },
  ];
}

async function measureWholeJob() {
  const { connections, singleMs, passMs, peakMB } = await benchWholeJob();
  const ratio = passMs / singleMs;
  return [
    {
      name: `${connections} connections in one pass; peer: as many single checks`,
      ours: `${passMs.toFixed(0)} ms`,
      peer: `${singleMs.toFixed(0)} ms`,
      ratio: `${ratio.toFixed(2)} x`,
      target: `<= ${WHOLE_JOB_FACTOR} x`,
      met: ratio <= WHOLE_JOB_FACTOR,
    },
    {
      name: `${connections} connections: resident memory`,
      ours: `${peakMB.toFixed(0)} MB`,
      target: `< ${WHOLE_JOB_MB} MB`,
      met: peakMB < WHOLE_JOB_MB,
    },
  ];
}

function measureChoice() {
  const { inserts, combinations, ours_us, check, modes } = benchOneChoice(parts);
  const whole = benchWholeChoice(parts);
  const compare = (name, { us, ratio }, target) => ({
    name: `${inserts} inserts tried in a connection of ${combinations} combinations; peer: as many ${name}`,
    ours: showUs(ours_us),
    peer: showUs(us),
    ratio: `${ratio.toFixed(2)} x`,
    target: `<= ${target} x`,
    met: ratio <= target,
  });
  return [
    compare('numbers-only checks of it', check, CHOICE_FACTOR),
    compare('numbers-only runs of its modes, forces ready', modes, CHOICE_FACTOR),
    {
      name: `choosing for a job of ${whole.inserts} inserts; peer: for a quarter of it`,
      ours: `${whole.largeMs.toFixed(0)} ms`,
      peer: `${whole.smallMs.toFixed(0)} ms`,
      ratio: `${whole.ratio.toFixed(2)} x`,
      target: `<= ${WHOLE_CHOICE_FACTOR} x`,
      met: whole.ratio <= WHOLE_CHOICE_FACTOR,
    },
  ];
}

function measureClash() {
  const { inserts, bars, clashes, ours_us, peer_us, ratio } = benchClash(parts);
  return [
    {
      name: `${inserts} inserts against ${bars} bars, ${clashes} clashes; peer: the loop over all pairs`,
      ours: showUs(ours_us),
      peer: showUs(peer_us),
      ratio: `${ratio.toFixed(0)} x`,
      target: `>= ${CLASH_RATIO} x`,
      met: ratio >= CLASH_RATIO,
    },
  ];
}

function measureHoleFit() {
  const { plates, unproven, worstProof, ours_us, peer_us, ratio } = benchHoleFit(parts);
  return [
    {
      name: 'a plate of 8 holes over its bolts, median; peer: grids drawn in to 0.001 mm',
      ours: showUs(ours_us),
      peer: showUs(peer_us),
      ratio: `${ratio.toFixed(0)} x`,
      target: `<= ${HOLE_FIT_US} us`,
      met: ours_us <= HOLE_FIT_US,
    },
    {
      name: `a plate of 8 holes: not proven within 0.001 mm, of ${plates}`,
      ours: `${unproven} (worst ${worstProof.toExponential(1)} mm)`,
      target: 'none',
      met: unproven === 0,
    },
  ];
}

function measureZone() {
  const { insert_ms, group_ms, checks } = benchZone(parts);
  const line = (name, ms) => ({
    name,
    ours: `${ms.toFixed(0)} ms`,
    target: `<= ${ZONE_MS} ms`,
    met: ms <= ZONE_MS,
  });
  return [
    line('zone of one insert of four, ten combinations, median', insert_ms),
    line('zone of the group of four, ten combinations, median', group_ms),
    { name: 'zones: full checks, at most', ours: `${checks}`, target: `<= ${ZONE_CHECKS}`, met: checks <= ZONE_CHECKS },
  ];
}

function measureChances() {
  const rows = benchClearanceProbability(parts);
  const sorted = rows.map(({ ratio }) => ratio).toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  const median = (sorted[middle - 1] + sorted[middle]) / 2;
  return [
    ...rows.map(({ name, chance, standardError, plates, ours_us, peer_us, ratio }) => ({
      name: `chance of ${name}: ${chance.toFixed(5)} ± ${standardError.toExponential(0)}; peer: ${plates.toExponential(0)} plates`,
      ours: showUs(ours_us),
      peer: showUs(peer_us),
      ratio: `${ratio.toPrecision(3)} x`,
      target: `>= ${CHANCE_RATIO} x`,
      met: ratio >= CHANCE_RATIO,
    })),
    {
      name: `chances: median of ${rows.length} cases`,
      ratio: `${median.toPrecision(3)} x`,
      target: `>= ${CHANCE_MEDIAN} x`,
      met: median >= CHANCE_MEDIAN,
    },
    {
      name: 'chances: within three standard errors of plates drawn one by one',
      ours: `${rows.filter(({ agrees }) => agrees).length} of ${rows.length}`,
      target: 'all',
      met: rows.every(({ agrees }) => agrees),
    },
  ];
}

async function measureFolder() {
  const { panels, inserts, pages, largeMs, smallMs, ratio, peakMB, part } = await benchFolder();
  const what = `folder of ${panels} panels, ${inserts} inserts, ${pages} pages`;
  return [
    {
      name: `${what}; peer: one of a ${part}th of the panels`,
      ours: `${largeMs.toFixed(0)} ms`,
      peer: `${smallMs.toFixed(0)} ms`,
      ratio: `${ratio.toFixed(2)} x`,
      target: `<= ${FOLDER_FACTOR} x`,
      met: ratio <= FOLDER_FACTOR,
    },
    { name: `${what}: pages a second`, ours: ((1000 * pages) / largeMs).toFixed(0), target: 'none', met: null },
    {
      name: `${what}: resident memory`,
      ours: `${peakMB.toFixed(0)} MB`,
      target: `< ${FOLDER_MB} MB`,
      met: peakMB < FOLDER_MB,
    },
  ];
}

function showMet(met) {
  if (met === null) return '-';
  return met ? 'yes' : 'NO';
}

function showUs(us) {
  return us < 1000 ? `${us.toPrecision(3)} us` : `${(us / 1000).toPrecision(3)} ms`;
}

function printTable(rows) {
  const columns = ['name', 'ours', 'peer', 'ratio', 'target', 'met'];
  const texts = rows.map((row) =>
    columns.map((column) => (column === 'met' ? showMet(row.met) : (row[column] ?? '-'))),
  );
  const widths = columns.map((column, i) => Math.max(column.length, ...texts.map((text) => text[i].length)));
  const write = (cells) =>
    say(cells.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join('  '));
  write(columns);
  write(widths.map((width) => '-'.repeat(width)));
  for (const text of texts) write(text);
}

function say(line) {
  process.stdout.write(`${line}\n`);
}
