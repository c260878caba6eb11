import type { Sureness, SurveyColumns, SurveyReading, SurveySeparator } from '../../../files/survey/survey-file.ts';

export const SEPARATOR_WORDS: Readonly<Record<SurveySeparator, string>> = {
  ';': 'semicolons',
  '\t': 'tabs',
  ',': 'commas',
  '|': 'upright strokes',
  ' ': 'spaces',
};

export const DECIMAL_WORDS = { '.': 'decimal points', ',': 'decimal commas' } as const;
export const UNIT_WORDS = { m: 'metres', mm: 'millimetres' } as const;

/** How sure a part of the reading is. */
export const SURE_WORDS: Readonly<Record<Sureness, string>> = {
  given: 'chosen by you',
  stated: 'the heading says so',
  clear: 'clear from the numbers',
  assumed: 'assumed: nothing in the file tells. Look at it',
};

const PARTS = ['name', 'x', 'y', 'z', 'code'] as const;

/** What a cell is, for people; x is east, or right on a panel. */
const CELL_WORDS: Readonly<Record<(typeof PARTS)[number], string>> = {
  name: 'name',
  x: 'east (x)',
  y: 'north (y)',
  z: 'height (z)',
  code: 'code',
};

/** The cells of a line in their order: `name, north (y), east (x), height (z)`. */
export function tellColumns(columns: SurveyColumns): string {
  return PARTS.flatMap((part) => {
    const at = columns[part];
    return at === null ? [] : [{ part, at }];
  })
    .sort((a, b) => a.at - b.at)
    .map(({ part, at }, k, all) =>
      all[k - 1]?.at === at - 1 || (k === 0 && at === 0) ? CELL_WORDS[part] : `${at + 1}th cell ${CELL_WORDS[part]}`,
    )
    .join(', ');
}

/** East and north the other way round: right where the file's order was taken wrongly, or the panel lay on its drawn face. */
export function exchangeAxes(columns: SurveyColumns): SurveyColumns {
  return { ...columns, x: columns.y, y: columns.x };
}

/** How a file was read, in one sentence for its record. */
export function tellReading({ separator, decimal, unit, columns, encoding }: SurveyReading): string {
  return `${SEPARATOR_WORDS[separator.value]}, ${DECIMAL_WORDS[decimal.value]}, ${UNIT_WORDS[unit.value]}; ${tellColumns(columns.value)}; ${encoding}`;
}
