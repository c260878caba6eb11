import * as z from 'zod';
import { findChance, findSlackForChance } from '../engine/tolerance/hole-for-chance.ts';
import { IGNORED_KEYS, numberAbove0 } from './fields.ts';
import { holeField, listNameFaults, readHole } from './plate-holes.ts';

/** Rays until the standard error is that, or there are so many. */
const EFFORT = { enough: 5e-4, most: 512 } as const;
/** While a hole is looked for: the same rays at each step. */
const SEARCH_EFFORT = { enough: 0, most: 64 } as const;

const targetError = 'expected the chance that is wanted, a number from 0.001 to 0.99999, or null';
const seedError = 'expected the seed of the random shifts, a whole number from 0 to 4294967295';

const input = z
  .strictObject({
    calc: z.literal('clearance-probability'),
    ...IGNORED_KEYS,
    sigma_mm: numberAbove0(1000, 'mm', 'the standard deviation of a bolt along each axis'),
    bolt_mm: numberAbove0(1000, 'mm', 'the diameter of the bolts'),
    holes: z
      .array(holeField, { error: 'expected a list of holes in the plate' })
      .min(1, { error: 'expected at least one hole' })
      .max(60, { error: 'expected at most 60 holes' }),
    target: z
      .number({ error: targetError })
      .min(0.001, { error: targetError })
      .max(0.99999, { error: targetError })
      .nullable(),
    seed: z
      .int({ error: seedError })
      .min(0, { error: seedError })
      .max(2 ** 32 - 1, { error: seedError }),
  })
  .superRefine(({ holes }, context) => {
    for (const { path, message } of listNameFaults('holes', holes, 'holes'))
      context.addIssue({ code: 'custom', path: [...path], message });
  });

const output = z.strictObject({
  probability: z.number(),
  standardError: z.number(),
  holeForTarget_mm: z.number().nullable(),
});

/** The chance that a plate goes on, and the hole for a target, as the contract gives them. */
function run(given: z.infer<typeof input>): z.infer<typeof output> {
  const { bolt_mm, sigma_mm, target, seed } = given;
  const holes = given.holes.map((hole) => ({ ...readHole(hole, bolt_mm), sigma: sigma_mm }));
  const { fits, standardError } = findChance(holes, { seed, ...EFFORT });
  const slack = target === null ? null : findSlackForChance(holes, target, { seed, ...SEARCH_EFFORT });
  return { probability: fits, standardError, holeForTarget_mm: slack === null ? null : bolt_mm + 2 * slack };
}

/** The calculation `clearance-probability` of the contract. */
export const clearanceProbabilityCalc = {
  name: 'clearance-probability',
  gives: 'the chance that a plate goes on over bolts that scatter, with its standard error, and the hole for a chance',
  input,
  output,
  run,
} as const;
