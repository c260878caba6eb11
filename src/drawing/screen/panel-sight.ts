import { viewPanel } from '../../assess/set-out/panel-view.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { panelSide } from '../../job/face-frame.ts';

/** How a panel is looked at: as drawn, or as it lies in the form, seen from above. */
export type SightKind = 'drawn' | 'form';

/** One way of looking at a panel. Lengths mm; x right and y up as seen. */
export interface PanelSight {
  readonly kind: SightKind;
  /** From coordinates of the drawn face, and back. */
  readonly toView: (drawn: Point) => Point;
  readonly toDrawn: (view: Point) => Point;
  /** What a person reads and types: distances from the datum corner in the form, the drawing's coordinates on the drawn face; and back. */
  readonly toRead: (drawn: Point) => Point;
  readonly fromRead: (read: Point) => Point;
  /** Extent of the panel in the view. */
  readonly box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number };
  /** Where x and y are counted from, in the view; null outside the extent. */
  readonly originAt: Point;
  readonly isMirrored: boolean;
}

function extentOf(points: readonly Point[]): PanelSight['box'] {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}

/** Looks at a panel. One data, two sights: nothing is stored of either. */
export function lookAt(panel: Panel, kind: SightKind): PanelSight {
  if (kind === 'drawn') {
    const same = (at: Point) => at;
    return {
      kind,
      toView: same,
      toDrawn: same,
      toRead: same,
      fromRead: same,
      box: extentOf(panel.outline_mm),
      originAt: [0, 0],
      isMirrored: false,
    };
  }
  const view = viewPanel(panel);
  const [datumX, datumY] = view.datumAt;
  return {
    kind,
    toView: view.toPlan,
    toDrawn: ([x, y]) =>
      // The plan counts from the lower left, the form from the datum corner, both along the same axes.
      view.toDrawing([datumX === 0 ? x : datumX - x, datumY === 0 ? y : datumY - y]),
    toRead: view.toForm,
    fromRead: view.toDrawing,
    box: { minX: 0, minY: 0, maxX: view.length, maxY: view.width },
    originAt: view.datumAt,
    isMirrored: view.isMirrored,
  };
}

/** A place of the documents on the drawn face; of an edge, the point of the side below it. */
export function placeDrawn(
  panel: Panel,
  {
    face,
    edge,
    x_mm,
    y_mm,
  }: { readonly face: string; readonly edge: number | null; readonly x_mm: number; readonly y_mm: number },
): Point {
  if (face !== 'edge' || edge === null) return [x_mm, y_mm];
  const { from, along } = panelSide(panel, edge);
  return [from[0] + along[0] * x_mm, from[1] + along[1] * x_mm];
}

/** A step on the drawn face as the documents give places of a face: along an edge for what is on it. */
export function stepOnFace(
  panel: Panel,
  { face, edge }: { readonly face: string; readonly edge: number | null },
  [dx, dy]: Point,
): Point {
  if (face !== 'edge' || edge === null) return [dx, dy];
  const { along } = panelSide(panel, edge);
  return [dx * along[0] + dy * along[1], 0];
}

/** A point of the drawn face as documents give places of a face: on an edge the nearest place along it, at half the thickness. */
export function placeOnDocument(panel: Panel, face: 'outside' | 'inside' | 'edge', edge: number, drawn: Point): Point {
  if (face !== 'edge') return drawn;
  const { from, along } = panelSide(panel, edge);
  return [(drawn[0] - from[0]) * along[0] + (drawn[1] - from[1]) * along[1], panel.thickness_mm / 2];
}
