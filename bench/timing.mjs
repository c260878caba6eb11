/**
 * Times several ways of doing the same in turns (A B A B …), so that a busy moment of the machine strikes all of them.
 * @param ways functions of a running number; they return a number, so that nothing is left out as unused
 * @param roundMs how long one way runs in one round [ms]
 * @param rounds an odd number
 * @returns `us(way)`: median time of one call [µs]; `ratio(way, other)`: median over the rounds of the other's time divided
 *   by the way's in the same round
 */
export function timeInTurns(ways, { roundMs, rounds }) {
  const counts = ways.map((way) => countCalls(way, roundMs));
  const times = ways.map(() => []);
  for (let round = 0; round < rounds; round++) {
    for (const [i, way] of ways.entries()) times[i].push(timeCalls(way, counts[i]) / counts[i]);
  }
  return {
    us: (way) => takeMiddle(times[way]),
    ratio: (way, other) => takeMiddle(times[way].map((us, round) => times[other][round] / us)),
  };
}

/** The median of an odd number of values. */
export function takeMiddle(values) {
  return values.toSorted((a, b) => a - b)[(values.length - 1) / 2];
}

/** How many calls take about `roundMs`, found by doubling; this warms up as well. */
function countCalls(way, roundMs) {
  let count = 1;
  for (let us = timeCalls(way, count); ; us = timeCalls(way, count)) {
    if (us >= 1000 * roundMs) return count;
    count *= 2;
  }
}

function timeCalls(way, count) {
  const start = performance.now();
  let sum = 0;
  for (let i = 0; i < count; i++) sum += way(i);
  const us = (performance.now() - start) * 1000;
  if (!Number.isFinite(sum)) throw new Error(`the sum of ${count} results is ${sum}; expected a finite number`);
  return us;
}
