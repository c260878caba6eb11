import { faceOfItem, topOfItem } from '../../../assess/as-cast/item-face.ts';
import type { DesignPoint } from '../../../assess/as-cast/match-points.ts';
import type { SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { Vector } from '../../../engine/survey/vector.ts';
import type { CastIn } from '../../../job/documents/cast-in.ts';
import type { Panel } from '../../../job/documents/panel.ts';
import { frameOf } from '../../../job/face-frame.ts';

/** In the plane of the panel's drawing, the height out of its drawn face third [mm]. */
export type Spot = readonly [x: number, y: number, z: number];

/** A corner of the panel's outline, on one of its large faces. */
export interface CornerTarget {
  readonly name: string;
  readonly at: Spot;
}

/** Height of a large face above the drawn one. */
function heightOf(panel: Panel, face: 'outside' | 'inside'): number {
  return face === panel.drawnFace ? 0 : 0 - panel.thickness_mm;
}

/** Where the middle of an insert's top is designed, and which way is out of the concrete there. */
export function spotOf(panel: Panel, castIn: CastIn): { readonly at: Vector; readonly out: Vector } {
  return { at: topOfItem(panel, castIn), out: faceOfItem(panel, castIn).out };
}

/** The corners that an instrument may have taken: of both large faces where it took heights, else one each. */
export function listCorners(panel: Panel, hasHeights: boolean): readonly CornerTarget[] {
  const faces = hasHeights ? (['outside', 'inside'] as const) : [panel.drawnFace];
  return faces.flatMap((face) =>
    panel.outline_mm.map(([x, y], k) => ({
      name: hasHeights ? `corner ${k + 1}, ${face}` : `corner ${k + 1}`,
      at: [x, y, heightOf(panel, face)] as const,
    })),
  );
}

/** What a survey with heights may have taken of a panel, for the matching. */
export function listSolidPoints(panel: Panel, items: readonly SetOutItem[]): readonly DesignPoint[] {
  return [
    ...items.map(({ castIn, number }): DesignPoint => {
      const { at, out } = spotOf(panel, castIn);
      return { key: castIn.key, number: String(number), at, kind: 'insert', out };
    }),
    ...listCorners(panel, true).map(({ name, at }): DesignPoint => ({ key: name, number: name, at, kind: 'control' })),
  ];
}

/** What a survey without heights may have taken, standing in front of a large face: inserts in it, and corners. */
export function listFlatPoints(
  panel: Panel,
  items: readonly SetOutItem[],
  face: 'outside' | 'inside',
): readonly DesignPoint[] {
  const { toFace } = frameOf(panel, { face, edge: null });
  return [
    ...items.flatMap(({ castIn, number }): DesignPoint[] =>
      castIn.face === face
        ? [{ key: castIn.key, number: String(number), at: toFace([castIn.x_mm, castIn.y_mm]), kind: 'insert' }]
        : [],
    ),
    ...listCorners(panel, false).map(
      ({ name, at: [x, y] }): DesignPoint => ({ key: name, number: name, at: toFace([x, y]), kind: 'control' }),
    ),
  ];
}
