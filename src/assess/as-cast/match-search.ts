import type { Pose } from '../../engine/survey/pose.ts';
import type { Vector } from '../../engine/survey/vector.ts';

/** A way of laying the surveyed points onto the design, and how well it does, roughly. */
export interface Laid {
  readonly pose: Pose;
  readonly score: number;
}

/** Two points that are each up to 30 mm off change the distance between them by up to that [mm]. */
const DISTANCE_OFF = 60;
/** With a base whose points are off, others come to lie farther off than they are [mm]. */
const LOOSE = 75;
/** So many bases are tried at most, and so many ways of laying. */
const BASES = 150;
const WAYS = 12_000;
/** A base shorter than this share of the longest pair lays what is far from it too badly. */
const SHORTEST = 0.2;
/** Of each base so many ways are kept. */
const KEPT = 12;
/** A third point this near to the line of the other two, as share of their distance, fixes no turn about it. */
const OFF_LINE = 0.15;

/** Two points of a set with the distance between them. */
interface Pair {
  readonly a: number;
  readonly b: number;
  readonly length: number;
}

const apart = (a: Vector, b: Vector) => Math.hypot(...a.map((value, k) => value - b[k]!));

/** All pairs of a set, the shortest first. */
function listPairs(points: readonly Vector[]): readonly Pair[] {
  const pairs: Pair[] = [];
  for (let a = 0; a < points.length; a += 1)
    for (let b = a + 1; b < points.length; b += 1) pairs.push({ a, b, length: apart(points[a]!, points[b]!) });
  return pairs.sort((p, q) => p.length - q.length);
}

