import type { Point } from '../../../engine/geometry/point.ts';
import type { Panel } from '../../../job/documents/panel.ts';
import { panelSide } from '../../../job/face-frame.ts';

/** A side of the outline that a tape can be hooked on for some insert. */
interface TapeSide {
  readonly edge: number;
  /** Square from the side to the insert as drawn [mm]. */
  readonly distance: number;
  readonly foot: Point;
  /** The tape lies on concrete: the foot is a point of the side. */
  readonly isOnSide: boolean;
  readonly along: Point;
}

/** Sides that run within 45° of each other fix a place badly. */
const LEAST_CROSSING = Math.sin(Math.PI / 4);

function listSides(panel: Panel, at: Point): readonly TapeSide[] {
  return panel.outline_mm
    .map((_, edge): TapeSide => {
      const { from, length, along, inward } = panelSide(panel, edge);
      const arm: Point = [at[0] - from[0], at[1] - from[1]];
      const reach = arm[0] * along[0] + arm[1] * along[1];
      return {
        edge,
        distance: arm[0] * inward[0] + arm[1] * inward[1],
        foot: [from[0] + along[0] * reach, from[1] + along[1] * reach],
        isOnSide: reach >= 0 && reach <= length,
        along,
      };
    })
    .filter(({ distance }) => distance > 0)
    .sort((a, b) => Number(b.isOnSide) - Number(a.isOnSide) || a.distance - b.distance);
}

function crosses(a: TapeSide, b: TapeSide): boolean {
  return Math.abs(a.along[0] * b.along[1] - a.along[1] * b.along[0]) >= LEAST_CROSSING;
}

/** The sides that an insert can be taped from, the first two being the nearest that cross well: those that are offered. */
export function rankTapeSides(panel: Panel, at: Point): readonly number[] {
  const sides = listSides(panel, at);
  const [first] = sides;
  if (first === undefined) return [];
  const second = sides.find((side) => crosses(first, side));
  const chosen = second === undefined ? [first] : [first, second];
  return [...chosen, ...sides.filter((side) => !chosen.includes(side))].map(({ edge }) => edge);
}

/** Where the tape lies from a side to an insert as drawn, in the drawing. */
export function findTapeLine(panel: Panel, edge: number, at: Point): readonly [Point, Point] {
  const { from, along } = panelSide(panel, edge);
  const reach = (at[0] - from[0]) * along[0] + (at[1] - from[1]) * along[1];
  return [[from[0] + along[0] * reach, from[1] + along[1] * reach], at];
}

/** Ends of a side in the drawing, as a record keeps them. */
export function endsOfSide(panel: Panel, edge: number): readonly [Point, Point] {
  const { from, to } = panelSide(panel, edge);
  return [from, to];
}
