import * as z from 'zod';
import { uncoveredUses } from '../engine/checks/uncovered-use.ts';
import { findEdition } from '../engine/standards/editions.ts';
import { standardNames } from '../engine/standards/standard-name.ts';
import { IGNORED_KEYS, numberAbove0, numberIn, pointField, polygonField, polygonOf, words, yesNo } from './fields.ts';

const stress = (what: string) => numberAbove0(3000, 'MPa', what);
const length = (what: string) => numberAbove0(100_000, 'mm', what);
const percent = (what: string) => numberIn(0, 100, '%', what);
const force = (what: string) => numberIn(-1e6, 1e6, 'kN', what);

const steelPart = z.strictObject({
  name: words('the name of the part'),
  area_mm2: numberAbove0(1e6, 'mm2', 'the net section'),
  ultimate_MPa: stress('the ultimate strength'),
  yield_MPa: stress('the yield strength'),
  resists: z.enum(['tension', 'shear', 'both'], { error: 'expected "tension", "shear" or "both"' }).optional(),
  embedded: yesNo('whether the part stands in the concrete, where a lever arm does not bend it').optional(),
});

const tested = z.strictObject({
  mode: z.enum(['steel-tension', 'pull-out', 'steel-shear'], {
    error: 'expected "steel-tension", "pull-out" or "steel-shear"',
  }),
  characteristic_kN: numberAbove0(1e6, 'kN', 'the characteristic resistance'),
  safety: numberIn(1, 5, '', 'the partial factor').nullable().optional(),
  fromStrength_MPa: numberIn(0, 200, 'MPa', 'the lowest concrete strength it holds for'),
  report: words('the number of the test report'),
});

const insert = z
  .strictObject({
    embedment_mm: length('the embedment h_ef'),
    shaftDiameter_mm: length('the body diameter at the face'),
    headDiameter_mm: length('the diameter of the foot').optional(),
    headThickness_mm: length('the thickness of the foot').optional(),
    bearingArea_mm2: numberAbove0(1e6, 'mm2', 'the net bearing area of the foot').optional(),
    stressArea_mm2: numberAbove0(1e6, 'mm2', 'the weakest steel section').optional(),
    ultimate_MPa: stress('the ultimate strength').optional(),
    yield_MPa: stress('the yield strength').optional(),
    steelParts: z.array(steelPart).min(1, { error: 'expected at least one steel part' }).optional(),
    elongation_percent: percent('the elongation A5').optional(),
    areaReduction_percent: percent('the reduction of area Z').optional(),
    qualification: z
      .strictObject({ document: words('the qualification document'), standard: words('the standard it is for') })
      .nullable()
      .optional(),
    fullHead: yesNo('whether the foot is a full circumferential head').optional(),
    tested: z.array(tested).optional(),
  })
  .superRefine((value, context) => {
    const refuse = (key: string, message: string) => context.addIssue({ code: 'custom', path: [key], message });
    if ((value.headDiameter_mm === undefined) === (value.bearingArea_mm2 === undefined))
      refuse('headDiameter_mm', 'expected exactly one of headDiameter_mm and bearingArea_mm2');
    if (value.headDiameter_mm !== undefined && value.headDiameter_mm <= value.shaftDiameter_mm)
      refuse(
        'headDiameter_mm',
        `${value.headDiameter_mm} mm is not above the body diameter; expected more than ${value.shaftDiameter_mm} mm`,
      );
    const single = [value.stressArea_mm2, value.ultimate_MPa, value.yield_MPa];
    const given = single.filter((one) => one !== undefined).length;
    if (value.steelParts === undefined && given < 3)
      refuse('stressArea_mm2', 'expected stressArea_mm2, ultimate_MPa and yield_MPa, or steelParts');
    for (const [i, part] of (value.steelParts ?? []).entries())
      if (part.yield_MPa > part.ultimate_MPa)
        context.addIssue({
          code: 'custom',
          path: ['steelParts', i, 'yield_MPa'],
          message: `${part.yield_MPa} MPa is above the ultimate strength; expected at most ${part.ultimate_MPa} MPa`,
        });
    if (value.yield_MPa !== undefined && value.ultimate_MPa !== undefined && value.yield_MPa > value.ultimate_MPa)
      refuse(
        'yield_MPa',
        `${value.yield_MPa} MPa is above the ultimate strength; expected at most ${value.ultimate_MPa} MPa`,
      );
  });

