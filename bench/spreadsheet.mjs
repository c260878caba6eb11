/** A whole group of four inserts in ten combinations, every mode: Onepour against the same formulas in a spreadsheet engine. */

import { makeCase, toContract, toEngine } from './spreadsheet/cases.mjs';
import { openWorkbook, RATIOS } from './spreadsheet/workbook.mjs';
import { timeInTurns } from './timing.mjs';

const CASES = 32;
const SAME = 1e-9;
const LEAST_FORMULA_CELLS = 300;
const SIDES = { left: [-1, 0], right: [1, 0], bottom: [0, -1], top: [0, 1] };

/**
 * @param HyperFormula the spreadsheet engine's class
 * @param parts Onepour's `prepare`, `checkAnchorage`, `explainAnchorage`, `writeAnchorage`, `calculate`
 * @returns rows { name, ours_us, peer_us, ratio, target (null: told, not required) } and the number of formula cells
 * @throws when a ratio of any mode, case and combination is not the same by both to 1e-9
 */
export function benchSpreadsheet(HyperFormula, parts) {
  // Each side takes its inputs in its own form, ready made.
  const cases = Array.from({ length: CASES }, (_, index) => {
    const one = makeCase(index);
    return { sheet: one, engine: toEngine(one), contract: toContract(one) };
  });
  const workbook = openWorkbook(HyperFormula, cases[0].sheet);
  if (workbook.formulaCells < LEAST_FORMULA_CELLS)
    throw new Error(`the workbook has ${workbook.formulaCells} formulas; expected at least ${LEAST_FORMULA_CELLS}`);
  for (const [index, one] of cases.entries()) {
    const sheet = workbook.calculate(one.sheet);
    refuseOther(`case ${index}, as checked`, checkNumbers(parts, one.engine), sheet);
    refuseOther(`case ${index}, as explained`, readGoverning(explain(parts, one.engine)), sheet);
    refuseOther(`case ${index}, as answered`, readGoverning(answer(parts, one.contract)), sheet);
    refuseOtherModes(parts, one.engine, index, workbook.readRatios());
  }

  const pick = (i) => cases[i % CASES];
  const ways = [
    (i) => sum(checkNumbers(parts, pick(i).engine)),
    (i) => sum(workbook.calculate(pick(i).sheet)),
    (i) => sum(readGoverning(explain(parts, pick(i).engine))),
    (i) => sum(workbook.calculate(pick(i).sheet)) + workbook.countAll(),
    (i) => sum(readGoverning(answer(parts, pick(i).contract))),
  ];
  const [numbers, numbersPeer, full, fullPeer, calc] = ways.keys();
  const times = timeInTurns(ways, { roundMs: 60, rounds: 31 });
  const compare = (name, ours, peer, target) => ({
    name,
    ours_us: times.us(ours),
    peer_us: times.us(peer),
    ratio: times.ratio(ours, peer),
    target,
  });
  return {
    formulaCells: workbook.formulaCells,
    rows: [
      compare('4 inserts, 10 combinations: numbers only', numbers, numbersPeer, 100),
      compare('4 inserts, 10 combinations: full results of the contract', full, fullPeer, 25),
      compare('4 inserts, 10 calls of the contract with schema check and geometry each', calc, fullPeer, null),
    ],
  };
}

function sum(numbers) {
  return numbers.reduce((total, number) => total + number, 0);
}

function readGoverning(results) {
  return results.map(({ governing }) => governing.ratio);
}

/** The governing ratio of each combination; the geometry is prepared anew. */
function checkNumbers({ prepare, checkAnchorage }, { group, combinations }) {
  const prepared = prepare(group);
  return combinations.map((actions) => checkAnchorage(prepared, actions).ratio);
}

/** The contract's result of each combination: every row with its factors, edges and notes; the geometry is prepared anew. */
function explain({ prepare, explainAnchorage, writeAnchorage }, { group, combinations }) {
  const prepared = prepare(group);
  return combinations.map((actions) => writeAnchorage(explainAnchorage(prepared, actions, false), [], false));
}

/** The contract's answer to each combination by itself: schema check, geometry, every row. */
function answer({ calculate }, inputs) {
  return inputs.map((input) => calculate(input));
}

function refuseOtherModes({ prepare, explainAnchorage }, { group, combinations }, index, sheet) {
  const prepared = prepare(group);
  for (const [k, actions] of combinations.entries()) {
    const result = explainAnchorage(prepared, actions, false);
    const names = Object.values(RATIOS);
    const ours = names.map((name) => findRatio(result, name));
    for (const [i, name] of names.entries())
      refuseOther(`case ${index}, combination ${k}, ${name}`, [ours[i]], [sheet[k][i]]);
    const rows = result.rows.length + result.interaction.length + 1;
    const inSheet = sheet[k].filter((ratio) => ratio !== 0).length;
    if (rows !== inSheet || result.uncovered.length > 0)
      throw new Error(
        `case ${index}, combination ${k}: ${rows} results, ${inSheet} in the sheet; ${result.uncovered.join('; ')}`,
      );
  }
}

/** The ratio that the engine gives for "mode", "mode part" or "mode edge"; 0 for a row behind that need not be checked. */
function findRatio(result, name) {
  const [mode, detail, behind] = name.split(' ');
  if (mode === 'governing') return result.governing.ratio;
  if (mode === 'interaction') return result.interaction.find(({ kind }) => kind === detail).ratio;
  const rows = result.rows.filter((row) => row.mode === mode && (row.part === null || row.part === detail));
  if (mode !== 'concrete-edge') return rows[0].ratio;
  const [nx, ny] = SIDES[detail];
  const toward = rows.filter(({ direction }) => Math.cos(direction) * nx + Math.sin(direction) * ny > 1 - 1e-9);
  return behind === undefined ? toward[0].ratio : (toward[1]?.ratio ?? 0);
}

function refuseOther(what, ours, sheet) {
  for (const [i, mine] of ours.entries())
    if (!(mine === sheet[i] || Math.abs(mine / sheet[i] - 1) <= SAME))
      throw new Error(`${what}, number ${i}: ours ${mine}, the sheet's ${sheet[i]}; expected the same to ${SAME}`);
}
