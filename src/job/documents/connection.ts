import * as z from 'zod';
import { propertyClasses } from '../../engine/hardware/property-classes.ts';
import { threadNames } from '../../engine/hardware/threads.ts';
import { finish } from './catalogue.ts';
import { fixture } from './fixture.ts';
import { coordinate, key, label, length, lengthOrZero, point, stress } from './values.ts';

/** Design values (factored) that the fixture puts on the panel, in the plate's axes, moments about the point `at_mm`. */
const combination = z.strictObject({
  name: label,
  N_kN: coordinate,
  Vx_kN: coordinate,
  Vy_kN: coordinate,
  Mx_kNm: coordinate.default(0),
  My_kNm: coordinate.default(0),
  T_kNm: coordinate.default(0),
  at_mm: point.default([0, 0]),
});

/** What is asked of the connection: loads, or a resistance that each insert must have, or nothing (strength not checked). */
const actions = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('loads'), combinations: z.array(combination).min(1).readonly() }),
  z.strictObject({ kind: z.literal('required'), N_kN: lengthOrZero, V_kN: lengthOrZero }),
  z.strictObject({ kind: z.literal('none') }),
]);

/** A bar of supplementary reinforcement at this connection: counted for what is bonded each side of the failure plane. */
const bar = z.strictObject({
  diameter_mm: length,
  legs: z.int().positive(),
  distance_mm: lengthOrZero,
  anchorageInside_mm: lengthOrZero,
  anchorageOutside_mm: lengthOrZero,
  yield_MPa: stress,
  hooked: z.boolean(),
  goodBond: z.boolean(),
});

/** A loop that takes up shear toward an edge: in which direction (in the plate's axes) and how deep below the face. */
const hairpin = bar.extend({ toward_deg: coordinate, depth_mm: lengthOrZero });

/** A plate bolted to inserts of one panel face. Origin as cast-in positions are given on that face; then turned, seen from its front. */
export const connection = z.strictObject({
  key,
  mark: label,
  panel: label,
  face: z.enum(['outside', 'inside', 'edge']),
  edge: z.int().nonnegative().nullable().default(null),
  origin_mm: point,
  turn_deg: coordinate.default(0),
  /** A standard detail, or a plate of its own; neither where the drawing shows none. */
  detail: label.nullable().default(null),
  fixture: fixture.nullable().default(null),
  inserts: z
    .array(z.strictObject({ insert: label, hole: label.nullable() }))
    .min(1)
    .readonly(),
  /** Between plate and face. Filled: with mortar of at least 30 MPa. */
  packers_mm: lengthOrZero.default(0),
  isFilled: z.boolean().default(false),
  /** The plate cannot turn where the bolts bend (restraint 2 instead of 1). */
  isHeldAgainstTurning: z.boolean().default(false),
  /** Thread and class of the bolts; null: the insert's thread, the rules' class. */
  boltThread: z.enum(threadNames).nullable().default(null),
  boltClass: z.enum(propertyClasses).nullable().default(null),
  boltFinish: finish.nullable().default(null),
  engagement_mm: length.nullable().default(null),
  /** Concrete cracked here; null: as the rules say. */
  cracked: z.boolean().nullable().default(null),
  /** Age of the concrete when first loaded; null: 28 days. */
  age_days: length.nullable().default(null),
  hangers: z.array(bar).readonly().default([]),
  hairpins: z.array(hairpin).readonly().default([]),
  /** Uses that no rule here covers: such a connection never passes. */
  uses: z
    .array(z.enum(['seismic', 'fire', 'fatigue', 'post-installed', 'wet-set']))
    .readonly()
    .default([]),
  actions,
  /**
   * How far each insert may be off along each axis, taken over from the permitted position zone; it counts only where the rules say that this was
   * agreed, and as long as all that it was computed from is as it was. Null: as the rules say.
   */
  positionBox: z
    .strictObject({
      within_mm: z.int().positive(),
      /** Hash of what it was computed from. */
      computedFrom: z.string().regex(/^[0-9a-f]{64}$/),
    })
    .nullable()
    .default(null),
});

export type Connection = z.infer<typeof connection>;
export type Combination = z.infer<typeof combination>;
