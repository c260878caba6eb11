/** Letters and digits of a name, without marks, spaces and leading zeros. */
function bare(name: string): string {
  return name
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '')
    .replace(/(?<!\d)0+(?=\d)/g, '');
}

/**
 * Whether what the instrument calls a point resembles an insert's number or a control's name: the same letters and digits, or the number
 * as the last one in the name (P12-7, INS 07, 7b for insert 7).
 */
export function isNamedAlike(number: string, name: string | null): boolean {
  if (name === null) return false;
  const wanted = bare(number);
  if (wanted === '' || bare(name) === wanted) return wanted !== '';
  const last = name.match(/\d+/g)?.at(-1);
  return /^\d+$/.test(wanted) && last !== undefined && bare(last) === wanted;
}
