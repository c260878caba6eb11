import * as z from 'zod';
import { propertyClasses } from '../../engine/hardware/property-classes.ts';
import { standardNames } from '../../engine/standards/standard-name.ts';
import { label, length, lengthOrZero, text } from './values.ts';

/** By what a job is checked, and what is taken where the job says nothing. */
export const rules = z.strictObject({
  format: z.literal('onepour-rules'),
  version: z.literal(1),
  id: label,
  edition: label,
  name: text,
  standard: z.enum(standardNames),
  /** Partial factors γ of EN 1992-4 and AS 5216 (φ = 1/γ); ACI 318 takes none of them. */
  partialFactors: z.strictObject({ concrete: length, steelTension: length.nullable(), steelShear: length.nullable() }),
  cover: z.strictObject({ behindFoot_mm: lengthOrZero }),
  tolerances: z.strictObject({
    position_mm: lengthOrZero,
    level_mm: lengthOrZero,
    /** Of the panel's thickness, either way. */
    thickness_mm: lengthOrZero.default(5),
    /** Of the form's length and width; its two diagonals may differ by twice as much. */
    form_mm: lengthOrZero.default(3),
  }),
  /** Up to where QA may accept an insert that is off and works, as the design engineer set it; null: not set, so QA may accept none. */
  acceptance: z
    .strictObject({
      position_mm: length,
      level_mm: length,
      /** Who set the limits, and by which registration. */
      setBy: text,
    })
    .nullable()
    .default(null),
  /**
   * The specifier agreed that the ± box of a connection's permitted position zone may stand in place of the tolerance above; null: nobody did, so that
   * the tolerance holds everywhere.
   */
  positionZones: z
    .strictObject({
      agreedBy: text,
      /** As what: capacity, and by which registration. */
      capacity: text,
      /** Where it is written down. */
      document: text,
      date: text,
    })
    .nullable()
    .default(null),
  /** At the trowelled face the top is aimed below the face, never proud: the screed would hit it. */
  belowFace: z.strictObject({ aim_mm: lengthOrZero, most_mm: lengthOrZero }).default({ aim_mm: 2, most_mm: 5 }),
  /** Least clearance between an insert and a bar or another cast-in item. */
  clearance_mm: lengthOrZero.default(5),
  /** Exposure class (EN 206) and corrosivity category (ISO 9223). */
  exposure: z.enum(['X0', 'XC1', 'XC2', 'XC3', 'XC4', 'XD1', 'XD2', 'XD3', 'XS1', 'XS2', 'XS3']),
  environment: z.enum(['C1', 'C2', 'C3', 'C4', 'C5', 'CX']),
  defaults: z.strictObject({
    cracked: z.boolean(),
    /** Least engagement of the bolt, in bolt diameters. */
    engagement_d: length,
    /** Bolt class where a connection names none. */
    boltClass: z.enum(propertyClasses),
  }),
  /** Plain words that go onto every sheet. */
  statements: z.array(text).readonly().default([]),
});

export type Rules = z.infer<typeof rules>;
