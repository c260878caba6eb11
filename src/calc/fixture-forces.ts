import * as z from 'zod';
import { FixtureError } from '../engine/fixture/fixture-error.ts';
import { solveFixture } from '../engine/fixture/fixture-forces.ts';
import { findOutlineFault, isWithinOutline } from '../engine/fixture/plate-outline.ts';
import type { ShearTaking } from '../engine/fixture/shear-shares.ts';
import type { Point } from '../engine/geometry/point.ts';
import { CalcError } from './calc-error.ts';
import { describeOutlineFault } from './outline-fault.ts';

const N_PER_KN = 1000;
const N_MM_PER_KN_M = 1e6;
/** A bolt may stand this far outside the outline [mm]: rounding of coordinates. */
const ON_EDGE = 1e-6;

const within = (limit: number, unit: string) =>
  z
    .number({ error: `expected a finite number in ${unit}` })
    .min(-limit, { error: `expected a number from ${-limit} to ${limit} ${unit}` })
    .max(limit, { error: `expected a number from ${-limit} to ${limit} ${unit}` });
const length = within(1e6, 'mm');
const force = within(1e6, 'kN');
const moment = within(1e6, 'kNm');
const point = z.tuple([length, length], { error: 'expected a point [x, y] in mm' });

const above0 = (limit: number, what: string) =>
  z
    .number({ error: `expected ${what}` })
    .positive({ error: `expected ${what}, more than 0` })
    .max(limit, { error: `expected ${what}, at most ${limit}` });

const bolt = z.strictObject({
  id: z
    .string({ error: 'expected a text that names the bolt' })
    .min(1, { error: 'expected a text that names the bolt' }),
  x_mm: length,
  y_mm: length,
  stressArea_mm2: above0(1e6, 'a stress area in mm²'),
  takesShear: z.union([z.boolean(), z.strictObject({ onlyAlong_deg: within(3600, 'degrees') })], {
    error: 'expected true, false or { "onlyAlong_deg": angle from the x axis }',
  }),
});

const action = z.strictObject({
  at_mm: point,
  N_kN: force,
  Vx_kN: force,
  Vy_kN: force,
  Mx_kNm: moment,
  My_kNm: moment,
  T_kNm: moment,
});

const input = z
  .strictObject({
    calc: z.literal('fixture-forces'),
    id: z.unknown().optional(),
    source: z.unknown().optional(),
    note: z.unknown().optional(),
    expect: z.unknown().optional(),
    plate_mm: z.array(point, { error: 'expected a list of corners [[x, y], …] in mm' }),
    modularRatio: above0(1e6, 'n = E_s/E_c'),
    bolts: z.array(bolt, { error: 'expected a list of bolts' }),
    action,
  })
  .superRefine((value, context) => {
    const fault = findOutlineFault(value.plate_mm);
    if (fault !== null) {
      context.addIssue({ code: 'custom', path: ['plate_mm'], message: describeOutlineFault(fault, 'the plate') });
      return;
    }
    const seen = new Set<string>();
    value.bolts.forEach(({ id, x_mm, y_mm }, i) => {
      if (seen.has(id)) {
        context.addIssue({
          code: 'custom',
          path: ['bolts', i, 'id'],
          message: `"${id}" names two bolts, expected a name of its own for each`,
        });
      }
      seen.add(id);
      if (!isWithinOutline(value.plate_mm, [x_mm, y_mm], ON_EDGE)) {
        context.addIssue({
          code: 'custom',
          path: ['bolts', i],
          message: `bolt "${id}" at (${x_mm}, ${y_mm}) mm stands outside the plate, expected a place within plate_mm`,
        });
      }
    });
  });

const output = z.strictObject({
  bolts: z.array(z.strictObject({ id: z.string(), N_kN: z.number(), Vx_kN: z.number(), Vy_kN: z.number() })),
  compression: z.strictObject({ C_kN: z.number(), at_mm: z.tuple([z.number(), z.number()]) }).nullable(),
  maxContact_MPa: z.number(),
});

/**
 * Forces of bolts and contact under a rigid plate, as the contract gives them.
 *
 * @throws CalcError when the plate cannot be in equilibrium with its bolts, or no bolt takes the shear
 */
function run(given: z.infer<typeof input>): z.infer<typeof output> {
  const { at_mm, N_kN, Vx_kN, Vy_kN, Mx_kNm, My_kNm, T_kNm } = given.action;
  try {
    const forces = solveFixture(
      given.plate_mm,
      given.modularRatio,
      given.bolts.map(({ id, x_mm, y_mm, stressArea_mm2, takesShear }) => ({
        id,
        x: x_mm,
        y: y_mm,
        stressArea: stressArea_mm2,
        takesShear: readTaking(takesShear),
      })),
      {
        at: at_mm,
        N: N_kN * N_PER_KN,
        Vx: Vx_kN * N_PER_KN,
        Vy: Vy_kN * N_PER_KN,
        Mx: Mx_kNm * N_MM_PER_KN_M,
        My: My_kNm * N_MM_PER_KN_M,
        T: T_kNm * N_MM_PER_KN_M,
      },
    );
    return {
      bolts: forces.bolts.map(({ id, N, Vx, Vy }) => ({
        id,
        N_kN: N / N_PER_KN,
        Vx_kN: Vx / N_PER_KN,
        Vy_kN: Vy / N_PER_KN,
      })),
      compression:
        forces.compression === null
          ? null
          : { C_kN: forces.compression.force / N_PER_KN, at_mm: [...forces.compression.at] },
      maxContact_MPa: forces.maxContact,
    };
  } catch (error) {
    if (error instanceof FixtureError)
      throw new CalcError(error.about === 'plate' ? 'plate_mm' : error.about, error.message);
    throw error;
  }
}

function readTaking(taking: boolean | { onlyAlong_deg: number }): ShearTaking {
  return typeof taking === 'boolean' ? taking : { onlyAlong: pointAlong(taking.onlyAlong_deg) };
}

/** Unit direction of an angle from the x axis; quarter turns are exact, so that a level slot leaves no trace of Vx. */
function pointAlong(degrees: number): Point {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) return quarters % 2 === 0 ? [1, 0] : [0, 1];
  const angle = (degrees * Math.PI) / 180;
  return [Math.cos(angle), Math.sin(angle)];
}

/** The calculation `fixture-forces` of the contract. */
export const fixtureForcesCalc = { name: 'fixture-forces', input, output, run } as const;
