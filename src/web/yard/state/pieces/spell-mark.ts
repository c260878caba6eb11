/** Which marks begin with what was spelled so far, and which sign may come next: keys for these alone, since no other mark exists. */
export interface Spelling {
  readonly found: readonly string[];
  readonly next: readonly string[];
}

/** More are spelled on; so many or fewer are shown as keys. */
const FEW = 6;

/**
 * @param marks that exist
 * @param spelled signs so far; signs that all found marks share are passed over: `P` of `P01 … P13` needs no tap
 */
export function spellMark(marks: readonly string[], spelled: string): Spelling {
  const all = [...new Set(marks)];
  const found = all.filter((mark) => mark.startsWith(spelled));
  if (found.length <= FEW) return { found, next: [] };
  const shared = sharedStart(found);
  const next = new Set(found.filter((mark) => mark.length > shared.length).map((mark) => shared + mark[shared.length]));
  return { found, next: [...next].sort((a, b) => a.localeCompare(b, 'en', { numeric: true })) };
}

function sharedStart(marks: readonly string[]): string {
  const [first = ''] = marks;
  let length = first.length;
  for (const mark of marks) while (!mark.startsWith(first.slice(0, length))) length -= 1;
  return first.slice(0, length);
}