const bar = {
  diameter_mm: length('the bar diameter'),
  count: z.int({ error: 'expected a whole number of legs' }).min(1, { error: 'expected at least one leg' }),
  distance_mm: numberIn(0, 100_000, 'mm', 'the distance from the insert to the bar'),
  anchorageInside_mm: length('the bonded length inside the failure body'),
  anchorageOutside_mm: length('the bonded length outside the failure body'),
  yield_MPa: stress('the yield strength'),
  hooked: yesNo('whether the ends are hooked or looped'),
  goodBond: yesNo('whether bond conditions are good (EN 1992-1-1, 8.4.2)'),
};

const quoted = uncoveredUses.map((use) => `"${use}"`);

const standardError = `expected ${standardNames.map((name) => `"${name}"`).join(', ')}`;

/** What describes a group of inserts, in every calculation about one; docs/calculations.md says what each key means. */
export const groupFields = {
  ...IGNORED_KEYS,
  standard: z.enum(standardNames, { error: standardError }),
  concrete: z.strictObject({
    strength_MPa: numberAbove0(200, 'MPa', 'the cylinder strength'),
    cracked: yesNo('whether the concrete is taken as cracked'),
    lightweightFactor: numberAbove0(1, '', 'the factor for lightweight concrete (1: normal weight)').optional(),
  }),
  member: z.strictObject({
    thickness_mm: length('the thickness'),
    outline_mm: polygonOf(
      'expected a list of corners [[x, y], …] in mm, or null for a face without an edge near',
    ).nullable(),
    openings_mm: z.array(polygonField).optional(),
  }),
  reinforcement: z.strictObject({
    denseSurface: yesNo('whether surface reinforcement is dense'),
    edge: z.enum(['none', 'bar', 'bar-and-stirrups'], { error: 'expected "none", "bar" or "bar-and-stirrups"' }),
    supplementary: yesNo('whether there is supplementary reinforcement'),
    limitsCrackWidth: yesNo('whether reinforcement limits the crack width'),
    stirrupSpacing_mm: length('the spacing of edge stirrups').optional(),
  }),
  insert,
  positions: z
    .array(
      z.strictObject({
        id: words('the name of the insert'),
        x_mm: numberIn(-1e6, 1e6, 'mm', 'x'),
        y_mm: numberIn(-1e6, 1e6, 'mm', 'y'),
      }),
      { error: 'expected a list of inserts' },
    )
    .min(1, { error: 'expected at least one insert' }),
  leverArm: z
    .strictObject({
      length_mm: length('the lever arm'),
      restraint: numberIn(1, 2, '', 'the restraint of the fixture'),
      sectionModulus_mm3: numberAbove0(1e9, 'mm3', 'the elastic section modulus'),
    })
    .optional(),
  torqued: yesNo('whether the bolts are tightened beyond snug').optional(),
  mortarPad: yesNo('whether the fixture sits on a pad of mortar').optional(),
  splitting: z
    .strictObject({ c_cr_mm: length('the critical edge distance'), h_min_mm: length('the smallest thickness') })
    .optional(),
  compression: z.strictObject({ C_kN: numberIn(0, 1e6, 'kN', 'the compression'), at_mm: pointField }).optional(),
  partialFactors: z
    .strictObject({
      gamma_Mc: numberIn(1, 5, '', 'the partial factor for concrete').optional(),
      gamma_Ms_N: numberIn(1, 5, '', 'the partial factor for steel in tension').optional(),
      gamma_Ms_V: numberIn(1, 5, '', 'the partial factor for steel in shear').optional(),
    })
    .optional(),
  pryOutFactor: numberAbove0(5, '', 'the pry-out factor k8 or k_cp').optional(),
  hangers: z.array(z.strictObject(bar)).optional(),
  hairpins: z
    .array(
      z.strictObject({
        ...bar,
        toward_deg: numberIn(-360, 360, 'degrees', 'the direction of the edge it serves'),
        depth_mm: numberIn(0, 100_000, 'mm', 'the depth of the loop below the shear force'),
      }),
    )
    .optional(),
  uses: z
    .array(
      z.enum(uncoveredUses, {
        error: `expected ${quoted.slice(0, -1).join(', ')} or ${quoted.at(-1)}`,
      }),
    )
    .optional(),
} as const;

