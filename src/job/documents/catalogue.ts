import * as z from 'zod';
import { threadNames } from '../../engine/hardware/threads.ts';
import { label, length, lengthOrZero, stress, text } from './values.ts';

/** Surface of a steel part. */
export const finish = z.enum(['plain', 'zinc', 'galvanised', 'stainless']);

/** The foot: diameter (thickness if known), or a net bearing area. A foot that is not a full round head is not covered without a test. */
const foot = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('diameter'),
    diameter_mm: length,
    thickness_mm: length.nullable(),
    isFullHead: z.boolean(),
  }),
  z.strictObject({
    kind: z.literal('area'),
    area_mm2: length,
    thickness_mm: length.nullable(),
    isFullHead: z.boolean(),
  }),
]);

/** A resistance that was measured; it replaces a formula only with its report number. */
const tested = z.strictObject({
  mode: z.enum(['steel-tension', 'steel-shear', 'thread', 'pull-out']),
  characteristic_kN: length,
  /** Partial factor of the report; null: that of the standard. */
  partialFactor: length.nullable().default(null),
  /** Lowest f_ck that a pull-out value holds for; null for steel and thread. */
  fromStrength_MPa: length.nullable().default(null),
  report: text,
  /** Where it names a design standard (or several, set apart by commas), the test counts under those only; any other text restricts nothing. */
  standard: text,
  conditions: text,
});

/** What the maker allows in a role that no anchorage standard of this engine covers. */
const ratedLoad = z.strictObject({
  role: z.enum(['brace', 'lifting']),
  load_kN: length,
  document: text,
  conditions: text,
});

/** One kind of insert that a yard buys. */
export const catalogueItem = z.strictObject({
  id: label,
  name: text,
  thread: z.enum(threadNames),
  length_mm: length,
  /** From the top of the insert to the bearing side of the foot. */
  embedment_mm: length,
  foot,
  bodyDiameter_mm: length,
  /** The hole for an anchor bar through the body; bore 0 where the body is solid there. */
  crossHole: z.strictObject({ diameter_mm: length, fromFoot_mm: lengthOrZero, boreThere_mm: lengthOrZero }).nullable(),
  threadDepth_mm: length,
  threadStartsBelowTop_mm: lengthOrZero,
  steel: z.strictObject({
    ultimate_MPa: stress,
    yield_MPa: stress,
    elongation_percent: length.nullable(),
    areaReduction_percent: length.nullable(),
  }),
  finish,
  coating_um: lengthOrZero,
  threadClass: z.enum(['6H', '6AZ', '6AX']),
  /** Bolts that go in. */
  boltFinishes: z.array(finish).min(1).readonly(),
  maxTorque_Nm: length.nullable(),
  tested: z.array(tested).readonly().default([]),
  qualification: z.strictObject({ document: text, standard: text }).nullable(),
  ratedLoads: z.array(ratedLoad).readonly().default([]),
  /** The bar that the maker asks for through the foot; it adds nothing to a resistance. */
  crossBar: z.strictObject({ diameter_mm: length, length_mm: length }).nullable().default(null),
  splitting: z.strictObject({ criticalEdge_mm: length, minimumThickness_mm: length }).nullable().default(null),
  /** The least distance to an edge, spacing and thickness of concrete that the product document allows. */
  leastEdge_mm: length.nullable().default(null),
  leastSpacing_mm: length.nullable().default(null),
  leastThickness_mm: length.nullable().default(null),
  pryOutFactor: length.nullable().default(null),
  price: z.strictObject({ amount: lengthOrZero, currency: label }).nullable().default(null),
  leadTime_days: lengthOrZero.nullable().default(null),
});

/** The inserts of one or more makers, as bought by one yard. Stock is not here: it is a record of the yard. */
export const catalogue = z.strictObject({
  format: z.literal('onepour-catalogue'),
  version: z.literal(1),
  id: label,
  edition: label,
  name: text,
  items: z.array(catalogueItem).readonly(),
});

export type CatalogueItem = z.infer<typeof catalogueItem>;
