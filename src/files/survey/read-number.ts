/** Spaces of any width, and apostrophes, between groups of three digits. */
const GROUPED = /(?<=\d)[ \u00A0\u2009\u202F'\u2019](?=\d{3}(?!\d))/g;
const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?$/;
const POINTS = /^[+-]?\d{1,3}(\.\d{3})+(,\d*)?$/;
const COMMAS = /^[+-]?\d{1,3}(,\d{3})+(\.\d*)?$/;

function plain(text: string): string {
  return text.replace('\u2212', '-').replace(GROUPED, '');
}

/** Whether a cell reads as a number in some way of writing one. */
export function looksLikeNumber(text: string): boolean {
  const bare = plain(text);
  return NUMBER.test(bare) || POINTS.test(bare) || COMMAS.test(bare);
}

/** A cell as number, by the decimal mark of its file; the other mark may stand between groups of three digits. Null: it is none. */
export function readSurveyNumber(text: string, decimal: '.' | ','): number | null {
  const bare = plain(text);
  const other = decimal === '.' ? ',' : '.';
  const isGrouped = (decimal === '.' ? COMMAS : POINTS).test(bare);
  const ungrouped = isGrouped ? bare.replaceAll(other, '') : bare;
  if (!NUMBER.test(ungrouped) || ungrouped.includes(other)) return null;
  const value = Number(ungrouped.replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

/** What one cell says of the decimal mark of its file. `sure`: it can be read in no other way. */
export function findDecimalSign(text: string): { readonly mark: '.' | ','; readonly isSure: boolean } | null {
  const bare = plain(text);
  const marks = bare.match(/[.,]/g) ?? [];
  const last = marks.at(-1);
  if (last !== '.' && last !== ',') return null;
  const other = last === '.' ? ',' : '.';
  // Twice the same mark stands between groups; of two different ones the last is the decimal mark.
  if (marks.length > 1) return { mark: marks.every((mark) => mark === last) ? other : last, isSure: true };
  const [head = '', tail = ''] = bare.replace(/^[+-]/, '').split(last);
  return { mark: last, isSure: tail.length !== 3 || head.length > 3 || head === '' || head === '0' };
}
