import type { PositionBox } from '../../assess/zone/find-box.ts';
import type { PositionZone, ZoneReach } from '../../assess/zone/trace-position-zone.ts';
import type { Point, Polygon } from '../../engine/geometry/point.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { frameOf, type PanelFace } from '../../job/face-frame.ts';

/** A side of the face as one stands in front of it. */
export type FaceSide = 'right' | 'left' | 'top' | 'bottom';

/** A position zone on the face seen from its front: x right, y up, from the place as designed [mm]. */
export interface ZoneSketch {
  readonly boundary: Polygon;
  readonly holes: readonly Polygon[];
  /** Half the side of the square that is shown. */
  readonly extent: number;
  /** Half the side of the square that was looked at. */
  readonly window: number;
  /** Half the sides of the box that all inserts may have at once; null: none, or not known yet. */
  readonly box: Point | null;
  readonly reaches: readonly (Pick<ZoneReach, 'reach' | 'limit'> & { readonly side: FaceSide })[];
  /** Length of the bar that tells the scale. */
  readonly bar: number;
}

/** Room around a zone, as a share of its own size. */
const ROOM = 1.25;

/** Lengths that a scale bar may have [mm]. */
const BARS = [0.5, 1, 2, 5, 10, 20] as const;

const WAYS: Readonly<Record<ZoneReach['toward'], Point>> = {
  'smaller x': [-1, 0],
  'greater x': [1, 0],
  'smaller y': [0, -1],
  'greater y': [0, 1],
};

function nameSide([x, y]: Point): FaceSide {
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? 'right' : 'left';
  return y > 0 ? 'top' : 'bottom';
}

/** Turns shifts in the axes of the job to those of the face seen from its front. */
export function sketchZone(
  panel: Panel,
  face: PanelFace,
  zone: PositionZone,
  box: Pick<PositionBox, 'size'> | null,
): ZoneSketch {
  const { toFace } = frameOf(panel, face);
  const [x0, y0] = toFace([0, 0]);
  const turn = (shift: Point): Point => {
    const [x, y] = toFace(shift);
    return [x - x0 + 0, y - y0 + 0];
  };
  const { size } = box ?? { size: { along: 0, across: 0 } };
  const isBox = size.along > 0 && size.across > 0;
  const most = Math.max(...zone.boundary.map(([x, y]) => Math.max(Math.abs(x), Math.abs(y))), 1);
  const extent = Math.min(ROOM * Math.max(most, isBox ? Math.max(size.along, size.across) : 0), 1.1 * zone.window);
  return {
    boundary: zone.boundary.map(turn),
    holes: zone.holes.map((hole) => hole.map(turn)),
    extent,
    window: zone.window,
    box: isBox ? [size.along, size.across] : null,
    reaches: zone.reaches.map(({ toward, reach, limit }) => ({ side: nameSide(turn(WAYS[toward])), reach, limit })),
    bar: BARS.findLast((length) => length <= extent / 2) ?? BARS[0],
  };
}
