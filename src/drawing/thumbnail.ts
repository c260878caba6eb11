import type { ConnectionState } from '../assess/connection-answer.ts';
import type { Point } from '../engine/geometry/point.ts';
import type { CastIn } from '../job/documents/cast-in.ts';
import type { Panel } from '../job/documents/panel.ts';
import { panelSide } from '../job/face-frame.ts';

/** What a mark on a thumbnail says: the state of the insert's connection, or that nobody computes it. */
export type MarkState = ConnectionState | 'computing' | 'not computed';

/** A panel, small and true to its proportions: a few path texts, however many inserts it has. y runs downward. */
export interface Thumbnail {
  readonly width: number;
  readonly height: number;
  /** Outline and openings, one ring each. */
  readonly ground: string;
  /** One path a state, shapes told apart without colour. */
  readonly marks: readonly { readonly state: MarkState; readonly path: string }[];
}

/** Half the size of a mark. */
const R = 2.1;

const n = (value: number) => String(Math.round(value * 10) / 10);

function circle(x: number, y: number, radius: number): string {
  const d = n(2 * radius);
  const r = n(radius);
  return `M${n(x - radius)} ${n(y)}a${r} ${r} 0 1 0 ${d} 0a${r} ${r} 0 1 0-${d} 0`;
}

/** The shape of a state; filled or stroked by the screen that shows it. */
const SHAPES: Readonly<Record<MarkState, (x: number, y: number) => string>> = {
  passes: (x, y) => circle(x, y, R * 0.85),
  fails: (x, y) => `M${n(x - R)} ${n(y - R)}l${2 * R} ${2 * R}m0-${2 * R}l-${2 * R} ${2 * R}`,
  'not covered': (x, y) =>
    `M${n(x)} ${n(y - R * 1.3)}l${R * 1.3} ${R * 1.3}l-${R * 1.3} ${R * 1.3}l-${R * 1.3}-${R * 1.3}z`,
  'cannot be computed': (x, y) => `M${n(x - R)} ${n(y - R)}h${2 * R}v${2 * R}h-${2 * R}z`,
  'strength not checked': (x, y) => circle(x, y, R),
  computing: (x, y) => `M${n(x - R)} ${n(y)}h${2 * R}`,
  'not computed': (x, y) => circle(x, y, 0.9),
};

/** Where an item is on the drawn face; one on an edge lies on that side. */
function placeOf(panel: Panel, { face, edge, x_mm, y_mm }: CastIn): Point {
  if (face !== 'edge' || edge === null) return [x_mm, y_mm];
  const { from, along } = panelSide(panel, edge);
  return [from[0] + along[0] * x_mm, from[1] + along[1] * x_mm];
}

/**
 * Draws a panel into a box, as its drawn face is seen.
 * @param box room for it, in the units of the screen, marks included
 * @param stateOf an item
 */
export function drawThumbnail(
  panel: Panel,
  castIns: readonly CastIn[],
  stateOf: (castIn: CastIn) => MarkState,
  box: { readonly width: number; readonly height: number },
): Thumbnail {
  const xs = panel.outline_mm.map(([x]) => x);
  const ys = panel.outline_mm.map(([, y]) => y);
  const [left, top] = [Math.min(...xs), Math.max(...ys)];
  const [length, rise] = [Math.max(...xs) - left, top - Math.min(...ys)];
  const scale = Math.min((box.width - 2 * R) / length, (box.height - 2 * R) / rise);
  const put = ([x, y]: Point): Point => [R + (x - left) * scale, R + (top - y) * scale];
  const ring = (corners: readonly Point[]) =>
    `M${corners
      .map(put)
      .map(([x, y]) => `${n(x)} ${n(y)}`)
      .join('L')}Z`;
  const paths = new Map<MarkState, string>();
  for (const castIn of castIns) {
    const state = stateOf(castIn);
    const [x, y] = put(placeOf(panel, castIn));
    paths.set(state, (paths.get(state) ?? '') + SHAPES[state](x, y));
  }
  return {
    width: length * scale + 2 * R,
    height: rise * scale + 2 * R,
    ground: [panel.outline_mm, ...panel.openings_mm].map(ring).join(''),
    marks: [...paths].map(([state, path]) => ({ state, path })),
  };
}
