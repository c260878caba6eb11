import type { PanelSetOut, SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { Point } from '../../../engine/geometry/point.ts';
import type { Panel } from '../../../job/documents/panel.ts';
import { frameOf, turnVector } from '../../../job/face-frame.ts';

/** How somebody looks at a hard panel: which large face is before him, and how it is turned, counter-clockwise; 0: its drawn top is up. */
export interface Stand {
  readonly face: 'outside' | 'inside';
  readonly turn: 0 | 90 | 180 | 270;
}

/** What he sees: x right, y up, from the lower left corner of the panel's extent [mm]. */
export interface StandView {
  readonly toView: (drawn: Point) => Point;
  /** A way in the drawing, as he sees it; its own inverse way back is `toDrawn`. */
  readonly turnToView: (vector: Point) => Point;
  readonly turnToDrawn: (vector: Point) => Point;
  readonly width: number;
  readonly height: number;
}

/** Looks at a panel from in front of one of its large faces. */
export function lookFrom(panel: Panel, { face, turn }: Stand): StandView {
  const frame = frameOf(panel, { face, edge: null });
  const seen = (drawn: Point) => turnVector(frame.toFace(drawn), turn);
  const corners = panel.outline_mm.map(seen);
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const low: Point = [Math.min(...xs), Math.min(...ys)];
  const mirror = ([x, y]: Point): Point => (frame.isMirrored ? [0 - x, y] : [x, y]);
  return {
    toView: (drawn) => {
      const [x, y] = seen(drawn);
      return [x - low[0], y - low[1]];
    },
    turnToView: (vector) => turnVector(mirror(vector), turn),
    turnToDrawn: (vector) => mirror(turnVector(vector, -turn)),
    width: Math.max(...xs) - low[0],
    height: Math.max(...ys) - low[1],
  };
}

/** The cast-in items whose heads he sees. */
export function itemsBefore(setOut: Pick<PanelSetOut, 'items'>, { face }: Stand): readonly SetOutItem[] {
  return setOut.items.filter(({ castIn }) => castIn.face === face);
}

/** The set-out as he sees the hard panel: what `plan` says of each item, the outline and the sides are those of his view. */
export function seeSetOut(setOut: PanelSetOut, stand: Stand): PanelSetOut {
  const view = lookFrom(setOut.panel, stand);
  return {
    ...setOut,
    words: wordsOf(stand),
    outline: setOut.panel.outline_mm.map(view.toView),
    openings: setOut.panel.openings_mm.map((ring) => ring.map(view.toView)),
    length: view.width,
    width: view.height,
    items: itemsBefore(setOut, stand).map((item) => ({
      ...item,
      plan: view.toView([item.castIn.x_mm, item.castIn.y_mm]),
      inward: null,
    })),
  };
}

/** A panel that stands upright has a top; one that lies turned has only what is up in the picture. */
const SIDES = {
  upright: { start: 'left side', finish: 'right side', railA: 'bottom', railB: 'top' },
  turned: { start: 'left side', finish: 'right side', railA: 'lower side', railB: 'upper side' },
} as const;

/** Where the drawn top has come to. */
const TOP_AT = { 90: 'start', 180: 'railA', 270: 'finish' } as const;

/** Names of the four sides of the picture; a turned one says where the panel's top is. */
function wordsOf({ turn }: Stand): PanelSetOut['words'] {
  if (turn === 0) return SIDES.upright;
  const at = TOP_AT[turn];
  return { ...SIDES.turned, [at]: `${SIDES.turned[at]} = its top` };
}

/** A side of the outline, named by where it is for somebody who stands so. */
export function nameSide(panel: Panel, stand: Stand, edge: number): string {
  const words = SIDES[stand.turn === 0 ? 'upright' : 'turned'];
  const view = lookFrom(panel, stand);
  const corners = panel.outline_mm.map(view.toView);
  const from = corners[edge]!;
  const to = corners[(edge + 1) % corners.length]!;
  const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
  const isUpright = Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0]);
  const name = isUpright
    ? middle[0] < view.width / 2
      ? words.start
      : words.finish
    : middle[1] < view.height / 2
      ? words.railA
      : words.railB;
  return corners.length === 4 ? name : `${name}, corner ${edge + 1} to ${((edge + 1) % corners.length) + 1}`;
}

/** How far something is off, in his words: `4 mm to the left, 2 mm up`; `where it was drawn` below half a millimetre. */
export function tellAside([right, up]: Point, { turn }: Stand): string {
  const way = (value: number, less: string, more: string) =>
    Math.round(Math.abs(value)) === 0 ? [] : [`${Math.round(Math.abs(value))} mm ${value < 0 ? less : more}`];
  const [down, upward] = turn === 0 ? ['down', 'up'] : ['toward the lower side', 'toward the upper side'];
  const parts = [...way(right, 'to the left', 'to the right'), ...way(up, down, upward)];
  return parts.length === 0 ? 'where it was drawn' : parts.join(', ');
}
