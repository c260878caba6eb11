import { adjust } from '../geometry/least-squares.ts';
import type { Point } from '../geometry/point.ts';
import { type TapeClass, tapeDeviation, uniformDeviation } from './tape-error.ts';

/** Standard deviations along x and y of the form [mm]. */
export interface Scatter {
  readonly x: number;
  readonly y: number;
}

/** A group set out from its centre. Lengths mm. */
export interface GroupToScatter {
  readonly tapeClass: TapeClass;
  /** Centre of the group, from the datum corner along the form. */
  readonly centre: Point;
  /** Members from the centre, along the form. */
  readonly offsets: readonly Point[];
  /** Members are held by a template board in place of being taped one by one. */
  readonly hasTemplate: boolean;
  /** Two members whose distance is taped as a check; null: none. */
  readonly diagonal: readonly [number, number] | null;
}

/** What a group's places scatter by. */
export interface GroupScatter {
  readonly centre: Scatter;
  /** Each dimension from the centre to a member. */
  readonly offsets: readonly Scatter[];
  /** The check diagonal as taped; null: none. */
  readonly diagonal: number | null;
  /** Each member as placed. */
  readonly members: readonly Scatter[];
}

/** How far a hole of a template board may lie from its place [mm]: common practice, ± 1 to 2 mm inside a group. */
const TEMPLATE = 1.5;

/**
 * Scatter of a place taped from the datum edges by x and y [mm].
 *
 * @param at from the datum corner along the form
 */
export function scatterOfPlace(tapeClass: TapeClass, [x, y]: Point): Scatter {
  return { x: tapeDeviation(tapeClass, Math.abs(x)), y: tapeDeviation(tapeClass, Math.abs(y)) };
}

/** Adds scatters that do not depend on each other, such as taping and holding [mm]. */
export function addScatter(...parts: readonly Scatter[]): Scatter {
  return { x: Math.hypot(...parts.map(({ x }) => x)), y: Math.hypot(...parts.map(({ y }) => y)) };
}

/**
 * Scatter of the members of a group whose centre is taped from the datum edges and whose members are set from the centre, by tape or by a
 * template board; where a diagonal is taped as a check and the members are set to agree with it, what that is worth.
 *
 * All dimensions are observations of one least-squares adjustment; the answers are the square roots of its variances.
 *
 * @example class II, centre (2400, 600), one member at (100, 0): x √(0.829² + 0.707²) = 1.090 mm
 */
export function scatterOfGroup(group: GroupToScatter): GroupScatter {
  const { tapeClass, centre, offsets, diagonal } = group;
  const atCentre = scatterOfPlace(tapeClass, centre);
  const board = uniformDeviation(TEMPLATE);
  const eachOffset = offsets.map((offset) =>
    group.hasTemplate ? { x: board, y: board } : scatterOfPlace(tapeClass, offset),
  );

  // Unknowns: how far centre and members lie off, x and y in turn.
  const count = 2 + 2 * offsets.length;
  const row = (entries: readonly (readonly [column: number, value: number])[]) => {
    const line = new Array<number>(count).fill(0);
    for (const [column, value] of entries) line[column] = value;
    return line;
  };
  const rows = [row([[0, 1]]), row([[1, 1]])];
  const deviations = [atCentre.x, atCentre.y];
  eachOffset.forEach((offset, i) => {
    for (const axis of [0, 1] as const) {
      rows.push(
        row([
          [axis, -1],
          [2 + 2 * i + axis, 1],
        ]),
      );
      deviations.push(axis === 0 ? offset.x : offset.y);
    }
  });
  const across = diagonal === null ? null : diagonalOf(offsets, diagonal);
  const acrossDeviation = across === null ? null : tapeDeviation(tapeClass, across.length);
  if (across !== null && acrossDeviation !== null && diagonal !== null) {
    const [from, to] = diagonal.map((member) => 2 + 2 * member) as [number, number]; // of a pair
    const [ux, uy] = across.direction;
    rows.push(
      row([
        [from, -ux],
        [from + 1, -uy],
        [to, ux],
        [to + 1, uy],
      ]),
    );
    deviations.push(acrossDeviation);
  }
  const adjusted = adjust(
    rows,
    rows.map(() => 0),
    deviations,
  );
  if (adjusted === null) throw new Error('the dimensions of a group leave a member open');
  const sigma = (k: number) => Math.sqrt(adjusted.covariance[k]![k]!);
  return {
    centre: atCentre,
    offsets: eachOffset,
    diagonal: acrossDeviation,
    members: offsets.map((_, i) => ({ x: sigma(2 + 2 * i), y: sigma(3 + 2 * i) })),
  };
}

/** @throws Error when the diagonal names a member that is not there, or one place twice */
function diagonalOf(offsets: readonly Point[], [from, to]: readonly [number, number]) {
  const [a, b] = [offsets[from], offsets[to]];
  const length = a === undefined || b === undefined ? 0 : Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (a === undefined || b === undefined || length === 0)
    throw new Error(
      `a diagonal from member ${from} to ${to}, expected two of the ${offsets.length} members (counted from 0), apart`,
    );
  const direction: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  return { length, direction };
}
