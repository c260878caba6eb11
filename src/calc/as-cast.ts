import * as z from 'zod';
import { type ControlCheck, checkControls } from '../engine/survey/control-blunder.ts';
import { type Control, type Registration, registerControls } from '../engine/survey/register.ts';
import { SurveyError } from '../engine/survey/survey-error.ts';
import { CalcError } from './calc-error.ts';
import { IGNORED_KEYS, numberAbove0, numberIn, words } from './fields.ts';

/** Frames of a country lie thousands of kilometres from their origin. */
const FAR = 1e10;

const coordinates = (what: string, far: number) => {
  const error = `expected ${what}, [x, y] or [x, y, z] in mm`;
  return z
    .array(numberIn(-far, far, 'mm', 'a coordinate'), { error })
    .min(2, { error })
    .max(3, { error });
};

const insert = z.strictObject(
  {
    id: words('the name of the point'),
    design_mm: coordinates('where it was designed', 1e6),
    measured_mm: coordinates('where the instrument has it', FAR),
  },
  { error: (issue) => (issue.code === 'invalid_type' ? 'expected { "id", "design_mm", "measured_mm" }' : undefined) },
);

const control = insert.extend({
  sigma_mm: numberAbove0(1000, 'mm', 'the standard deviation of the point').nullable().optional(),
});

const input = z
  .strictObject({
    calc: z.literal('as-cast'),
    ...IGNORED_KEYS,
    control: z
      .array(control, { error: 'expected a list of control points [{ "id", "design_mm", "measured_mm" }, …]' })
      .min(2, { error: 'expected at least two control points, in 3D three that are not in one line' })
      .max(500, { error: 'expected at most 500 control points' }),
    inserts: z
      .array(insert, { error: 'expected a list of inserts [{ "id", "design_mm", "measured_mm" }, …]' })
      .max(2000, { error: 'expected at most 2000 inserts' }),
  })
  .superRefine(({ control, inserts }, context) => {
    const size = control[0]?.design_mm.length;
    for (const [list, points] of [['control', control] as const, ['inserts', inserts] as const]) {
      const seen = new Set<string>();
      points.forEach((point, i) => {
        for (const key of ['design_mm', 'measured_mm'] as const)
          if (point[key].length !== size)
            context.addIssue({
              code: 'custom',
              path: [list, i, key],
              message: `has ${point[key].length} numbers, expected ${size} as the first control point has: all points in 2D or all in 3D`,
            });
        if (seen.has(point.id))
          context.addIssue({
            code: 'custom',
            path: [list, i, 'id'],
            message: `"${point.id}" is there twice, expected each name once`,
          });
        seen.add(point.id);
      });
    }
  });

const output = z.strictObject({
  controlResiduals: z.array(z.strictObject({ id: z.string(), error_mm: z.number() })),
  rms_mm: z.number(),
  inserts: z.array(
    z.strictObject({
      id: z.string(),
      panel_mm: z.array(z.number()),
      dx_mm: z.number(),
      dy_mm: z.number(),
      dz_mm: z.number().optional(),
    }),
  ),
  suspect: z.string().nullable(),
  notes: z.array(z.string()),
});

type Input = z.infer<typeof input>;

/** What a control point is off by and measured to, where no `sigma_mm` says it: all count alike. */
const ALIKE = 1;

/** Survey points brought onto the panel, as the contract gives it. */
function run({ control, inserts }: Input): z.infer<typeof output> {
  const controls = control.map(
    ({ design_mm, measured_mm, sigma_mm }): Control => ({
      kind: 'point',
      design: design_mm,
      measured: measured_mm,
      deviation: sigma_mm ?? ALIKE,
    }),
  );
  const found = register(controls);
  // Without deviations nobody can say what is chance and what a blunder.
  const isJudged = control.every(({ sigma_mm }) => sigma_mm !== undefined && sigma_mm !== null);
  const check = isJudged ? checkControls(controls, found) : null;
  const blunder = check?.blunder ?? { kind: 'none' };
  return {
    controlResiduals: control.map(({ id }, i) => ({ id, error_mm: Math.hypot(...found.residuals[i]!) })),
    rms_mm: found.rms,
    inserts: inserts.map(({ id, design_mm, measured_mm }) => {
      const { at } = found.place(measured_mm, 0);
      const [dx, dy, dz] = at.map((value, k) => value - design_mm[k]!) as [number, number, number?];
      return {
        id,
        panel_mm: [...at],
        dx_mm: dx,
        dy_mm: dy,
        ...(dz === undefined ? {} : { dz_mm: dz }),
      };
    }),
    suspect: blunder.kind === 'at' ? control[blunder.index]!.id : null,
    notes: describe(control, found, check),
  };
}

function register(controls: readonly Control[]): Registration {
  try {
    return registerControls(controls);
  } catch (error) {
    if (error instanceof SurveyError) throw new CalcError('control', error.message);
    throw error;
  }
}

function describe(control: Input['control'], found: Registration, check: ControlCheck | null): string[] {
  const notes: string[] = [];
  if (check === null) notes.push('no blunder is looked for: give every control point its sigma_mm');
  else if (check.blunder.kind === 'at') {
    const { index } = check.blunder;
    notes.push(
      `control point ${control[index]!.id} does not agree with the others: without it it lies ${check.leftOut[index]!.misses!.toFixed(1)} mm from where they have it; measure it again`,
    );
  } else if (check.blunder.kind === 'one of')
    notes.push(
      `the control points contradict each other; which of ${check.blunder.indices.map((i) => control[i]!.id).join(', ')} is wrong cannot be told: measure one more`,
    );
  if (found.redundancy <= control[0]!.design_mm.length - 1)
    notes.push('hardly more control points than needed: a slip in one of them would not be found; measure one more');
  return notes;
}

/** The calculation `as-cast` of the contract. */
export const asCastCalc = {
  name: 'as-cast',
  gives:
    'survey points brought onto the panel by its control points: how far each insert is off, and what the control points disagree by',
  input,
  output,
  run,
} as const;
