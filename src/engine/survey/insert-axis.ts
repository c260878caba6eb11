import { findAsideAtDistance } from '../form/tilt.ts';
import { SurveyError } from './survey-error.ts';
import { dot, lengthOf, minus, plus, times, type Vector } from './vector.ts';

/** Axes of the face that an insert stands in: right and up as seen from in front of it, and out of the concrete; unit vectors. */
export interface FaceAxes {
  /** A point of the face. */
  readonly through: Vector;
  readonly right: Vector;
  readonly up: Vector;
  readonly out: Vector;
}

/** How an insert stands in its face. Lengths mm, angles rad. */
export interface InsertStance {
  /** Where its axis meets the face. */
  readonly at: Vector;
  /** How far its top lies below the face; above it (proud) negative. */
  readonly depth: number;
  /** Off square to the face; null with one point only. */
  readonly tilt: number | null;
  /** Where the axis leans to, going out: counter-clockwise from `right` as seen from in front; 0 where it stands square. */
  readonly toward: number;
  /** How far the axis goes aside along `right` and `up` a mm out of the face. */
  readonly lean: readonly [right: number, up: number];
}

/** Two points nearer than this [mm] give no axis. */
const NO_AXIS = 5;
/** An axis flatter than this to its face is no insert's [rad]. */
const MOST_TILT = Math.PI / 4;

/** The stance by one point, at the middle of the insert's top: it is taken to stand square to its face. */
export function findStance(face: FaceAxes, top: Vector): InsertStance {
  const above = dot(minus(top, face.through), face.out);
  return { at: minus(top, times(face.out, above)), depth: 0 - above, tilt: null, toward: 0, lean: [0, 0] };
}

/**
 * The stance by two points of the axis: one at the insert's top, one deeper, or farther out on a rod that is screwed in.
 *
 * @throws SurveyError where the points are nearer than 5 mm, or lie more than 45° off square
 * @example top (0, 0), rod's end 3 mm to the right of it 95 mm farther along the axis: asin(3/95) = 1.81°; 30 mm before the face 0.95 mm aside
 */
export function findTiltedStance(face: FaceAxes, top: Vector, other: Vector): InsertStance {
  const way = minus(other, top);
  const apart = lengthOf(way);
  if (apart < NO_AXIS)
    throw new SurveyError(
      'insert',
      `its two points are ${apart.toFixed(1)} mm apart, expected at least ${NO_AXIS} mm along its axis: screw in a longer rod`,
    );
  const axis = times(way, (dot(way, face.out) < 0 ? -1 : 1) / apart);
  const out = dot(axis, face.out);
  const tilt = Math.acos(Math.min(1, out));
  if (tilt > MOST_TILT)
    throw new SurveyError(
      'insert',
      `its two points lie ${((tilt * 180) / Math.PI).toFixed(0)}° off square to its face, expected one behind the other along the insert's axis`,
    );
  const [right, up] = [dot(axis, face.right), dot(axis, face.up)];
  const above = dot(minus(top, face.through), face.out);
  return {
    at: minus(top, times(axis, above / out)),
    depth: 0 - above,
    // Small angles come from the sine: a cosine near 1 has lost their figures.
    tilt: Math.atan2(Math.hypot(right, up), out),
    toward: right === 0 && up === 0 ? 0 : Math.atan2(up, right),
    lean: [right / out, up / out],
  };
}

/** Where the axis is at a height out of the face, in the plane of that height. */
export function placeAtHeight(face: FaceAxes, { at, tilt, toward }: InsertStance, height: number): Vector {
  const aside = findAsideAtDistance(tilt ?? 0, height);
  const sideways = plus(times(face.right, aside * Math.cos(toward)), times(face.up, aside * Math.sin(toward)));
  return plus(plus(at, sideways), times(face.out, height));
}
