/**
 * The least number of steps at which something passes, while one step less does not: doubled until it passes, then halved.
 * Where more steps do not always help, it is the end of one stretch that passes.
 * @param most the greatest number of steps that may be taken
 * @returns null where none of those tried passes
 */
export function findLeastSteps(most: number, passes: (steps: number) => boolean): number | null {
  let low = 0;
  for (let high = Math.min(1, most); high > low; high = Math.min(2 * high, most)) {
    if (!passes(high)) {
      low = high;
      continue;
    }
    let found = high;
    while (found - low > 1) {
      const middle = Math.floor((low + found) / 2);
      if (passes(middle)) found = middle;
      else low = middle;
    }
    return found;
  }
  return null;
}
