import type { Point } from '../../../src/engine/geometry/point.ts';
import type { PlateHole } from '../../../src/engine/tolerance/plate-hole.ts';

/** A plate and the bolts it should go over; mm, rad. */
export interface HoleCase {
  readonly holes: readonly PlateHole[];
  readonly bolts: readonly Point[];
}

/** Numbers between 0 and 1, the same in every run. */
export function makeRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return state / 4294967296;
  };
}

/** How plates are made: pattern, spread of the bolts, slots. */
const KINDS = [
  'any',
  'small',
  'coincident',
  'in a line',
  'all slots',
  'exact',
  'turned',
  'one place',
  'rectangle',
] as const;

/** A random plate of 2 to 8 holes, of every kind in turn: spread out, close together, in a line, on one place, with slots at any angle. */
export function makeCase(random: () => number, number: number): HoleCase {
  const kind = KINDS[number % KINDS.length]!;
  const count = 2 + Math.floor(random() * 7);
  const size = kind === 'small' ? 4 : 400;
  const holes: PlateHole[] = [];
  for (let i = 0; i < count; i++) holes.push(makeHole(random, kind, size, i, holes));
  const off = kind === 'exact' ? 0 : [0.5, 2, 5, 30][Math.floor(random() * 4)]!;
  const turn = kind === 'turned' ? (random() - 0.5) * 2 * Math.PI : 0;
  const bolts = holes.map(({ at }): Point => {
    const [x, y] = turnPoint(at, turn);
    return [x + off * (random() + random() - 1), y + off * (random() + random() - 1)];
  });
  return { holes, bolts };
}

function makeHole(
  random: () => number,
  kind: (typeof KINDS)[number],
  size: number,
  i: number,
  before: readonly PlateHole[],
): PlateHole {
  const place: Point = [(random() - 0.5) * size, (random() - 0.5) * size];
  const isSlot = kind === 'all slots' || random() < 0.35;
  return {
    at: placeOf(kind, place, random, i, before),
    slack: [1, 1, 2, random() * 4][Math.floor(random() * 4)]!,
    slot: isSlot ? Math.round(random() * 30) : 0,
    angle: random() < 0.4 ? 0 : random() * 2 * Math.PI,
  };
}

function placeOf(
  kind: (typeof KINDS)[number],
  place: Point,
  random: () => number,
  i: number,
  before: readonly PlateHole[],
): Point {
  switch (kind) {
    case 'coincident':
      return i > 0 && random() < 0.5 ? before[i - 1]!.at : place;
    case 'in a line':
      return [place[0], 0];
    case 'one place':
      return [30, 40];
    case 'rectangle':
      return [100 * (i % 2), 60 * Math.floor(i / 2)];
    default:
      return place;
  }
}

export function turnPoint([x, y]: Point, turn: number): Point {
  return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
}

/** The middle of the holes of a plate. */
export function middleOf(holes: readonly PlateHole[]): Point {
  return [
    holes.reduce((sum, { at }) => sum + at[0], 0) / holes.length,
    holes.reduce((sum, { at }) => sum + at[1], 0) / holes.length,
  ];
}

/**
 * Radial clearance at each hole of a plate that is turned about the middle of its holes and shifted, written out from what a slot is: in the
 * axes of the panel, from the ends of the slot as they come to lie. Nothing of the searched code is used.
 */
export function clearancesOf({ holes, bolts }: HoleCase, turn: number, [sx, sy]: Point): readonly number[] {
  const [mx, my] = middleOf(holes);
  return holes.map(({ at, slack, slot, angle }, i) => {
    const [x, y] = turnPoint([at[0] - mx, at[1] - my], turn);
    const [hx, hy] = [(slot / 2) * Math.cos(angle + turn), (slot / 2) * Math.sin(angle + turn)];
    const [ax, ay] = [mx + x + sx - hx, my + y + sy - hy];
    const [bx, by] = bolts[i]!;
    const share = slot === 0 ? 0 : ((bx - ax) * 2 * hx + (by - ay) * 2 * hy) / slot ** 2;
    const held = Math.max(0, Math.min(1, share));
    return slack - Math.hypot(bx - ax - held * 2 * hx, by - ay - held * 2 * hy);
  });
}

/** The largest least clearance that a dense search finds: a grid over turn and shift, then steps that shrink from its best places. */
export function searchDensely(one: HoleCase, random: () => number): number {
  const least = (turn: number, x: number, y: number) => Math.min(...clearancesOf(one, turn, [x, y]));
  const reach = Math.max(
    ...one.holes.map(({ at, slot }, i) => slot / 2 + Math.hypot(one.bolts[i]![0] - at[0], one.bolts[i]![1] - at[1])),
  );
  const places: { turn: number; x: number; y: number; value: number }[] = [];
  for (const span of [Math.PI, 0.3, 0.03])
    for (let t = -12; t <= 12; t++)
      for (let i = -4; i <= 4; i++)
        for (let j = -4; j <= 4; j++) {
          const [turn, x, y] = [(span * t) / 12, (reach * i) / 4, (reach * j) / 4];
          places.push({ turn, x, y, value: least(turn, x, y) });
        }
  places.sort((a, b) => b.value - a.value);
  return Math.max(...places.slice(0, 4).map((place) => polish(least, place, reach, random)));
}

function polish(
  least: (turn: number, x: number, y: number) => number,
  start: { turn: number; x: number; y: number; value: number },
  reach: number,
  random: () => number,
): number {
  let { turn, x, y, value } = start;
  let [turning, shifting] = [0.1, reach / 4 + 0.1];
  for (let i = 0; i < 4000 && shifting > 1e-7; i++) {
    const [t, u, v] = [
      turn + turning * (random() - 0.5),
      x + shifting * (random() - 0.5),
      y + shifting * (random() - 0.5),
    ];
    const found = least(t, u, v);
    const isBetter = found > value;
    if (isBetter) [turn, x, y, value] = [t, u, v, found];
    turning *= isBetter ? 1.4 : 0.98;
    shifting *= isBetter ? 1.4 : 0.98;
  }
  return value;
}
