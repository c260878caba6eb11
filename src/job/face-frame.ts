import type { Point } from '../engine/geometry/point.ts';
import type { Panel } from './documents/panel.ts';

/** Which face of a panel: a large one, or the side of the outline from corner `edge` to the next. */
export interface PanelFace {
  readonly face: 'outside' | 'inside' | 'edge';
  readonly edge: number | null;
}

/** How positions in a document lie on a face as one stands in front of it: x right, y up, z out of the concrete. */
export interface FaceFrame {
  readonly toFace: (at: Point) => Point;
  /** True where document coordinates and face coordinates are mirror images. */
  readonly isMirrored: boolean;
}

/** Twice the signed area: positive for corners counter-clockwise. */
function signedArea(outline: readonly Point[]): number {
  return outline.reduce((sum, [x, y], i) => {
    const [nx, ny] = outline[(i + 1) % outline.length]!;
    return sum + x * ny - nx * y;
  }, 0);
}

/** Side n of a panel's outline: its ends, length, direction, and the direction into the concrete, in the drawn face's coordinates. */
export function panelSide(
  panel: Panel,
  edge: number,
): { from: Point; to: Point; length: number; along: Point; inward: Point } {
  const from = panel.outline_mm[edge]!;
  const to = panel.outline_mm[(edge + 1) % panel.outline_mm.length]!;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const along: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const inward: Point = signedArea(panel.outline_mm) > 0 ? [-along[1], along[0]] : [along[1], -along[0]];
  return { from, to, length, along, inward };
}

/**
 * The frame of a face.
 *
 * Large faces: positions are given on the drawn face, so the other face, seen from its own front, is the mirror image left to right
 * within the panel's extent. Edge faces: positions are (along the edge from its first corner, from the outside face). Seen from in
 * front of the edge with the drawn face upward, a counter-clockwise outline runs to the right; so x = along, else length − along, and
 * y rises toward the drawn face.
 */
export function frameOf(panel: Panel, face: PanelFace): FaceFrame {
  if (face.face !== 'edge') {
    if (face.face === panel.drawnFace) return { toFace: (at) => at, isMirrored: false };
    const xs = panel.outline_mm.map(([x]) => x);
    const ends = Math.min(...xs) + Math.max(...xs);
    return { toFace: ([x, y]) => [ends - x, y], isMirrored: true };
  }
  if (face.edge === null) throw new Error(`panel ${panel.mark}: an edge face without the number of its edge`);
  const { length } = panelSide(panel, face.edge);
  const runsRight = signedArea(panel.outline_mm) > 0;
  const risesFromOutside = panel.drawnFace === 'inside';
  const toFace = ([along, fromOutside]: Point): Point => [
    runsRight ? along : length - along,
    risesFromOutside ? fromOutside : panel.thickness_mm - fromOutside,
  ];
  return { toFace, isMirrored: runsRight !== risesFromOutside };
}

/** How positions on a face, seen from its front, follow from those of the documents, in words. */
export function describeFrame(panel: Panel, face: PanelFace): string {
  const { toFace } = frameOf(panel, face);
  const [x0, y0] = toFace([0, 0]);
  const [x1, y1] = toFace([1, 1]);
  const follow = (start: number, step: number, given: string) => (step > 0 ? given : `${start} - ${given}`);
  if (face.face === 'edge') {
    const x = follow(x0, x1 - x0, 'distance along the edge from its first corner');
    const y = follow(y0, y1 - y0, 'distance from the outside face');
    return `edge ${face.edge} seen from its front, the drawn face upward; x = ${x}, y = ${y}`;
  }
  if (face.face === panel.drawnFace) return `the ${face.face} face seen from its front, as drawn`;
  return `the ${face.face} face seen from its front, x = ${follow(x0, x1 - x0, 'x drawn')}, y as drawn (the drawing shows the ${panel.drawnFace} face)`;
}

/** A position in a plate's own axes, on the face: turned about the plate's origin, then shifted to where the origin lies. */
export function placeOnFace(frame: FaceFrame, origin: Point, turn_deg: number, local: Point): Point {
  const [ox, oy] = frame.toFace(origin);
  const [x, y] = turnVector(local, turn_deg);
  return [ox + x, oy + y];
}

/** The reverse of `placeOnFace`: a position on the face in the plate's own axes. */
export function placeInPlate(frame: FaceFrame, origin: Point, turn_deg: number, onFace: Point): Point {
  const [ox, oy] = frame.toFace(origin);
  return turnVector([onFace[0] - ox, onFace[1] - oy], -turn_deg);
}

/** Turns a vector counter-clockwise; quarter turns are exact and never give a negative zero. */
export function turnVector([x, y]: Point, turn_deg: number): Point {
  const quarter = (((turn_deg / 90) % 4) + 4) % 4;
  if (quarter === 0) return [x, y];
  if (quarter === 1) return [0 - y, x];
  if (quarter === 2) return [0 - x, 0 - y];
  if (quarter === 3) return [y, 0 - x];
  const angle = (turn_deg * Math.PI) / 180;
  return [x * Math.cos(angle) - y * Math.sin(angle) + 0, x * Math.sin(angle) + y * Math.cos(angle) + 0];
}
