import type { AsCastInsert } from '../../assess/as-cast/as-cast-report.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { panelSide } from '../../job/face-frame.ts';
import { boxAround } from '../boxes.ts';
import { placeDrawn } from '../screen/panel-sight.ts';

/** From which side a panel is looked at, top up. */
export type StandingSide = 'outside' | 'inside';

/** An insert with where it was found, as one sees it who stands in front of the panel: x right, y up [mm]. */
export interface DeviationMark {
  readonly number: number;
  readonly at: Point;
  /** From the designed place to the found one; on an edge only what runs along it is seen. Null: nobody surveyed it. */
  readonly by: Point | null;
  readonly tolerance: number;
  readonly state: AsCastInsert['state'];
  /** Direction of the edge that it stands in; null: a face. */
  readonly along: Point | null;
}

/** A panel as it is looked at, with its inserts. */
export interface SeenPanel {
  readonly outline: readonly Point[];
  readonly openings: readonly (readonly Point[])[];
  readonly marks: readonly DeviationMark[];
}

/** Turns the drawing over left to right where the panel is looked at from the face that is not drawn. */
function seenFrom(panel: Panel, side: StandingSide): { readonly place: (at: Point) => Point; readonly sign: 1 | -1 } {
  if (panel.drawnFace === side) return { place: (at) => at, sign: 1 };
  const { x, width } = boxAround(panel.outline_mm);
  return { place: ([px, py]) => [2 * x + width - px, py], sign: -1 };
}

/** A panel and its inserts as one sees them from a side. Inserts of the other face are seen through the panel. */
export function seeDeviations(panel: Panel, inserts: readonly AsCastInsert[], side: StandingSide): SeenPanel {
  const { place, sign } = seenFrom(panel, side);
  const turn = ([x, y]: Point): Point => [sign * x, y];
  return {
    outline: panel.outline_mm.map(place),
    openings: panel.openings_mm.map((ring) => ring.map(place)),
    marks: inserts.map(({ item, place: found, state }): DeviationMark => {
      const { castIn } = item;
      const along = castIn.face === 'edge' && castIn.edge !== null ? panelSide(panel, castIn.edge).along : null;
      const step = (dx: number, dy: number): Point => (along === null ? [dx, dy] : [dx * along[0], dx * along[1]]);
      return {
        number: item.number,
        at: place(placeDrawn(panel, castIn)),
        by: found === null ? null : turn(step(found.dx, found.dy)),
        tolerance: item.tolerance,
        state,
        along: along === null ? null : turn(along),
      };
    }),
  };
}
