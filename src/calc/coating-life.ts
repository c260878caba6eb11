import * as z from 'zod';
import {
  CORROSION_CATEGORIES,
  coatingLife,
  describeLife,
  findZincLoss,
  judgeLife,
} from '../engine/material/corrosion.ts';
import { GALVANISED_KINDS, leastGalvanising } from '../engine/material/zinc-coatings.ts';
import { IGNORED_KEYS, numberAbove0, numberIn } from './fields.ts';

const quoteAll = (names: readonly string[]) => names.map((name) => `"${name}"`).join(', ');

const galvanised = z.strictObject(
  {
    kind: z.enum(GALVANISED_KINDS, { error: `expected one of ${quoteAll(GALVANISED_KINDS)}` }),
    size_mm: numberAbove0(1000, 'mm', 'the thread diameter, or the thickness of the steel'),
  },
  {
    error: (issue) =>
      issue.code === 'invalid_type' ? 'expected what is galvanised, { "kind": …, "size_mm": … }' : undefined,
  },
);

const input = z.strictObject({
  calc: z.literal('coating-life'),
  ...IGNORED_KEYS,
  category: z.enum(CORROSION_CATEGORIES, { error: `expected one of ${quoteAll(CORROSION_CATEGORIES)}` }),
  coating_um: numberIn(0, 2000, 'µm', 'the thickness of the zinc'),
  wanted_years: numberAbove0(1000, 'years', 'the wanted life').optional(),
  galvanised: galvanised.optional(),
});

const output = z.strictObject({
  years: z.tuple([z.number(), z.number().nullable()]),
  rates_um_per_year: z.tuple([z.number(), z.number()]),
  notes: z.array(z.string()),
});

/** Thinner than any zinc coating that is sold [µm]. */
const LEAST_LIKELY = 1;

/** Life of a zinc coating, as the contract gives it. */
function run(given: z.infer<typeof input>): z.infer<typeof output> {
  const { category, coating_um, wanted_years, galvanised: article } = given;
  const life = coatingLife(coating_um, category);
  const { low, high } = findZincLoss(category);
  const notes = [
    'first-year loss of ISO 9223 taken for every year, where air and rain reach the zinc; concrete, soil, water and contact with other metals are not counted',
  ];
  if (life.longest === null) notes.push(`no longest life: the lowest loss of ${category} is 0`);
  if (coating_um > 0 && coating_um < LEAST_LIKELY)
    notes.push(`${coating_um} µm of zinc: µm, not mm? Coatings are thicker than ${LEAST_LIKELY} µm`);
  if (coating_um === 0) notes.push('no zinc: nothing to last');
  if (wanted_years !== undefined)
    notes.push(
      `${describeLife(life)} beside ${wanted_years} ${wanted_years === 1 ? 'year' : 'years'} wanted: ${judgeLife(life, wanted_years)}`,
    );
  if (article !== undefined) {
    const { local, mean } = leastGalvanising(article.kind, article.size_mm);
    const compared = coating_um < local ? 'less than' : 'at least';
    notes.push(
      `${coating_um} µm is ${compared} the ${local} µm that ISO 1461 asks at any place (${mean} µm on average) of this article`,
    );
  }
  return { years: [life.shortest, life.longest], rates_um_per_year: [low, high], notes };
}

/** The calculation `coating-life` of the contract. */
export const coatingLifeCalc = {
  name: 'coating-life',
  gives: 'how long a zinc coating lasts in a corrosion category',
  input,
  output,
  run,
} as const;
