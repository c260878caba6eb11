/** Where a load ratio crosses 1, or that it does not. */
export interface Crossing {
  /**
   * Found: the ratio at `at` is at most 1, and above 1 at `at` times (1 + 1e-9). Nothing limits: it stays at most 1 however large
   * the multiplier. Nothing resists: it stays above 1 however small the multiplier.
   */
  readonly kind: 'found' | 'nothing limits' | 'nothing resists';
  /** The multiplier found; where there is none, the one that the search began with. */
  readonly at: number;
}

/** The two sides of a crossing lie this close together, relative. */
const WIDTH = 1e-9;

/** Nearest that a new try comes to a known side, relative; two of them fit into `WIDTH`. */
const STEP = 0.4 * WIDTH;

/** Each try in vain on one side makes the next step this much longer. */
const GROWTH = 1000;

/** Where the search gives up, as multiples of its start: loads nobody could measure, or build. */
const LARGEST = 1e15;
const SMALLEST = 1e-30;

/** Growth of a ratio with its load, as a power, that a prediction may believe. */
const GENTLEST = 0.25;
const STEEPEST = 8;

/** Growth above this is no power of the load: steel squares it, an arm with tension does worse. */
const STEEP = 2.5;

/** Two tries closer than this say more about rounding than about growth, relative. */
const TOO_CLOSE = 1e-6;

interface Sample {
  readonly at: number;
  readonly ratio: number;
}

/**
 * Finds the multiplier at which a ratio that grows with it crosses 1, to 1e-9 on the side where the ratio is at most 1. The
 * ratio may be bent, may jump and may become Infinity; where it falls somewhere, one of its crossings is found. A ratio in step
 * with its multiplier takes three tries.
 * @param ratioAt the ratio at a multiplier above 0; not negative, Infinity where nothing resists
 * @param start where to begin, above 0
 */
export function findCrossing(ratioAt: (multiplier: number) => number, start: number): Crossing {
  const sample = (at: number): Sample => ({ at, ratio: ratioAt(at) });
  const first = sample(start);
  const isInside = ({ ratio }: Sample) => ratio <= 1;
  const startsInside = isInside(first);
  let near = first;
  let previous: Sample | null = null;
  // One step after another until the other side is reached.
  for (let tries = 0; ; tries += 1) {
    if (startsInside && near.at >= LARGEST * start) return { kind: 'nothing limits', at: start };
    if (!startsInside && near.at <= SMALLEST * start) return { kind: 'nothing resists', at: start };
    const far = sample(startsInside ? stepUp(near, previous, tries) : stepDown(near, previous, tries));
    if (isInside(far) !== startsInside) return close(startsInside ? near : far, startsInside ? far : near, sample);
    previous = near;
    near = far;
  }
}

/** Where the ratio would be 1 if it went on growing as it did between the last two samples. */
function predict({ at, ratio }: Sample, previous: Sample | null): number {
  let power = 1;
  if (previous !== null && previous.ratio > 0 && Number.isFinite(previous.ratio)) {
    const run = Math.log(at / previous.at);
    const rise = Math.log(ratio / previous.ratio);
    if (Math.abs(run) > TOO_CLOSE) power = Math.min(STEEPEST, Math.max(GENTLEST, rise / run));
  }
  return at * Math.min(LARGEST, Math.max(SMALLEST, ratio ** (-1 / power)));
}

function stepUp(near: Sample, previous: Sample | null, tries: number): number {
  if (near.ratio === 0) return near.at * GROWTH ** (tries + 1);
  return Math.max(predict(near, previous) * (1 - STEP), near.at * leastStep(tries));
}

function stepDown(near: Sample, previous: Sample | null, tries: number): number {
  if (!Number.isFinite(near.ratio)) return near.at / GROWTH ** (tries + 1);
  return Math.min(predict(near, previous) * (1 - STEP), near.at / leastStep(tries));
}

/** The first prediction comes from far away, so that the second may be as near as the sides are to lie. */
function leastStep(tries: number): number {
  return 1 + 2 * STEP * GROWTH ** Math.max(0, tries - 1);
}

/** Brings the two sides together: secants in logarithms, and bisection when three of them have not halved what is left. */
function close(within: Sample, beyond: Sample, sample: (at: number) => Sample): Crossing {
  let inside = within;
  let outside = beyond;
  let lastInside: boolean | null = null;
  // A side that stays a second time counts half, and so on, so that the secant comes round to it (Illinois).
  let weight = 1;
  let slow = 0;
  while (outside.at > inside.at * (1 + WIDTH)) {
    const width = Math.log(outside.at / inside.at);
    const line = cut(inside, outside, lastInside === false ? weight : 1, lastInside === true ? weight : 1);
    // Ratios of nearly nothing, or of nearly no resistance, leave no line to follow.
    const bisects = slow >= 3 || !Number.isFinite(line);
    const wanted = bisects ? inside.at * Math.exp(width / 2) : line;
    const next = sample(Math.min(outside.at / (1 + STEP), Math.max(inside.at * (1 + STEP), wanted)));
    const isInside = next.ratio <= 1;
    if (isInside) inside = next;
    else outside = next;
    weight = isInside === lastInside ? weight / 2 : 1;
    lastInside = bisects ? null : isInside;
    slow = Math.log(outside.at / inside.at) > width / 2 ? slow + 1 : 0;
  }
  return { kind: 'found', at: inside.at };
}

/**
 * Where a line between the two sides crosses: in logarithms, as powers grow; or, where the ratio shoots up, through what is left to
 * resist, at/ratio, which falls to nothing where the ratio grows without end.
 */
function cut(inside: Sample, outside: Sample, insideWeight: number, outsideWeight: number): number {
  const run = Math.log(outside.at / inside.at);
  if (Math.log(outside.ratio / inside.ratio) > STEEP * run) {
    const over = (inside.at / inside.ratio - inside.at) * insideWeight;
    const under = (outside.at - outside.at / outside.ratio) * outsideWeight;
    return inside.at + ((outside.at - inside.at) * over) / (over + under);
  }
  const below = -Math.log(inside.ratio) * insideWeight;
  const above = Math.log(outside.ratio) * outsideWeight;
  return inside.at * Math.exp((run * below) / (below + above));
}
