import * as z from 'zod';
import { ageFromIndex, sumArrheniusAge, sumMaturity, type TemperatureReading } from '../engine/material/maturity.ts';
import { IGNORED_KEYS, numberAbove0, numberIn } from './fields.ts';

const J_PER_KJ = 1000;

const reading = z.strictObject(
  {
    hours: numberIn(0, 1e6, 'hours', 'the time of the reading'),
    degC: numberIn(-50, 150, '°C', 'the temperature of the concrete'),
  },
  { error: (issue) => (issue.code === 'invalid_type' ? 'expected a reading { "hours": …, "degC": … }' : undefined) },
);

const input = z
  .strictObject({
    calc: z.literal('maturity'),
    ...IGNORED_KEYS,
    method: z.enum(['Nurse-Saul', 'Arrhenius'], { error: 'expected "Nurse-Saul" or "Arrhenius"' }),
    datum_degC: numberIn(-30, 30, '°C', 'the datum temperature').optional(),
    activation_kJ_per_mol: numberAbove0(200, 'kJ/mol', 'the apparent activation energy').optional(),
    reference_degC: numberIn(-20, 60, '°C', 'the reference temperature'),
    log: z
      .array(reading, { error: 'expected a list of readings [{ "hours": …, "degC": … }, …]' })
      .min(2, { error: 'expected at least two readings' }),
  })
  .superRefine(({ method, datum_degC, activation_kJ_per_mol, reference_degC, log }, context) => {
    const refuse = (path: (string | number)[], message: string) => context.addIssue({ code: 'custom', path, message });
    if (method === 'Nurse-Saul' && datum_degC === undefined)
      refuse(['datum_degC'], 'is missing, expected the datum temperature in °C, which Nurse-Saul counts from');
    if (method === 'Nurse-Saul' && datum_degC !== undefined && reference_degC <= datum_degC)
      refuse(['reference_degC'], `${reference_degC} °C is not above the datum, expected more than ${datum_degC} °C`);
    if (method === 'Arrhenius' && activation_kJ_per_mol === undefined)
      refuse(['activation_kJ_per_mol'], 'is missing, expected the apparent activation energy in kJ/mol');
    log.forEach(({ hours }, i) => {
      const before = log[i - 1]?.hours;
      if (before !== undefined && hours <= before)
        refuse(['log', i, 'hours'], `${hours} h does not come after ${before} h, expected hours that rise`);
    });
  });

const output = z.strictObject({
  index_degC_h: z.number().nullable(),
  equivalentAge_hours: z.number(),
  notes: z.array(z.string()),
});

/** Temperatures that concrete in a form is between, heated or in frost [°C]. */
const COLDEST = -20;
const HOTTEST = 80;
/** A day without a reading may hide a night's frost or the end of the heating [h]. */
const LONGEST_GAP = 24;

/** What of a log looks wrong, though it is computed as it is. */
function describeLog(log: z.infer<typeof input>['log']): string[] {
  const odd = log.filter(({ degC }) => degC < COLDEST || degC > HOTTEST);
  const gaps = log
    .slice(1)
    .flatMap(({ hours }, i) => (hours - log[i]!.hours > LONGEST_GAP ? [[log[i]!.hours, hours]] : []));
  return [
    ...(odd.length === 0
      ? []
      : [
          `${odd
            .map(({ hours, degC }) => `${degC} °C at ${hours} h`)
            .slice(0, 3)
            .join(
              ', ',
            )}${odd.length > 3 ? ` and ${odd.length - 3} more` : ''}: outside ${COLDEST} to ${HOTTEST} °C; degC, not °F?`,
        ]),
    ...(gaps.length === 0
      ? []
      : [
          `no reading from ${gaps
            .map(([from, to]) => `${from} to ${to} h`)
            .slice(0, 3)
            .join(
              ', ',
            )}${gaps.length > 3 ? ` and ${gaps.length - 3} more gaps` : ''}: the temperature is taken to run straight over more than ${LONGEST_GAP} h`,
        ]),
  ];
}

/** Maturity from a temperature log, as the contract gives it. The schema has seen to it that the method's own key is there. */
function run(given: z.infer<typeof input>): z.infer<typeof output> {
  const { datum_degC, activation_kJ_per_mol, reference_degC } = given;
  const log = given.log.map(({ hours, degC }): TemperatureReading => ({ hours, temperature: degC }));
  const notes = describeLog(given.log);
  if (given.method === 'Arrhenius')
    return {
      notes,
      index_degC_h: null,
      equivalentAge_hours: sumArrheniusAge(log, activation_kJ_per_mol! * J_PER_KJ, reference_degC),
    };
  const index = sumMaturity(log, datum_degC!);
  return { notes, index_degC_h: index, equivalentAge_hours: ageFromIndex(index, reference_degC, datum_degC!) };
}

/** The calculation `maturity` of the contract. */
export const maturityCalc = {
  name: 'maturity',
  gives: 'equivalent age from a temperature log, by Nurse-Saul or Arrhenius',
  input,
  output,
  run,
} as const;
