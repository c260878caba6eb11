/** Number of single-letter changes (insert, drop, swap neighbours, replace) between two words. */
function countChanges(a: string, b: string): number {
  const rows: number[][] = Array.from({ length: a.length + 1 }, (_, i) => [i]);
  for (let j = 0; j <= b.length; j++) rows[0]![j] = j;
  for (let i = 1; i <= a.length; i++) {
    for (let j = 1; j <= b.length; j++) {
      const replaced = rows[i - 1]![j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      let least = Math.min(rows[i - 1]![j]! + 1, rows[i]![j - 1]! + 1, replaced);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, rows[i - 2]![j - 2]! + 1);
      rows[i]![j] = least;
    }
  }
  return rows[a.length]![b.length]!;
}

/** The word of the list that was probably meant, ignoring case and signs between words; null when none is near. */
export function findNearestWord(word: string, words: readonly string[]): string | null {
  const plain = (w: string) => w.toLowerCase().replace(/[\s_.()[\]-]+/g, '');
  const given = plain(word);
  let best: string | null = null;
  let least = (given.length < 3 ? 0 : Math.max(1, Math.floor(given.length / 3))) + 1;
  for (const candidate of words) {
    const changes = countChanges(given, plain(candidate));
    if (changes < least) {
      least = changes;
      best = candidate;
    }
  }
  return best;
}
