import type { Panel } from '../../job/documents/panel.ts';
import { frameOf, type PanelFace } from '../../job/face-frame.ts';
import type { PanelSight } from './panel-sight.ts';

/**
 * A direction on a face, as one stands in front of it, as it runs where the panel is looked at: left of the one may be right of the other [rad].
 * On an edge it stays: an edge is looked at from its own front.
 */
export function turnToView(panel: Panel, face: PanelFace, { toView }: PanelSight, direction: number): number {
  if (face.face === 'edge') return direction;
  const drawn = frameOf(panel, face).isMirrored ? Math.PI - direction : direction;
  const [x0, y0] = toView([0, 0]);
  const [x, y] = toView([Math.cos(drawn), Math.sin(drawn)]);
  return Math.atan2(y - y0, x - x0);
}