/** A group of inserts as `groupFields` read it. */
export type GroupInput = z.infer<z.ZodObject<typeof groupFields>>;

/** Faults that only several keys together show: two inserts of one name, factors that a standard does not take. */
export function findGroupFaults(
  value: GroupInput,
): { readonly path: readonly (string | number)[]; readonly message: string }[] {
  const faults: { path: (string | number)[]; message: string }[] = [];
  const names = new Set<string>();
  for (const [i, { id }] of value.positions.entries()) {
    if (names.has(id))
      faults.push({
        path: ['positions', i, 'id'],
        message: `"${id}" names two inserts, expected a name of its own for each`,
      });
    names.add(id);
  }
  const [factor] = Object.keys(value.partialFactors ?? {});
  if (!findEdition(value.standard).takesPartialFactors && factor !== undefined)
    faults.push({
      path: ['partialFactors', factor],
      message: `${value.standard} has strength reduction factors of its own, expected no partial factors`,
    });
  return faults;
}

/** The force on each insert of a group, by its name. */
export const actionsField = z.array(
  z.strictObject({
    id: words('the name of the insert'),
    N_kN: force('the tension'),
    Vx_kN: force('the shear along x'),
    Vy_kN: force('the shear along y'),
  }),
);

/** Actions as `actionsField` reads them. */
export type ActionsInput = z.infer<typeof actionsField>;

/** Faults between actions and positions: an insert without action, with two, or unknown. */
export function findActionFaults(
  positions: GroupInput['positions'],
  actions: ActionsInput,
): { readonly path: readonly (string | number)[]; readonly message: string }[] {
  const faults: { path: (string | number)[]; message: string }[] = [];
  const names = new Set(positions.map(({ id }) => id));
  const acted = new Set<string>();
  for (const [i, { id }] of actions.entries()) {
    if (!names.has(id) || acted.has(id))
      faults.push({
        path: ['actions', i, 'id'],
        message: names.has(id)
          ? `"${id}" has two actions, expected one for each insert`
          : `"${id}" is not among the positions, expected one of ${[...names].join(', ')}`,
      });
    acted.add(id);
  }
  for (const id of names)
    if (!acted.has(id))
      faults.push({
        path: ['actions'],
        message: `insert "${id}" has no action, expected one for each insert (0 where it carries nothing)`,
      });
  return faults;
}

/** Schema of `anchorage`'s input, units in the keys. */
export const anchorageInput = z
  .strictObject({ calc: z.literal('anchorage'), ...groupFields, actions: actionsField.optional() })
  .superRefine((value, context) => {
    const faults = [
      ...findGroupFaults(value),
      ...(value.actions === undefined ? [] : findActionFaults(value.positions, value.actions)),
    ];
    for (const { path, message } of faults) context.addIssue({ code: 'custom', path: [...path], message });
  });

/** A checked input of `anchorage`. */
export type AnchorageInput = z.infer<typeof anchorageInput>;
