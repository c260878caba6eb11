import * as z from 'zod';
import { propertyClasses } from '../engine/hardware/property-classes.ts';
import { diametralAllowance } from '../engine/hardware/thread-shear.ts';
import { findThread, threadNames } from '../engine/hardware/threads.ts';
import { IGNORED_KEYS, numberAbove0, numberIn } from './fields.ts';

/** One of some words; the message lists them. */
function oneOf<const T extends readonly [string, ...string[]]>(words: T, what: string) {
  return z.enum(words, { error: `expected ${what}, one of ${words.map((word) => `"${word}"`).join(', ')}` });
}

const finish = oneOf(['plain', 'zinc', 'galvanised', 'stainless'], 'a finish');
const lengthFrom0 = (what: string) => numberIn(0, 10_000, 'mm', what);
const lengthAbove0 = (what: string) => numberAbove0(10_000, 'mm', what);

const NO_PACKERS = 'expected at least one range [least, greatest] in mm; leave the key out where there are no packers';
const packerRange = z.tuple([lengthFrom0('the least packers'), lengthFrom0('the greatest packers')], {
  error: 'expected [least, greatest] in mm',
});
const packers = z.union([packerRange, z.array(packerRange).min(1, { error: NO_PACKERS })], {
  error: 'expected [least, greatest] in mm, or a list of such ranges, from 0 to 10000 mm',
});

const insertThread = z.strictObject(
  {
    yield_MPa: numberAbove0(3000, 'MPa', "the yield stress of the insert's steel"),
    ultimate_MPa: numberAbove0(3000, 'MPa', "the tensile strength of the insert's steel"),
  },
  { error: 'expected { "yield_MPa", "ultimate_MPa" } of the insert\'s steel, or null where it is not known' },
);

const insertBody = z.strictObject(
  {
    diameter_mm: lengthAbove0('the outside diameter of the insert around its thread'),
    crossHole: z
      .strictObject(
        {
          diameter_mm: lengthAbove0('the diameter of the cross hole'),
          bore_mm: lengthFrom0('the bore at the cross hole, 0 where the body is solid'),
        },
        { error: 'expected { "diameter_mm", "bore_mm" } of the cross hole, or null where there is none' },
      )
      .nullable(),
  },
  { error: 'expected { "diameter_mm", "crossHole" } of the insert, or null where it is not known' },
);

/** The input of the calculation `bolt`. */
export const boltInput = z
  .strictObject({
    calc: z.literal('bolt'),
    ...IGNORED_KEYS,
    thread: oneOf(threadNames, 'a metric coarse thread'),
    propertyClass: oneOf(propertyClasses, 'a property class'),
    threadDepth_mm: lengthAbove0('the length of full thread in the insert'),
    threadStartsBelowFace_mm: lengthFrom0('how far below the face the full thread begins'),
    boltFinish: finish,
    insertFinish: finish,
    insertThreadClass: oneOf(['6H', '6AZ', '6AX'], "the class of the insert's thread"),
    maxTorque_Nm: numberAbove0(1e6, 'N m', "the maker's greatest torque (null where it is not known)").nullable(),
    grip_mm: lengthFrom0('what lies between washer and face'),
    washer_mm: lengthFrom0('the thickness of the washers'),
    minEngagement_mm: lengthAbove0('the least length of thread in contact (null: found here)').nullable(),
    insertThread: insertThread.nullable(),
    stockLengths_mm: z
      .array(lengthAbove0('a length'), {
        error: 'expected a list of lengths in mm, or null for those of the standards',
      })
      .min(1, { error: 'expected at least one length in mm, or null for those of the standards' })
      .max(1000, { error: 'expected at most 1000 lengths' })
      .nullable(),
    nutFactor: numberAbove0(1, '', 'the nut factor K of T = K d F'),
    preloadFraction: numberIn(0, 1, '', 'the part of the proof load wanted in the bolt, 0: snug'),
    nutFactorRange: z
      .tuple([numberAbove0(1, '', 'the least K'), numberAbove0(1, '', 'the greatest K')], {
        error: 'expected [least, greatest] nut factor',
      })
      .optional(),
    insertBody: insertBody.nullable().optional(),
    concreteTension_kN: numberAbove0(1e6, 'kN', "the concrete's design resistance in tension today")
      .nullable()
      .optional(),
    packers_mm: packers.optional(),
    boltCoating_um: numberIn(0, 1000, 'µm', "the thickness of the bolt's coating").nullable().optional(),
    plateHole: z
      .strictObject(
        {
          diameter_mm: lengthAbove0('the diameter of the hole, or the width of the slot'),
          slot_mm: lengthFrom0("the straight part of the slot, between its ends' centres, 0: a round hole"),
        },
        { error: 'expected { "diameter_mm", "slot_mm" } of the hole in the plate' },
      )
      .optional(),
  })
  .superRefine((given, context) => {
    for (const { path, message } of findContradictions(given)) context.addIssue({ code: 'custom', path, message });
  });

