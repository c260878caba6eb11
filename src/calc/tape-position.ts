import * as z from 'zod';
import { FormError } from '../engine/form/form-error.ts';
import { tapeDeviation } from '../engine/form/tape-error.ts';
import { findTapedPosition, type TapedPosition } from '../engine/form/tape-position.ts';
import type { TapedDistance } from '../engine/form/taped-distance.ts';
import type { Point } from '../engine/geometry/point.ts';
import { CalcError } from './calc-error.ts';
import { IGNORED_KEYS, numberAbove0, numberIn, pointField } from './fields.ts';

const TO = 'expected { "edge": [[x, y], [x, y]] } or { "point": [x, y] } in mm';

const target = z.strictObject(
  {
    edge: z
      .tuple([pointField, pointField], { error: 'expected the two ends of an edge, [[x, y], [x, y]] in mm' })
      .optional(),
    point: pointField.optional(),
  },
  { error: (issue) => (issue.code === 'invalid_type' ? TO : undefined) },
);

const distance = z.strictObject(
  {
    to: target,
    distance_mm: numberIn(0, 1e6, 'mm', 'the measured distance'),
    sigma_mm: numberAbove0(1e5, 'mm', 'the standard deviation of the distance').nullable().optional(),
  },
  {
    error: (issue) =>
      issue.code === 'invalid_type' ? 'expected a distance { "to", "distance_mm", "sigma_mm" }' : undefined,
  },
);

const input = z
  .strictObject({
    calc: z.literal('tape-position'),
    ...IGNORED_KEYS,
    tapeClass: z
      .enum(['I', 'II'], {
        error: 'expected the class of the tape, "I" or "II", or null where each distance has its sigma_mm',
      })
      .nullable(),
    guess_mm: pointField,
    measured: z
      .array(distance, { error: 'expected a list of distances [{ "to", "distance_mm", "sigma_mm" }, …]' })
      .min(2, { error: 'expected at least two distances' })
      .max(500, { error: 'expected at most 500 distances' }),
  })
  .superRefine(({ tapeClass, measured }, context) => {
    const refuse = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
    measured.forEach(({ to, distance_mm, sigma_mm }, i) => {
      const at = ['measured', i];
      if ((to.edge === undefined) === (to.point === undefined))
        refuse([...at, 'to'], `${to.edge === undefined ? 'names neither' : 'names both'}, ${TO}`);
      if (to.edge !== undefined && to.edge[0][0] === to.edge[1][0] && to.edge[0][1] === to.edge[1][1])
        refuse([...at, 'to', 'edge'], 'has both ends in one point, expected two points apart');
      if (to.point !== undefined && distance_mm === 0)
        refuse([...at, 'distance_mm'], '0 mm to a point leaves no direction, expected more than 0 mm');
      if ((sigma_mm === undefined || sigma_mm === null) && tapeClass === null)
        refuse([...at, 'sigma_mm'], 'is missing, expected it for each distance where tapeClass is null');
    });
  });

const output = z.strictObject({
  x_mm: z.number(),
  y_mm: z.number(),
  sigma_x_mm: z.number(),
  sigma_y_mm: z.number(),
  residuals_mm: z.array(z.number()),
  suspect: z.int().nullable(),
  notes: z.array(z.string()),
});

type Input = z.infer<typeof input>;

/** A position from taped distances, as the contract gives it. */
function run(given: Input): z.infer<typeof output> {
  const measured = given.measured.map((one) => readDistance(one, given.tapeClass));
  const found = find(measured, given.guess_mm);
  return {
    x_mm: found.at[0],
    y_mm: found.at[1],
    sigma_x_mm: found.sigmaX,
    sigma_y_mm: found.sigmaY,
    residuals_mm: [...found.residuals],
    suspect: found.blunder.kind === 'at' ? found.blunder.index : null,
    notes: describe(found, measured),
  };
}

/** The schema has seen to it that a distance goes to an edge or a point, and has a deviation or a tape. */
function readDistance(
  { to, distance_mm, sigma_mm }: Input['measured'][number],
  tapeClass: Input['tapeClass'],
): TapedDistance {
  return {
    to: to.edge === undefined ? { kind: 'point', at: to.point! } : { kind: 'edge', from: to.edge[0], end: to.edge[1] },
    distance: distance_mm,
    deviation: sigma_mm ?? tapeDeviation(tapeClass!, distance_mm),
  };
}

function find(measured: readonly TapedDistance[], guess: Point): TapedPosition {
  try {
    return findTapedPosition(measured, guess);
  } catch (error) {
    if (error instanceof FormError)
      throw new CalcError(error.about === 'guess' ? 'guess_mm' : 'measured', error.message);
    throw error;
  }
}

function describe(found: TapedPosition, measured: readonly TapedDistance[]): string[] {
  const notes: string[] = [];
  const { blunder, redundancy, notOnSideOfGuess } = found;
  if (notOnSideOfGuess.length > 0)
    notes.push(
      `the place lies across the edge of ${notOnSideOfGuess.map((i) => `measured[${i}]`).join(', ')} from guess_mm: the distances contradict the side of the guess; see that this is where the insert is`,
    );
  if (redundancy === 0) notes.push('two distances only: a slip in one of them would not show; measure a third');
  if (blunder.kind === 'at')
    notes.push(
      `measured[${blunder.index}] does not agree with the others: residual ${found.residuals[blunder.index]!.toFixed(1)} mm, ${Math.abs(found.normalised[blunder.index]!).toFixed(1)} times its standard deviation; measure it again`,
    );
  if (blunder.kind === 'one of')
    notes.push(
      `the distances contradict each other; which of ${blunder.indices.map((i) => `measured[${i}]`).join(', ')} is wrong cannot be told: measure one more`,
    );
  const unchecked = found.normalised.flatMap((w, i) => (w === null ? [`measured[${i}]`] : []));
  if (redundancy > 0 && unchecked.length > 0) notes.push(`no other distance checks ${unchecked.join(', ')}`);
  measured.forEach(({ to }, i) => {
    if (to.kind === 'edge' && !meetsEdge(to.from, to.end, found.at))
      notes.push(`measured[${i}]: square to its edge the tape meets the line beyond the edge's ends`);
  });
  return notes;
}

/** Whether the foot of the perpendicular lies on the edge, or beyond it by no more than a hair. */
function meetsEdge([x0, y0]: Point, [x1, y1]: Point, [x, y]: Point): boolean {
  const along = ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / ((x1 - x0) ** 2 + (y1 - y0) ** 2);
  return along >= -1e-6 && along <= 1 + 1e-6;
}

/** The calculation `tape-position` of the contract. */
export const tapePositionCalc = {
  name: 'tape-position',
  gives: 'a position from distances taped to edges and points, how sure it is, and a distance that does not agree',
  input,
  output,
  run,
} as const;
