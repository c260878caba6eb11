/** Letters of revisions; I and O are left out, being read as 1 and 0 (common practice). */
const LETTERS = [...'ABCDEFGHJKLMNPQRSTUVWXYZ'];

/** The letter after the last of those that were given: A … Z, then AA, AB …; A where there is none. A letter of another kind is passed over. */
export function nextLetter(given: readonly string[]): string {
  const places = given.flatMap((letter) => {
    const digits = [...letter].map((sign) => LETTERS.indexOf(sign));
    return digits.length === 0 || digits.includes(-1)
      ? []
      : [digits.reduce((sum, digit) => sum * LETTERS.length + digit + 1, 0)];
  });
  let place = Math.max(0, ...places) + 1;
  let letter = '';
  while (place > 0) {
    const digit = (place - 1) % LETTERS.length;
    letter = `${LETTERS[digit]}${letter}`;
    place = Math.floor((place - 1) / LETTERS.length);
  }
  return letter;
}