interface Contradiction {
  readonly path: PropertyKey[];
  readonly message: string;
}

/** What each key allows by itself, but not together. */
function findContradictions(given: z.infer<typeof boltInput>): readonly Contradiction[] {
  const found: Contradiction[] = [];
  const { insertThread: steel, insertBody: body, nutFactorRange: range, plateHole: hole } = given;
  const thread = findThread(given.thread);
  if (steel !== null && steel.yield_MPa > steel.ultimate_MPa)
    found.push({
      path: ['insertThread', 'yield_MPa'],
      message: `${steel.yield_MPa} MPa is above ultimate_MPa = ${steel.ultimate_MPa} MPa, expected at most that`,
    });
  if (range !== undefined && (range[0] > given.nutFactor || range[1] < given.nutFactor))
    found.push({
      path: ['nutFactorRange'],
      message: `[${range[0]}, ${range[1]}] does not hold nutFactor = ${given.nutFactor}, expected [least, greatest] around it`,
    });
  if (body !== undefined && body !== null)
    found.push(...findBodyFaults(body, thread.diameter + diametralAllowance(thread, given.insertThreadClass)));
  if (hole !== undefined && hole.diameter_mm <= thread.diameter)
    found.push({
      path: ['plateHole', 'diameter_mm'],
      message: `${hole.diameter_mm} mm does not let a bolt ${given.thread} through, expected more than ${thread.diameter} mm`,
    });
  for (const [i, [least, greatest]] of listPackerRanges(given.packers_mm).entries())
    if (least > greatest)
      found.push({
        path: isOneRange(given.packers_mm) ? ['packers_mm'] : ['packers_mm', i],
        message: `[${least}, ${greatest}] runs backward, expected [least, greatest]`,
      });
  return found;
}

function findBodyFaults(body: z.infer<typeof insertBody>, bore: number): readonly Contradiction[] {
  const path = (...keys: string[]) => ['insertBody', ...keys];
  const D = body.diameter_mm;
  if (D <= bore)
    return [
      {
        path: path('diameter_mm'),
        message: `${D} mm leaves no wall around a thread of ${bore} mm, expected more than that`,
      },
    ];
  if (body.crossHole === null) return [];
  return (['diameter_mm', 'bore_mm'] as const).flatMap((key) => {
    const size = body.crossHole?.[key] ?? 0;
    return size < D
      ? []
      : [{ path: path('crossHole', key), message: `${size} mm is not less than the body of ${D} mm, expected less` }];
  });
}

type Packers = z.infer<typeof packers> | undefined;

/** True where one range was given, to be split by the stock; false for a list of ranges. */
export function isOneRange(given: Packers): given is [number, number] {
  return given !== undefined && typeof given[0] === 'number';
}

/** The ranges of packers that were given; none where the key was left out. */
export function listPackerRanges(given: Packers): readonly (readonly [number, number])[] {
  if (given === undefined) return [];
  return isOneRange(given) ? [given] : given;
}

export type BoltInput = z.infer<typeof boltInput>;
