import type { Assembly } from '../../assess/set-out/assembly-type.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Mark } from '../drawing.ts';
import { drawArea, drawLine, drawPath } from '../marks.ts';
import { pointOn, type SectionFrame } from './section-frame.ts';

/** Diameter of the foot [mm]; of one known by its bearing area that of a round foot with as much. */
export function findFootDiameter({ foot, bodyDiameter_mm }: CatalogueItem): number {
  if (foot.kind === 'diameter') return foot.diameter_mm;
  return Math.sqrt((4 * foot.area_mm2) / Math.PI + bodyDiameter_mm ** 2);
}

/** How far the axis is drawn beyond the insert [mm]. */
const AXIS_BEYOND = 8;

/** An insert at 1:1 in its section: body and foot as one solid, its bore and thread as hidden lines, its axis. */
export function drawInsertBody(frame: SectionFrame, item: CatalogueItem): readonly Mark[] {
  const on = (u: number, v: number) => pointOn(frame, u, v);
  const { length_mm: length, embedment_mm: bearing } = item;
  const body = item.bodyDiameter_mm / 2;
  const foot = findFootDiameter(item) / 2;
  const thread = findThread(item.thread).diameter / 2;
  const start = item.threadStartsBelowTop_mm;
  const end = start + item.threadDepth_mm;
  const outline = [
    on(0, -body),
    on(bearing, -body),
    on(bearing, -foot),
    on(length, -foot),
    on(length, foot),
    on(bearing, foot),
    on(bearing, body),
    on(0, body),
  ];
  return [
    drawArea('insert', 'medium', 'white', outline),
    drawPath('insert', [on(0, -thread), on(end, -thread), on(end, thread), on(0, thread)], 'dashed'),
    ...(start > 0 ? [drawLine('insert', on(start, -thread), on(start, thread), 'dashed')] : []),
    drawLine('insert', on(-AXIS_BEYOND, 0), on(length + AXIS_BEYOND, 0), 'dash-dot'),
  ];
}

/** The cross hole, where no bar is in it: hidden lines across the body. */
export function drawCrossHole(frame: SectionFrame, item: CatalogueItem): readonly Mark[] {
  if (item.crossHole === null) return [];
  const u = item.length_mm - item.crossHole.fromFoot_mm;
  const [body, hole] = [item.bodyDiameter_mm / 2, item.crossHole.diameter_mm / 2];
  return [-1, 1].map((side) =>
    drawLine('insert', pointOn(frame, u + side * hole, -body), pointOn(frame, u + side * hole, body), 'dashed'),
  );
}

/** A cross bar seen from its side, at 1:1, as much of it as the picture shows. */
export interface DrawnBar {
  readonly marks: readonly Mark[];
  /** Ends of its axis, the one aside in the positive direction last. */
  readonly ends: readonly [Point, Point];
}

/** Draws the cross bar; cut where it reaches further than `reach` to either side of the axis [mm]. */
export function drawCrossBar(
  frame: SectionFrame,
  item: CatalogueItem,
  bar: NonNullable<Assembly['crossBar']>,
  reach: number,
): DrawnBar {
  const u = item.length_mm - bar.fromFoot;
  const isCut = bar.length / 2 > reach;
  const radius = bar.diameter / 2;
  const half = isCut ? reach - radius : bar.length / 2;
  const on = (a: number, b: number) => pointOn(frame, u + a, b);
  // A cut end is slanted, as a broken bar is drawn.
  const slant = isCut ? radius : 0;
  const ring = [
    on(-radius, -half - slant),
    on(radius, -half + slant),
    on(radius, half + slant),
    on(-radius, half - slant),
  ];
  return { marks: [drawArea('bar', 'medium', 'grey', ring)], ends: [on(0, -half), on(0, half)] };
}
