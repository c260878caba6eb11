import { columnsOfHeading, findRoles, unitOfHeading } from './heading-words.ts';
import { findDecimalSign, looksLikeNumber, readSurveyNumber } from './read-number.ts';
import { isComment, splitLine, type TextLine, uncomment } from './split-line.ts';
import type { SurveyChoices, SurveyColumns, SurveyReading, SurveySeparator, Told } from './survey-file.ts';

/** A line with its cells. */
export interface CellLine extends TextLine {
  readonly cells: readonly string[];
}

/** How a text is read, and where its points begin. */
export interface FoundReading {
  readonly reading: Omit<SurveyReading, 'encoding'>;
  readonly data: readonly CellLine[];
  readonly passedOver: readonly number[];
}

const SEPARATORS: readonly SurveySeparator[] = ['\t', ';', '|', ',', ' '];
/** So many lines are looked at to find how a file is written. */
const LOOKED_AT = 200;
/** A panel and what stands around it is smaller than this [m], and larger than this [mm]. */
const METRES_BELOW = 60;
const MILLIMETRES_ABOVE = 600;

const isPoint = (cells: readonly string[]) => cells.filter(looksLikeNumber).length >= 2;

function mostFrequent(counts: readonly number[]): number {
  const times = new Map<number, number>();
  for (const count of counts) times.set(count, (times.get(count) ?? 0) + 1);
  return [...times].reduce((best, next) => (next[1] > best[1] ? next : best), [0, 0])[0];
}

/** How many numbers a separator makes, in lines of the number of cells that most lines have. */
function scoreOf(lines: readonly TextLine[], separator: SurveySeparator): number {
  const points = lines
    .filter((line) => !isComment(line, separator))
    .map(({ text }) => splitLine(text, separator))
    .filter(isPoint);
  const usual = mostFrequent(points.map(({ length }) => length));
  return points
    .filter(({ length }) => length === usual)
    .reduce((sum, cells) => sum + cells.filter(looksLikeNumber).length, 0);
}

function findSeparator(lines: readonly TextLine[]): Told<SurveySeparator> | null {
  const some = lines.slice(0, LOOKED_AT);
  const scores = SEPARATORS.map((value) => ({ value, score: scoreOf(some, value) }));
  const best = scores.reduce((a, b) => (b.score > a.score ? b : a));
  if (best.score === 0) return null;
  const isAlone = scores.every(({ value, score }) => value === best.value || score < best.score / 2);
  return { value: best.value, how: isAlone ? 'clear' : 'assumed' };
}

function findDecimal(data: readonly CellLine[], separator: SurveySeparator): Told<'.' | ','> {
  const signs = data
    .slice(0, LOOKED_AT)
    .flatMap(({ cells }) => cells.filter(looksLikeNumber).flatMap((cell) => findDecimalSign(cell) ?? []));
  const count = (mark: '.' | ',', isSure: boolean) =>
    signs.filter((sign) => sign.mark === mark && sign.isSure === isSure).length;
  for (const isSure of [true, false]) {
    const [points, commas] = [count('.', isSure), count(',', isSure)];
    if (points !== commas) {
      const value = points > commas ? '.' : ',';
      const isAlone = Math.min(points, commas) === 0;
      return { value, how: isAlone && (isSure || separator !== ',') ? 'clear' : 'assumed' };
    }
  }
  return { value: '.', how: signs.length === 0 ? 'clear' : 'assumed' };
}

/** Whether a column holds numbers of points and no lengths: whole ones beside columns with decimals, or each one more than the last. */
function isNumbering(columns: readonly (readonly string[])[], decimal: '.' | ','): boolean {
  const [first = [], ...others] = columns;
  if (!first.every((cell) => /^\d{1,6}$/.test(cell))) return false;
  const haveDecimals = others.every((cells) => cells.some((cell) => cell.includes(decimal)));
  const steps = first.slice(1).filter((cell, i) => Number(cell) - Number(first[i]) === 1).length;
  return haveDecimals || (new Set(first).size === first.length && steps >= (first.length - 1) / 2);
}

