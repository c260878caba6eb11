import type { Point } from '../../engine/geometry/point.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { showLength } from '../../job/resolve/local-member-type.ts';

/** Shifts smaller than this are none [mm]. */
const NO_SHIFT = 0.05;

/**
 * A shift as one sees it who stands in front of a face, top up: `4 mm to the left and 2 mm up`. In an edge what lies across it is toward or away from the drawn
 * face: up and down differ there with how the panel lies. Null: nothing to speak of.
 *
 * @param shift in the axes of the face [mm]
 * @param length how a length stands there
 */
export function tellShift(
  [x, y]: Point,
  face: CastIn['face'],
  { drawnFace }: Pick<Panel, 'drawnFace'>,
  length: (mm: number) => string = showLength,
): string | null {
  const [up, down] =
    face === 'edge' ? [`toward the ${drawnFace} face`, `away from the ${drawnFace} face`] : ['up', 'down'];
  const parts = [
    ...(Math.abs(x) < NO_SHIFT ? [] : [`${length(Math.abs(x))} to the ${x > 0 ? 'right' : 'left'}`]),
    ...(Math.abs(y) < NO_SHIFT ? [] : [`${length(Math.abs(y))} ${y > 0 ? up : down}`]),
  ];
  return parts.length === 0 ? null : parts.join(' and ');
}
