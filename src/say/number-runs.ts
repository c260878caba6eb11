/** Numbers with runs drawn together: `4–7, 9`. */
export function writeRuns(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const runs: { first: number; last: number }[] = [];
  for (const number of sorted) {
    const run = runs.at(-1);
    if (run !== undefined && number === run.last + 1) run.last = number;
    else runs.push({ first: number, last: number });
  }
  return runs
    .map(({ first, last }) => {
      if (first === last) return String(first);
      return last === first + 1 ? `${first}, ${last}` : `${first}–${last}`;
    })
    .join(', ');
}

/** Inserts by their numbers on the sheet: `insert 4`, `inserts 4–7, 9`. */
export function placesOf(numbers: readonly number[]): string {
  return `${new Set(numbers).size === 1 ? 'insert' : 'inserts'} ${writeRuns(numbers)}`;
}
