import type { ConnectionSketch, SketchHole } from '../../../../drawing/sketch/connection-sketch.ts';
import type { Point, Polygon } from '../../../../engine/geometry/point.ts';

/** From the face [mm, y up] to the screen [px, y down]. */
export interface ScreenView {
  readonly put: (at: Point) => Point;
  /** Pixels a mm. */
  readonly scale: number;
}

/** The whole extent in the middle of a place of the screen. */
export function viewExtent(
  { x, y, width, height }: ConnectionSketch['extent'],
  size: { readonly width: number; readonly height: number },
): ScreenView {
  const scale = Math.min(size.width / width, size.height / height);
  const [left, low] = [(size.width - width * scale) / 2, size.height - (size.height - height * scale) / 2];
  return { scale, put: ([px, py]) => [left + (px - x) * scale, low - (py - y) * scale] };
}

const write = (value: number) => Math.round(value * 10) / 10;

/** A ring as a path. */
export function writeRing({ put }: ScreenView, ring: Polygon): string {
  return `M${ring.map((at) => put(at).map(write).join(' ')).join('L')}Z`;
}

/** A hole, with its straight part, as a path. */
export function writeHole({ put, scale }: ScreenView, { at, diameter, slot, turn }: SketchHole): string {
  const [x, y] = put(at);
  const r = write((diameter / 2) * scale);
  const half = (slot / 2) * scale;
  const [ux, uy] = [Math.cos(turn), -Math.sin(turn)];
  const corner = (along: number, across: number) =>
    `${write(x + along * ux - across * uy)} ${write(y + along * uy + across * ux)}`;
  return `M${corner(-half, -r)}L${corner(half, -r)}A${r} ${r} 0 0 1 ${corner(half, r)}L${corner(-half, r)}A${r} ${r} 0 0 1 ${corner(-half, -r)}Z`;
}

/** A line with a head at its end: the line ends where the head begins. */
export interface Arrow {
  readonly line: string;
  readonly head: string;
  readonly tip: Point;
}

/** An arrow from a point of the screen, in a direction of the face. @param head length of its head [px] */
export function layArrow([x, y]: Point, [dx, dy]: Point, length: number, head: number): Arrow {
  const size = Math.hypot(dx, dy);
  const [ux, uy] = [dx / size, -dy / size];
  const at = (along: number, across: number): Point => [x + along * ux - across * uy, y + along * uy + across * ux];
  const show = (point: Point) => point.map(write).join(' ');
  const neck = Math.max(0, length - head);
  return {
    line: `M${show([x, y])}L${show(at(neck, 0))}`,
    head: `M${show(at(length, 0))}L${show(at(neck, head / 2))}L${show(at(neck, -head / 2))}Z`,
    tip: at(length, 0),
  };
}
