import { makeRandom } from './seeded-random.ts';

/** Up to this many points every combination of their corners is listed. */
const MOST_POINTS_WITH_ALL_CORNERS = 4;

/** As many combinations of corners are drawn where there are too many to list. */
const DRAWN_CORNERS = 512;

/** Shares of a box, x and y of each point one after the other, from −1 to 1. */
export type Shares = Float64Array;

const CORNERS = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
] as const;

function takeCorners(which: (point: number) => number, count: number): Shares {
  const shares = new Float64Array(2 * count);
  for (let k = 0; k < count; k++) shares.set(CORNERS[which(k)]!, 2 * k);
  return shares;
}

/**
 * Corners of the boxes of several points at once: every combination of up to four points; of more, all at the same corner, each at the corner farthest
 * from or nearest to the next ones in turn, and 512 drawn.
 */
export function listJointCorners(count: number, seed: number): readonly Shares[] {
  if (count <= MOST_POINTS_WITH_ALL_CORNERS)
    return Array.from({ length: 4 ** count }, (_, number) =>
      takeCorners((k) => Math.floor(number / 4 ** k) % 4, count),
    );
  const random = makeRandom(seed);
  const patterns = [0, 1, 2, 3].flatMap((first) =>
    [0, 1, 2, 3].map((step) => takeCorners((k) => (first + k * step) % 4, count)),
  );
  const drawn = Array.from({ length: DRAWN_CORNERS }, () => takeCorners(() => Math.floor(4 * random()), count));
  return [...patterns, ...drawn];
}

/** Each point alone at each of its corners, the others where they belong. */
export function listSingleCorners(count: number): readonly Shares[] {
  return Array.from({ length: 4 * count }, (_, number) => {
    const shares = new Float64Array(2 * count);
    shares.set(CORNERS[number % 4]!, 2 * Math.floor(number / 4));
    return shares;
  });
}

/** Points anywhere in their boxes, all at once; the same seed gives the same draws. */
export function drawJointly(count: number, draws: number, seed: number): readonly Shares[] {
  const random = makeRandom(seed);
  return Array.from({ length: draws }, () => Float64Array.from({ length: 2 * count }, () => 2 * random() - 1));
}
