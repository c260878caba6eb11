import * as z from 'zod';
import { findHoleFit, findRoundSlackNeeded } from '../engine/tolerance/hole-fit.ts';
import { IGNORED_KEYS, numberAbove0, numberIn, words } from './fields.ts';
import { holeField, listNameFaults, readHole } from './plate-holes.ts';

const RADIANS = Math.PI / 180;

const standing = z.strictObject(
  {
    id: words('the name of the hole that the bolt goes into'),
    x_mm: numberIn(-1e6, 1e6, 'mm', 'x of the bolt in the axes of the plate'),
    y_mm: numberIn(-1e6, 1e6, 'mm', 'y of the bolt in the axes of the plate'),
  },
  { error: 'expected a bolt as it stands { "id", "x_mm", "y_mm" }' },
);

const input = z
  .strictObject({
    calc: z.literal('hole-fit'),
    ...IGNORED_KEYS,
    bolt_mm: numberAbove0(1000, 'mm', 'the diameter of the bolts'),
    holes: z
      .array(holeField, { error: 'expected a list of holes in the plate' })
      .min(1, { error: 'expected at least one hole' }),
    asCast: z.array(standing, { error: 'expected a list of bolts as they stand, one for each hole' }),
    mostTurn_deg: numberIn(0, 180, 'degrees', 'the most that the plate may be turned, either way').default(180),
  })
  .superRefine(({ holes, asCast }, context) => {
    const refuse = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
    for (const { path, message } of [
      ...listNameFaults('holes', holes, 'holes'),
      ...listNameFaults('asCast', asCast, 'bolts'),
    ])
      refuse([...path], message);
    asCast.forEach(({ id }, i) => {
      if (!holes.some((hole) => hole.id === id))
        refuse(['asCast', i, 'id'], `"${id}" is not a hole of the plate, expected one of ${quoteAll(holes)}`);
    });
    const without = holes.filter(({ id }) => !asCast.some((bolt) => bolt.id === id));
    if (without.length > 0)
      refuse(['asCast'], `has no bolt for ${quoteAll(without)}, expected a bolt for each hole of the plate`);
  });

const quoteAll = (all: readonly { readonly id: string }[]) => all.map(({ id }) => `"${id}"`).join(', ');

const output = z.strictObject({
  fits: z.boolean(),
  margin_mm: z.number(),
  provenWithin_mm: z.number(),
  move: z.strictObject({ dx_mm: z.number(), dy_mm: z.number(), turn_deg: z.number() }),
  holes: z.array(z.strictObject({ id: z.string(), clearance_mm: z.number() })),
  roundHoleNeeded_mm: z.number(),
});

/** The movement of a plate that leaves its bolts the largest least clearance, as the contract gives it. */
function run(given: z.infer<typeof input>): z.infer<typeof output> {
  const { bolt_mm, holes, asCast, mostTurn_deg } = given;
  const plate = holes.map((hole) => readHole(hole, bolt_mm));
  const bolts = holes.map(({ id }) => {
    const { x_mm, y_mm } = asCast.find((bolt) => bolt.id === id)!;
    return [x_mm, y_mm] as const;
  });
  const mostTurn = mostTurn_deg * RADIANS;
  const fit = findHoleFit(plate, bolts, mostTurn);
  const slack = findRoundSlackNeeded(
    plate.map(({ at }) => at),
    bolts,
    mostTurn,
  );
  return {
    fits: fit.fits,
    margin_mm: fit.margin,
    provenWithin_mm: fit.provenWithin,
    move: { dx_mm: fit.move.shift[0], dy_mm: fit.move.shift[1], turn_deg: fit.move.turn / RADIANS },
    holes: holes.map(({ id }, i) => ({ id, clearance_mm: fit.clearances[i]! })),
    roundHoleNeeded_mm: bolt_mm + 2 * slack,
  };
}

/** The calculation `hole-fit` of the contract. */
export const holeFitCalc = {
  name: 'hole-fit',
  gives: 'the best movement of a plate over bolts as they stand, proven, and whether it goes on',
  input,
  output,
  run,
} as const;