/** The usual orders, by what the cells hold: a name, a code, two or three coordinates. Which of them is east nobody can tell. */
function guessColumns(data: readonly CellLine[], decimal: '.' | ','): SurveyColumns {
  const usual = mostFrequent(data.map(({ cells }) => cells.length));
  const lines = data.filter(({ cells }) => cells.length === usual).map(({ cells }) => cells);
  const columns = Array.from({ length: usual }, (_, k) => lines.map((cells) => cells[k]!));
  const numeric = columns.flatMap((cells, k) =>
    cells.filter((cell) => readSurveyNumber(cell, decimal) !== null).length > cells.length / 2 ? [k] : [],
  );
  const texts = columns.flatMap((_, k) => (numeric.includes(k) ? [] : [k]));
  const startsWithText = texts.includes(0);
  const isNumbered =
    !startsWithText &&
    numeric.length >= 3 &&
    (numeric.length >= 4 ||
      isNumbering(
        numeric.map((k) => columns[k]!),
        decimal,
      ));
  const places = isNumbered ? numeric.slice(1) : numeric;
  const name = startsWithText || isNumbered ? 0 : null;
  const code = texts.find((k) => k !== name && columns[k]!.some((cell) => cell !== '')) ?? null;
  return { name, x: places[0] ?? 0, y: places[1] ?? 1, z: places[2] ?? null, code };
}

/** From this many values on, those at both ends are left out of the spread: one slip says nothing about the unit. */
const MANY = 5;

/** Metres or millimetres by how far apart the points lie: whatever lies around a panel is not 60 m away, nor within 600 mm. */
function guessUnit(data: readonly CellLine[], { x, y }: SurveyColumns, decimal: '.' | ','): Told<'m' | 'mm'> {
  const spread = Math.max(
    ...[x, y].map((k) => {
      const values = data.flatMap(({ cells }) => readSurveyNumber(cells[k] ?? '', decimal) ?? []).sort((a, b) => a - b);
      const least = values.length < MANY ? 0 : Math.ceil(values.length / 20);
      return values.length < 2 ? 0 : values.at(-1 - least)! - values[least]!;
    }),
  );
  const haveMillimetres = data.some(({ cells }) => /[.,]\d{3,}$/.test(cells[x] ?? ''));
  if (spread > MILLIMETRES_ABOVE) return { value: 'mm', how: 'clear' };
  if (spread > METRES_BELOW) return { value: haveMillimetres ? 'm' : 'mm', how: 'assumed' };
  return { value: 'm', how: spread > 0 && haveMillimetres ? 'clear' : 'assumed' };
}

/** Finds how a text of points is written; what a person chose is taken as it is. Null: no line holds two numbers. */
export function findReading(lines: readonly TextLine[], choices: SurveyChoices): FoundReading | null {
  const separator: Told<SurveySeparator> | null =
    choices.separator === undefined ? findSeparator(lines) : { value: choices.separator, how: 'given' };
  if (separator === null) return null;
  const split = lines.map((line) => ({ ...line, cells: splitLine(line.text, separator.value) }));
  const isData = (line: CellLine) => !isComment(line, separator.value);
  const first = split.findIndex((line) => isData(line) && isPoint(line.cells));
  if (first < 0) return null;
  const above = split[first - 1];
  const heading = above === undefined ? [] : splitLine(uncomment(above.text), separator.value);
  const roles = findRoles(heading);
  const named = columnsOfHeading(roles);
  const data = split.slice(first).filter(isData);
  const decimal: Told<'.' | ','> =
    choices.decimal === undefined ? findDecimal(data, separator.value) : { value: choices.decimal, how: 'given' };
  const columns: Told<SurveyColumns> =
    choices.columns !== undefined
      ? { value: choices.columns, how: 'given' }
      : named === null
        ? { value: guessColumns(data, decimal.value), how: 'assumed' }
        : { value: named, how: 'stated' };
  const stated = unitOfHeading(heading, roles);
  const unit: Told<'m' | 'mm'> =
    choices.unit !== undefined
      ? { value: choices.unit, how: 'given' }
      : stated === null
        ? guessUnit(data, columns.value, decimal.value)
        : { value: stated, how: 'stated' };
  return {
    reading: { separator, decimal, unit, columns, heading: named === null ? null : (above?.number ?? null) },
    data,
    passedOver: split.filter((line, i) => i < first || !isData(line)).map(({ number }) => number),
  };
}
