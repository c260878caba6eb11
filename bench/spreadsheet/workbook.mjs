/** Lays the formulas out in two sheets of a workbook: "Group" (names in A, values in B) and "Loads" (a row a combination). */

import { CHANGING, COMBINATION_FORMULAS, CONSTANTS, GROUP_FORMULAS, LOADS } from './formulas.mjs';

/** What is read from each row of "Loads"; the mode and part or edge that the engine gives the same number for. */
export const RATIOS = {
  steel_tension_bolt: 'steel-tension bolt',
  steel_tension_body: 'steel-tension body',
  cone: 'concrete-cone',
  pull_out: 'pull-out',
  blow_out: 'blow-out',
  splitting: 'splitting',
  steel_shear_bolt: 'steel-shear bolt',
  steel_shear_body: 'steel-shear body',
  pry_out: 'pry-out',
  edge_left: 'concrete-edge left',
  edge_right: 'concrete-edge right',
  edge_bottom: 'concrete-edge bottom',
  edge_top: 'concrete-edge top',
  edge_left_behind: 'concrete-edge left behind',
  edge_right_behind: 'concrete-edge right behind',
  edge_bottom_behind: 'concrete-edge bottom behind',
  edge_top_behind: 'concrete-edge top behind',
  steel_together: 'interaction steel',
  concrete_together: 'interaction concrete',
  governing: 'governing',
};

const GROUP_NAMES = [...CHANGING, ...Object.keys(CONSTANTS), ...Object.keys(GROUP_FORMULAS)];
const LOAD_NAMES = [...LOADS, ...Object.keys(COMBINATION_FORMULAS)];

/**
 * Builds the workbook for a first case.
 * @param HyperFormula the spreadsheet engine's class
 * @param first a case: `group` (values of CHANGING), `loads` (a row of LOADS for each combination)
 * @returns the number of formula cells, `calculate(case)` that sets the inputs in one batch and reads the governing ratio of
 *   each combination, `countAll()` that reads every cell, and `readRatios()` of all modes, a row a combination in the order
 *   of RATIOS
 */
export function openWorkbook(HyperFormula, first) {
  const combinations = first.loads.length;
  const groupSheet = [
    ...CHANGING.map((name, i) => [name, first.group[i]]),
    ...Object.entries(CONSTANTS),
    ...Object.entries(GROUP_FORMULAS).map(([name, formula]) => [name, writeFormula(formula, 1)]),
  ];
  const loadSheet = first.loads.map((loads, row) => [
    ...loads,
    ...Object.values(COMBINATION_FORMULAS).map((formula) => writeFormula(formula, row + 1)),
  ]);
  // Rounding of results off: exact numbers are compared, and the engine is quicker without.
  const config = { licenseKey: 'gpl-v3', smartRounding: false, useStats: false };
  const workbook = HyperFormula.buildFromSheets({ Group: groupSheet, Loads: loadSheet }, config);
  const [group, loads] = ['Group', 'Loads'].map((name) => workbook.getSheetId(name));
  const groupInputs = { sheet: group, row: 0, col: 1 };
  const loadInputs = { sheet: loads, row: 0, col: 0 };
  const column = (name) => LOAD_NAMES.indexOf(name);
  const read = (name) => {
    const col = column(name);
    return Array.from({ length: combinations }, (_, row) => workbook.getCellValue({ sheet: loads, row, col }));
  };
  return {
    formulaCells: Object.keys(GROUP_FORMULAS).length + combinations * Object.keys(COMBINATION_FORMULAS).length,
    calculate(next) {
      workbook.batch(() => {
        workbook.setCellContents(
          groupInputs,
          next.group.map((value) => [value]),
        );
        workbook.setCellContents(loadInputs, next.loads);
      });
      return read('governing');
    },
    /** Reads every cell of both sheets, as a full result does. */
    countAll() {
      let count = 0;
      for (const sheet of [group, loads]) for (const row of workbook.getSheetValues(sheet)) count += row.length;
      return count;
    },
    readRatios() {
      const columns = Object.keys(RATIOS).map(read);
      return Array.from({ length: combinations }, (_, row) => columns.map((values) => values[row]));
    },
  };
}

/** A formula with its names replaced by cells; `row` is that of the combination, counted from 1. */
function writeFormula(formula, row) {
  const cells = formula.replace(/[A-Za-z_][A-Za-z_0-9]*/g, (name, at) => {
    const load = LOAD_NAMES.indexOf(name);
    if (load >= 0) return `${nameColumn(load)}${row}`;
    const group = GROUP_NAMES.indexOf(name);
    if (group >= 0) return `Group!$B$${group + 1}`;
    if (formula[at + name.length] === '(') return name;
    throw new Error(`"${name}" in the formula "${formula}" names no cell`);
  });
  return `=${cells}`;
}

/** 0 → A, 25 → Z, 26 → AA. */
function nameColumn(index) {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : nameColumn(Math.floor(index / 26) - 1) + letter;
}
