import * as z from 'zod';
import { holdingMethodNames } from '../../engine/form/holding-methods.ts';
import { threadNames } from '../../engine/hardware/threads.ts';
import { label, length, lengthOrZero, text } from './values.ts';

const count = z.int().positive();

/** One thing that is counted and fetched to hold inserts: a plate, a nail, a chair. */
export const holdingPart = z.strictObject({
  id: label,
  name: text,
  kind: z.enum([
    'fixing plate',
    'pad',
    'nail',
    'screw',
    'magnet',
    'recess former',
    'template board',
    'side form bolt',
    'bridging bar',
    'chair',
    'cap',
    'tie wire',
    'other',
  ]),
  thread: z.enum(threadNames).nullable().default(null),
  /** Of a chair: from the form to the foot that stands on it. Of a plate, magnet, former or cap: its thickness at the insert. */
  height_mm: lengthOrZero.nullable().default(null),
  reusable: z.boolean(),
  /** Of a reusable part: the share that does not come back from one use. */
  lossPerUse: z.number().min(0).max(1).default(0),
  /** Of a reusable part: days from the pour until it can be used again. */
  turnRound_days: z.int().nonnegative().default(1),
  packSize: count.default(1),
  leadTime_days: lengthOrZero.nullable().default(null),
});

/** One way in which a yard holds inserts until the concrete is hard: a method with its parts. */
export const holdingWay = z.strictObject({
  id: label,
  name: text,
  method: z.enum(holdingMethodNames),
  /** The inserts that it fits; null: any. */
  thread: z.enum(threadNames).nullable().default(null),
  /** How far it keeps the top of the insert below the face: the plate, magnet, former or cap that leaves a recess. */
  recess_mm: lengthOrZero.default(0),
  /** Width across the recess that it leaves in the face. */
  recessWidth_mm: length.nullable().default(null),
  parts: z
    .array(z.strictObject({ part: label, count, per: z.enum(['insert', 'group']).default('insert') }))
    .readonly()
    .default([]),
  /** Of the method chair: the chairs in stock, one of which is chosen for each thickness. */
  chairs: z.array(label).readonly().default([]),
  /** How far a chair's legs sink into the form or into what it stands on. */
  chairSink_mm: lengthOrZero.default(0),
  /** Standard deviations of where it ends up after the pour; null: those of the method, common practice. */
  scatter: z.strictObject({ position_mm: length, level_mm: length }).nullable().default(null),
});

/** The holding parts that a yard owns or buys, and the ways in which it uses them. */
export const holdingParts = z.strictObject({
  format: z.literal('onepour-holding-parts'),
  version: z.literal(1),
  id: label,
  edition: label,
  name: text,
  parts: z.array(holdingPart).readonly(),
  ways: z.array(holdingWay).readonly(),
});

export type HoldingPart = z.infer<typeof holdingPart>;
export type HoldingWay = z.infer<typeof holdingWay>;
