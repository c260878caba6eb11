import type { PanelSetOut, SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { Box } from '../../../drawing/boxes.ts';
import { placeLabels } from '../../../drawing/label-places.ts';
import type { Point } from '../../../engine/geometry/point.ts';

/** Room on the screen [px]. */
export interface PlanRoom {
  readonly width: number;
  readonly height: number;
}

/** Where an insert and its number are on the screen [px], y downward. */
export interface PlanSpot {
  readonly item: SetOutItem;
  readonly at: Point;
  /** The field of its number; null: no room, found by tapping its mark. */
  readonly chip: Box | null;
  readonly leader: readonly [Point, Point] | null;
}

/** A form as it lies on the screen [px], y downward, its bed's x axis across. */
export interface PlanLayout {
  readonly room: PlanRoom;
  /** px a mm. */
  readonly scale: number;
  readonly outline: readonly Point[];
  readonly openings: readonly (readonly Point[])[];
  readonly datum: Point;
  /** Outward from the datum corner: -1 or 1 each way. */
  readonly datumOut: Point;
  readonly radius: number;
  readonly spots: readonly PlanSpot[];
  readonly extent: Box;
  /** From the plan [mm] to the screen. */
  readonly put: (at: Point) => Point;
}

/** Beside the form for the names of its ends, and above and below it for those of its rails [px]. */
const ASIDE = 58;
const ABOVE = 50;
const DATUM = 22;
/** A chip with a number and its sign [px]. */
const CHIP = { width: 54, height: 30 };
const RADIUS = { least: 5, most: 12 };
/** Labels are placed in steps meant for paper: so many px stand for a mm of it. */
const STEP = 3;
/** A tap this far from an insert still means it [px]. */
const REACH = 70;

function findRadius(items: readonly SetOutItem[], scale: number): number {
  let radius = RADIUS.most;
  for (const [i, a] of items.entries())
    for (const b of items.slice(i + 1))
      radius = Math.min(radius, (Math.hypot(a.plan[0] - b.plan[0], a.plan[1] - b.plan[1]) * scale) / 2.3);
  return Math.max(RADIUS.least, radius);
}

/** Where the names of ends and rails stand, y upward: from the form to the middle of the name, its height, and a letter's width at most [px]. */
const NAME = { away: 34, above: 22, height: 26, letter: 10 };

/** Fields that the names of the four sides take [px], y upward. */
function nameBoxes({ words }: PanelSetOut, { x, y, width, height }: Box): readonly Box[] {
  const across = (name: string, middle: number): Box => {
    const long = name.length * NAME.letter;
    return { x: x + width / 2 - long / 2, y: middle - NAME.height / 2, width: long, height: NAME.height };
  };
  const upright = (name: string, middle: number): Box => {
    const long = name.length * NAME.letter;
    return { x: middle - NAME.height / 2, y: y + height / 2 - long / 2, width: NAME.height, height: long };
  };
  return [
    across(words.railA, y - NAME.away),
    across(words.railB, y + height + NAME.above),
    upright(words.start, x - NAME.away),
    upright(words.finish, x + width + NAME.away),
  ];
}

/** Lays the form of a panel into some room, seen from above. The same room gives the same places. */
export function layPlan(setOut: PanelSetOut, room: PlanRoom): PlanLayout {
  const scale = Math.max(
    1e-3,
    Math.min((room.width - 2 * ASIDE) / setOut.length, (room.height - 2 * ABOVE) / setOut.width),
  );
  const [width, height] = [setOut.length * scale, setOut.width * scale];
  const [left, bottom] = [(room.width - width) / 2, (room.height - height) / 2];
  const up = ([x, y]: Point): Point => [left + x * scale, bottom + y * scale];
  const down = ([x, y]: Point): Point => [x, room.height - y];
  const put = (at: Point) => down(up(at));
  const datumOut: Point = [setOut.datum.endsWith('left') ? -1 : 1, setOut.datum.startsWith('bottom') ? 1 : -1];
  const radius = findRadius(setOut.items, scale);
  const small = ([x, y]: Point): Point => [x / STEP, y / STEP];
  const outline = setOut.outline.map(up).map(small);
  const datum = up(setOut.datumAt);
  const corner = small([datum[0] - (datumOut[0] < 0 ? DATUM : 0), datum[1] - (datumOut[1] > 0 ? DATUM : 0)]);
  const places = placeLabels(
    setOut.items.map((item) => ({
      anchor: small(up(item.plan)),
      radius: (radius + 4) / STEP,
      width: CHIP.width / STEP,
      height: CHIP.height / STEP,
    })),
    {
      frame: { x: 0, y: 0, width: room.width / STEP, height: room.height / STEP },
      obstacles: [
        { x: corner[0], y: corner[1], width: DATUM / STEP, height: DATUM / STEP },
        ...nameBoxes(setOut, { x: left, y: bottom, width, height }).map((box) => ({
          x: box.x / STEP,
          y: box.y / STEP,
          width: box.width / STEP,
          height: box.height / STEP,
        })),
      ],
      lines: outline.map((from, i): readonly [Point, Point] => [from, outline[(i + 1) % outline.length]!]),
      gap: 0.8,
    },
  );
  const large = ([x, y]: Point): Point => down([x * STEP, y * STEP]);
  return {
    room,
    scale,
    outline: setOut.outline.map(put),
    openings: setOut.openings.map((ring) => ring.map(put)),
    datum: down(datum),
    datumOut,
    radius,
    put,
    extent: { x: left, y: room.height - bottom - height, width, height },
    spots: setOut.items.map((item, i): PlanSpot => {
      const place = places[i] ?? null;
      const at = put(item.plan);
      if (place === null) return { item, at, chip: null, leader: null };
      const [x, y] = large([place.box.x, place.box.y + place.box.height]);
      const leader = place.leader === null ? null : ([large(place.leader[0]), large(place.leader[1])] as const);
      return { item, at, chip: { x, y, ...CHIP }, leader };
    }),
  };
}

/** The insert that a tap means: the nearest mark or number within reach; null: none. */
export function findTapped({ spots }: PlanLayout, [x, y]: Point): SetOutItem | null {
  let best: { readonly item: SetOutItem; readonly away: number } | null = null;
  for (const { item, at, chip } of spots) {
    const middle: Point = chip === null ? at : [chip.x + chip.width / 2, chip.y + chip.height / 2];
    const away = Math.min(Math.hypot(at[0] - x, at[1] - y), Math.hypot(middle[0] - x, middle[1] - y));
    if (away <= REACH && (best === null || away < best.away)) best = { item, away };
  }
  return best?.item ?? null;
}

/**
 * Which way on the screen the first or second taped length of an item grows, as a unit vector with y downward; null: up from the bed, which no plan
 * shows.
 */
export function findTapeDirection(setOut: PanelSetOut, item: SetOutItem, axis: 'x' | 'y'): Point | null {
  const [alongX, alongY] = [setOut.datum.endsWith('left') ? 1 : -1, setOut.datum.startsWith('bottom') ? -1 : 1];
  if (item.printed.kind === 'plan') return axis === 'x' ? [alongX, 0] : [0, alongY];
  if (axis === 'y') return null;
  const named = /^corner (\d+)$/.exec(item.printed.from);
  if (named !== null) {
    const corner = setOut.outline[Number(named[1]) - 1];
    if (corner === undefined) return null;
    const [dx, dy] = [item.plan[0] - corner[0], corner[1] - item.plan[1]];
    const long = Math.hypot(dx, dy);
    return long === 0 ? null : [dx / long, dy / long];
  }
  const isOnRail = item.inward !== null && Math.abs(item.inward[1]) > Math.abs(item.inward[0]);
  return isOnRail ? [alongX, 0] : [0, alongY];
}