/** Numbers that look like chance and are the same every time: another order of trying is no other answer. */
function makeChance(): (below: number) => number {
  let state = 1;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** Long pairs of the base set that the other set can hold, in an order that looks like chance. */
function chooseBases(pairs: readonly Pair[], longest: number, chance: (below: number) => number): readonly Pair[] {
  const held = pairs.filter(({ length }) => length <= longest + DISTANCE_OFF);
  const most = held.at(-1)?.length ?? 0;
  const long = held.filter(({ length }) => length >= most * SHORTEST);
  for (let i = long.length - 1; i > 0; i -= 1) {
    const j = chance(i + 1);
    [long[i], long[j]] = [long[j]!, long[i]!];
  }
  return long.slice(0, BASES);
}

/** Pairs of a sorted list that are as long as wanted, within what points may be off. */
function pairsOfLength(pairs: readonly Pair[], wanted: number): readonly Pair[] {
  const firstFrom = (length: number) => {
    let [low, high] = [0, pairs.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (pairs[middle]!.length < length) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  return pairs.slice(firstFrom(wanted - DISTANCE_OFF), firstFrom(wanted + DISTANCE_OFF));
}

/** Axes of two points in the plane, of three in space: along the first two, square to it toward the third, square to both. */
function axesOf(corners: readonly Vector[]): readonly Vector[] | null {
  const [a, b, c] = corners as readonly [Vector, Vector, Vector?];
  const length = apart(a, b);
  const along = b.map((value, k) => (value - a[k]!) / length);
  if (c === undefined) return [along, [0 - along[1]!, along[0]!]];
  const arm = c.map((value, k) => value - a[k]!);
  const [x, y, z] = along as [number, number, number];
  const [u, v, w] = arm as [number, number, number];
  const cross: Vector = [y * w - z * v, z * u - x * w, x * v - y * u];
  const off = Math.hypot(...cross);
  if (off < OFF_LINE * length) return null;
  const [p, q, r] = cross.map((value) => value / off) as [number, number, number];
  return [along, [q * z - r * y, r * x - p * z, p * y - q * x], [p, q, r]];
}

/** The movement that brings corners onto others, their middles onto each other. */
function layCorners(from: readonly Vector[], to: readonly Vector[]): Pose | null {
  const [source, target] = [axesOf(from), axesOf(to)];
  if (source === null || target === null) return null;
  const size = source.length;
  const rotation = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (__, j) => source.reduce((sum, axis, k) => sum + target[k]![i]! * axis[j]!, 0)),
  );
  const middle = (points: readonly Vector[], k: number) =>
    points.reduce((sum, point) => sum + point[k]!, 0) / points.length;
  return {
    rotation,
    shift: rotation.map((row, i) => middle(to, i) - row.reduce((sum, part, k) => sum + part * middle(from, k), 0)),
  };
}

/** How many of the base's points have one laid near them, a near one counting more. */
function makeScore(base: readonly Vector[], other: readonly Vector[]): (pose: Pose) => number {
  const size = base[0]!.length;
  const fixed = Float64Array.from(base.flat());
  const laid = new Float64Array(other.length * size);
  return ({ rotation, shift }) => {
    other.forEach((point, i) => {
      for (let k = 0; k < size; k += 1) {
        const row = rotation[k]!;
        let value = shift[k]!;
        for (let j = 0; j < size; j += 1) value += row[j]! * point[j]!;
        laid[i * size + k] = value;
      }
    });
    let score = 0;
    for (let i = 0; i < fixed.length; i += size) {
      let least = LOOSE ** 2;
      for (let j = 0; j < laid.length; j += size) {
        let square = 0;
        for (let k = 0; k < size; k += 1) square += (fixed[i + k]! - laid[j + k]!) ** 2;
        if (square < least) least = square;
      }
      score += 1 - least / LOOSE ** 2;
    }
    return score;
  };
}

/** Keeps the best ways of a list, the best first. */
function keep(kept: Laid[], laid: Laid): void {
  if (kept.length === KEPT && laid.score <= kept[KEPT - 1]!.score) return;
  const place = kept.findIndex(({ score }) => score < laid.score);
  kept.splice(place < 0 ? kept.length : place, 0, laid);
  if (kept.length > KEPT) kept.pop();
}

/** A third point off the line of a base; null: all lie in it. */
function findThird(base: readonly Vector[], { a, b }: Pair, chance: (below: number) => number): number | null {
  const off = base.flatMap((c, i) => (axesOf([base[a]!, base[b]!, c]) === null ? [] : [i]));
  return off.length === 0 ? null : off[chance(off.length)]!;
}

/**
 * Lays one set of points onto another in every way in which a base of it (two points in the plane, three in space) finds its like there by the distances
 * between them: rigid, no scale, no mirror. Base after base, each with its best ways, until the caller has enough.
 */
export function* layByBases(base: readonly Vector[], other: readonly Vector[]): Generator<readonly Laid[]> {
  const isFlat = base[0]!.length === 2;
  const chance = makeChance();
  const pairs = listPairs(other);
  const scoreOf = makeScore(base, other);
  let ways = 0;
  for (const pair of chooseBases(listPairs(base), pairs.at(-1)?.length ?? 0, chance)) {
    const third = isFlat ? null : findThird(base, pair, chance);
    if (!isFlat && third === null) continue;
    const corners = [pair.a, pair.b, ...(third === null ? [] : [third])].map((i) => base[i]!);
    const kept: Laid[] = [];
    for (const like of findLike(corners, other, pairs)) {
      ways += 1;
      const pose = layCorners(
        like.map((i) => other[i]!),
        corners,
      );
      if (pose !== null) keep(kept, { pose, score: scoreOf(pose) });
      if (ways >= WAYS) break;
    }
    yield kept;
    if (ways >= WAYS) return;
  }
}

/** Points of the other set that are as far from each other as the corners of the base. */
function* findLike(
  corners: readonly Vector[],
  other: readonly Vector[],
  pairs: readonly Pair[],
): Generator<readonly number[]> {
  const [a, b, c] = corners as readonly [Vector, Vector, Vector?];
  for (const { a: p, b: q } of pairsOfLength(pairs, apart(a, b)))
    for (const [first, second] of [
      [p, q],
      [q, p],
    ] as const) {
      if (c === undefined) yield [first, second];
      else {
        const [fromA, fromB] = [apart(a, c), apart(b, c)];
        for (let i = 0; i < other.length; i += 1) {
          if (i === first || i === second) continue;
          if (
            Math.abs(apart(other[first]!, other[i]!) - fromA) <= DISTANCE_OFF &&
            Math.abs(apart(other[second]!, other[i]!) - fromB) <= DISTANCE_OFF
          )
            yield [first, second, i];
        }
      }
    }
}
