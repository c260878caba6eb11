import * as z from 'zod';
import { CONCRETE_RANGE } from '../engine/material/concrete-class.ts';
import {
  ACI_CURINGS,
  type AgedStrength,
  CEMENT_CLASSES,
  judgeTestedStrength,
  nameDays,
  strengthByAci,
  strengthByEurocode,
} from '../engine/material/strength-at-age.ts';
import { IGNORED_KEYS, numberAbove0 } from './fields.ts';

const CEMENTS = [...CEMENT_CLASSES, ...ACI_CURINGS] as const;
const quoteAll = (names: readonly string[]) => names.map((name) => `"${name}"`).join(', ');

const isEurocodeCement = (cement: (typeof CEMENTS)[number]): cement is (typeof CEMENT_CLASSES)[number] =>
  CEMENT_CLASSES.some((name) => name === cement);

const input = z
  .strictObject({
    calc: z.literal('strength-at-age'),
    ...IGNORED_KEYS,
    model: z.enum(['EN 1992-1-1', 'ACI 209'], { error: 'expected "EN 1992-1-1" or "ACI 209"' }),
    cement: z.enum(CEMENTS, { error: `expected one of ${quoteAll(CEMENTS)}` }),
    strength28_MPa: numberAbove0(200, 'MPa', "the cylinder strength at 28 days (f_ck, f'c)"),
    age_days: numberAbove0(100_000, 'days', 'the age'),
    tested_MPa: numberAbove0(200, 'MPa', 'the mean strength of cylinders tested at that age').optional(),
  })
  .superRefine(({ model, cement, strength28_MPa }, context) => {
    const refuse = (key: string, message: string) => context.addIssue({ code: 'custom', path: [key], message });
    const isEurocode = model === 'EN 1992-1-1';
    if (isEurocode !== isEurocodeCement(cement))
      refuse(
        'cement',
        `"${cement}" is not a cement of ${model}, expected one of ${quoteAll(isEurocode ? CEMENT_CLASSES : ACI_CURINGS)}`,
      );
    const { low, high } = CONCRETE_RANGE;
    if (isEurocode && (strength28_MPa < low || strength28_MPa > high))
      refuse(
        'strength28_MPa',
        `${strength28_MPa} MPa is outside EN 1992-1-1, expected f_ck from ${low} to ${high} MPa`,
      );
  });

const output = z.strictObject({
  ratio: z.number(),
  meanStrength_MPa: z.number().nullable(),
  characteristicStrength_MPa: z.number().nullable(),
  notes: z.array(z.string()),
});

/** Means of the classes of cement closer than this are one [MPa]. */
const SAME_MEAN = 1;

/** How a strength from tests looks beside that at 28 days, in words. */
function describeTested(strength28: number, age: number, tested: number): readonly string[] {
  const { kind, low, high, characteristic } = judgeTestedStrength(strength28, age, tested);
  const range = `mean strengths ${low.toFixed(1)} to ${high.toFixed(1)} MPa that the classes of cement of EN 1992-1-1 give at ${nameDays(age)}`;
  const compared = {
    plausible: `lies within the ${range}`,
    low: `lies below the ${range}: cold concrete, or not this mix?`,
    high: `lies above the ${range}: heated, accelerated or stronger concrete, or not this age?`,
  };
  const follows =
    characteristic !== null
      ? `f_ck(t) = ${Number(characteristic.toFixed(1))} MPa follows from it (f_cm(t) - 8 MPa, at most f_ck; 3.1.2)`
      : age <= 3
        ? 'up to 3 days f_ck(t) follows from the scatter of the tests, not from EN 1992-1-1'
        : 'no characteristic strength is left of it (f_cm(t) - 8 MPa; 3.1.2)';
  // Near 28 days the classes agree: a mean stands beside one number, which it meets or misses by chance.
  const beside = high - low < SAME_MEAN ? `beside the mean of ${high.toFixed(1)} MPa expected then` : compared[kind];
  return [`tested ${tested} MPa, taken as the mean of cylinders as test results are, ${beside}`, follows];
}

/** Strength at an age, as the contract gives it. */
function run(given: z.infer<typeof input>): z.infer<typeof output> {
  const { cement, strength28_MPa, age_days, tested_MPa } = given;
  const aged: AgedStrength = isEurocodeCement(cement)
    ? strengthByEurocode(strength28_MPa, cement, age_days)
    : strengthByAci(strength28_MPa, cement, age_days);
  return {
    ratio: aged.ratio,
    meanStrength_MPa: aged.mean,
    characteristicStrength_MPa: aged.characteristic,
    notes: [...aged.notes, ...(tested_MPa === undefined ? [] : describeTested(strength28_MPa, age_days, tested_MPa))],
  };
}

/** The calculation `strength-at-age` of the contract. */
export const strengthAtAgeCalc = {
  name: 'strength-at-age',
  gives: 'strength of concrete at an age, by EN 1992-1-1 or ACI 209',
  input,
  output,
  run,
} as const;
