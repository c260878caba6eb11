import type { Point } from '../../engine/geometry/point.ts';
import type { Fixture, FixtureHole } from '../../job/documents/fixture.ts';
import { type Box, boxAround } from '../boxes.ts';
import type { Drawing, Mark } from '../drawing.ts';
import { drawLine, drawPath, drawText } from '../marks.ts';
import { placeMarks } from '../place.ts';

/** A plate to be drilled, seen from its front. */
export interface Template {
  /** With its holes as they are to be. */
  readonly plate: Fixture;
  /** Ids of the holes that are new or other than on the plate that was made. */
  readonly changed: ReadonlySet<string>;
}

/** Length of the bar by which a print is checked [mm]. */
const CHECK_BAR = 100;

/** Around the plate, for marks beside it [mm]. */
const MARGIN = { side: 8, below: 16, above: 8 } as const;

/** From the rim of a hole to the end of its cross [mm]. */
const CROSS = 4;
const SIZE = 3.2;

/** A hole as it is measured from the datum edges of the plate. Lengths mm. */
export interface TemplateHole {
  readonly id: string;
  readonly isChanged: boolean;
  /** From the left edge, and from the bottom edge, seen from the front. */
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  /** Over all along its direction; the diameter where it is round. */
  readonly length: number;
  readonly angle_deg: number;
}

/** Holes from the datum edges: the left and the bottom side of the plate's extent. */
export function listTemplateHoles({ plate, changed }: Template): readonly TemplateHole[] {
  const { x, y } = boxAround(plate.outline_mm);
  return plate.holes.map(({ id, at_mm, diameter_mm, slot_mm, slotAngle_deg }) => ({
    id,
    isChanged: changed.has(id),
    x: at_mm[0] - x,
    y: at_mm[1] - y,
    diameter: diameter_mm,
    length: diameter_mm + slot_mm,
    angle_deg: slotAngle_deg,
  }));
}

/** Lines and arcs of a hole, so that a drawing program snaps to its middle: a circle, or two straight sides and two half circles. */
function drawHole({ at_mm: at, diameter_mm, slot_mm, slotAngle_deg }: FixtureHole): readonly Mark[] {
  const radius = diameter_mm / 2;
  if (slot_mm === 0) return [{ kind: 'circle', layer: 'hole', at, radius, pen: 'medium', fill: 'none' }];
  const turn = (slotAngle_deg * Math.PI) / 180;
  const [ux, uy] = [Math.cos(turn), Math.sin(turn)];
  const put = (along: number, across: number): Point => [
    at[0] + along * ux - across * uy,
    at[1] + along * uy + across * ux,
  ];
  const half = slot_mm / 2;
  const arc = (end: 1 | -1): Mark => ({
    kind: 'arc',
    layer: 'hole',
    at: put(end * half, 0),
    radius,
    from: turn - end * (Math.PI / 2),
    to: turn + end * (Math.PI / 2),
    pen: 'medium',
  });
  return [
    drawLine('hole', put(-half, radius), put(half, radius), 'medium'),
    drawLine('hole', put(-half, -radius), put(half, -radius), 'medium'),
    arc(1),
    arc(-1),
  ];
}

/** A cross through the middle of a hole, along and across a slot. */
function drawCross({ at_mm: [x, y], diameter_mm, slot_mm, slotAngle_deg }: FixtureHole): readonly Mark[] {
  const turn = (slotAngle_deg * Math.PI) / 180;
  const arm = (angle: number, reach: number): Mark => {
    const [dx, dy] = [reach * Math.cos(angle), reach * Math.sin(angle)];
    return drawLine('datum', [x - dx, y - dy], [x + dx, y + dy], 'hair');
  };
  const across = diameter_mm / 2 + CROSS;
  return [arm(turn, across + slot_mm / 2), arm(turn + Math.PI / 2, across)];
}

function nameHole({ at_mm: [x, y], id, diameter_mm, slot_mm }: FixtureHole, isChanged: boolean): Mark {
  const reach = (diameter_mm + slot_mm) / 2;
  return drawText([x + reach * 0.75 + 1, y + reach * 0.75 + 1], `${isChanged ? '▲ ' : ''}${id}`, SIZE, {
    weight: 'bold',
  });
}

/** The two edges that all is measured from, drawn out beyond the plate. */
function drawDatum({ x, y, width, height }: Box): readonly Mark[] {
  return [
    drawLine('datum', [x, y - 5], [x, y + height + 5], 'thick'),
    drawLine('datum', [x - 5, y], [x + width + 5, y], 'thick'),
    drawText([x + 1.5, y - 4.4], 'datum edges', SIZE),
  ];
}

/** A bar of 100 mm below the plate: what it measures on the print tells whether that is 1:1. */
function drawCheckBar(from: Point): readonly Mark[] {
  const [x, y] = from;
  const ticks = [0, 25, 50, 75, 100].map((at) =>
    drawLine(
      'dimension',
      [x + at, y - (at % 50 === 0 ? 2.5 : 1.5)],
      [x + at, y + (at % 50 === 0 ? 2.5 : 1.5)],
      'medium',
    ),
  );
  return [
    drawLine('dimension', from, [x + CHECK_BAR, y], 'medium'),
    ...ticks,
    drawText([x + CHECK_BAR + 2, y], `${CHECK_BAR} mm: measure it`, SIZE, { baseline: 'middle' }),
  ];
}

/**
 * A plate as it is to be drilled, at 1:1, seen from its front: outline, holes with their middles, the two edges that all is measured from, a bar to check a print by.
 * Its lower left corner of the whole lies at the origin.
 */
export function drawTemplate({ plate, changed }: Template): Drawing {
  const box = boxAround(plate.outline_mm);
  const marks: readonly Mark[] = [
    drawPath('outline', plate.outline_mm, 'medium', true),
    ...(plate.attachment_mm === null ? [] : [drawPath('section', plate.attachment_mm, 'dashed', true)]),
    ...plate.holes.flatMap((hole) => [...drawHole(hole), ...drawCross(hole), nameHole(hole, changed.has(hole.id))]),
    ...drawDatum(box),
    ...drawCheckBar([box.x, box.y - 12]),
    drawText([box.x + 4, box.y + box.height + 2], 'FRONT: this side toward you, away from the concrete', SIZE, {
      weight: 'bold',
    }),
  ];
  return {
    width: Math.max(box.width, CHECK_BAR + 40) + 2 * MARGIN.side,
    height: box.height + MARGIN.below + MARGIN.above,
    marks: placeMarks(marks, { move: [MARGIN.side - box.x, MARGIN.below - box.y] }),
  };
}
