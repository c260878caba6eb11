import type { PanelSight } from '../../../../../drawing/screen/panel-sight.ts';
import type { Point } from '../../../../../engine/geometry/point.ts';

/** What of a panel is seen and how large: a point of the view (x, y, up) lies at (left + scale·x, top − scale·y) on the screen [px]. */
export interface Camera {
  readonly scale: number;
  readonly left: number;
  readonly top: number;
}

export type Extent = PanelSight['box'];

/** px a mm: from a whole bed across a phone to a hair's breadth. */
const LEAST_SCALE = 0.01;
const MOST_SCALE = 20;

/** Room around what is fitted, for dimensions and names [px]. */
const MARGIN = 44;

/** Shows all of an extent in the middle. */
export function fitCamera({ minX, minY, maxX, maxY }: Extent, width: number, height: number): Camera {
  const room = Math.min(MARGIN, width / 8, height / 8);
  const scale = Math.min((width - 2 * room) / (maxX - minX), (height - 2 * room) / (maxY - minY));
  const used = Math.max(LEAST_SCALE, scale);
  return {
    scale: used,
    left: width / 2 - (used * (minX + maxX)) / 2,
    top: height / 2 + (used * (minY + maxY)) / 2,
  };
}

export function toScreen({ scale, left, top }: Camera, [x, y]: Point): Point {
  return [left + scale * x, top - scale * y];
}

export function fromScreen({ scale, left, top }: Camera, [x, y]: Point): Point {
  return [(x - left) / scale, (top - y) / scale];
}

export function panCamera({ scale, left, top }: Camera, [dx, dy]: Point): Camera {
  return { scale, left: left + dx, top: top + dy };
}

/** Enlarges about a point of the screen, which stays where it is. */
export function zoomCamera(camera: Camera, factor: number, [x, y]: Point): Camera {
  const scale = Math.min(MOST_SCALE, Math.max(LEAST_SCALE, camera.scale * factor));
  const by = scale / camera.scale;
  return { scale, left: x - by * (x - camera.left), top: y - by * (y - camera.top) };
}
