import type { FormPlace, SetOutItem } from '../assess/set-out/set-out.ts';
import type { Point } from '../engine/geometry/point.ts';
import type { Mark } from './drawing.ts';
import { drawArea, drawLine, rectangle } from './marks.ts';
import { circleRing } from './place.ts';

export type Role = SetOutItem['castIn']['role'];

/** Order of the legend: what is computed first. */
export const ROLES = ['fixing', 'brace', 'lifting', 'tie', 'duct', 'plate', 'other'] as const satisfies readonly Role[];
export const PLACES = ['mould face', 'trowelled face', 'edge'] as const satisfies readonly FormPlace[];

const CIRCLE = circleRing([0, 0], 1);

/** Arms of the tie's cross: half their width, and how far they reach along each axis. */
const ARM = { half: 0.24, reach: 0.72 };

/** A cross with its arms on the diagonals, as one ring. */
function crossRing(): readonly Point[] {
  const { half, reach } = ARM;
  const arm: readonly Point[] = [
    [reach + half, reach - half],
    [reach - half, reach + half],
    [0, 2 * half],
  ];
  return [0, 1, 2, 3].flatMap((quarter) =>
    arm.map(([x, y]): Point => {
      const turned: readonly Point[] = [
        [x, y],
        [-y, x],
        [-x, -y],
        [y, -x],
      ];
      return turned[quarter]!;
    }),
  );
}

/** Outlines by role, about the size of a circle of radius 1; a second ring is a hole. Told apart without colour, solid or open. */
const RINGS: Readonly<Record<Role, readonly (readonly Point[])[]>> = {
  fixing: [CIRCLE],
  brace: [
    [
      [1.2, 0],
      [0, 1.2],
      [-1.2, 0],
      [0, -1.2],
    ],
  ],
  lifting: [
    [
      [1.1, -0.7],
      [0, 1],
      [-1.1, -0.7],
    ],
  ],
  tie: [crossRing()],
  duct: [CIRCLE, circleRing([0, 0], 0.5)],
  plate: [rectangle(-0.9, -0.9, 1.8, 1.8)],
  other: [
    [
      [1.4, 0],
      [0.7, 0.7],
      [-0.7, 0.7],
      [-1.4, 0],
      [-0.7, -0.7],
      [0.7, -0.7],
    ],
  ],
};

/** Strokes beside the outline: the bar over a lifting triangle. */
const STROKES: Readonly<Partial<Record<Role, readonly (readonly [Point, Point])[]>>> = {
  lifting: [
    [
      [-0.8, 1.25],
      [0.8, 1.25],
    ],
  ],
};

/** The part of a ring where x ≥ 0 (clipping by Sutherland and Hodgman). */
function clipInward(ring: readonly Point[]): readonly Point[] {
  return ring.flatMap((to, i) => {
    const from = ring[(i + ring.length - 1) % ring.length]!;
    const crossing: readonly Point[] =
      from[0] >= 0 === to[0] >= 0 ? [] : [[0, from[1] + (from[0] / (from[0] - to[0])) * (to[1] - from[1])]];
    return to[0] >= 0 ? [...crossing, to] : crossing;
  });
}

/** Half the length of the cross in the middle of an open shape. */
const MIDDLE = 0.45;

/**
 * The shape of a role, by the face that it is in: solid on the mould face, open with a cross in its middle at the trowelled face, half solid on
 * an edge, the solid half (toward +x) into the concrete. Drawn for a radius of 1.
 */
export function shapeOf(role: Role, place: FormPlace): readonly Mark[] {
  const rings = RINGS[role];
  const strokes = (STROKES[role] ?? []).map(([from, to]) => drawLine('insert', from, to, 'medium'));
  if (place === 'mould face') return [drawArea('insert', 'thin', 'black', ...rings), ...strokes];
  const open = drawArea('insert', 'medium', 'white', ...rings);
  if (place === 'edge') return [open, drawArea('insert', null, 'black', ...rings.map(clipInward)), ...strokes];
  if (rings.length > 1) return [open, ...strokes];
  return [
    open,
    drawLine('insert', [-MIDDLE, 0], [MIDDLE, 0], 'thin'),
    drawLine('insert', [0, -MIDDLE], [0, MIDDLE], 'thin'),
    ...strokes,
  ];
}
