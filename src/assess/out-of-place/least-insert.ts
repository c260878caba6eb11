import { type BoltSteel, findBoltSteel, type PropertyClass } from '../../engine/hardware/property-classes.ts';
import { diametralAllowance, type InternalThreadClass } from '../../engine/hardware/thread-shear.ts';
import { findThread, type Thread, type ThreadName } from '../../engine/hardware/threads.ts';
import { findEdition } from '../../engine/standards/editions.ts';
import type { StandardName } from '../../engine/standards/standard-name.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import { type SteelPath, steelPathOf } from '../../job/resolve/steel-parts.ts';
import type { KnownValues } from './case.ts';

/** Body over thread: below it no rule tells what the thread's wall holds, so that no maker could reckon it. */
const BODY_TO_THREAD = 1.4;

/** The least foot over the body that it stands on (our choice: wider feet are usual, narrower are hardly a foot). */
export const FOOT_TO_BODY = 8 / 7;

/** The thickest foot over the thread (our choice; common ones have half the thread). It takes its part of the length. */
const FOOT_THICKNESS = 0.6;

/** The largest cross hole over the thread (our choice); taken where the bore still goes through. */
const CROSS_HOLE = 0.6;

/** The softest steel that inserts are turned from: stainless bar of 200 MPa (EN 10088-3, recalled), mild steel of 360 MPa. */
const LEAST_YIELD = 200;
const LEAST_ULTIMATE = 360;

/**
 * EN 1992-4 and AS 5216 take shear of steel above 500 MPa with 0.5, of softer steel with 0.6 of its strength (7.2.2.3.1), and safety by
 * yield over strength: so that with 200 MPa of yield the least is reached just above 500 MPa.
 */
const LEAST_IN_SHEAR = 510;

/** The softest bolts known here. */
const LEAST_BOLT: PropertyClass = 'A2-50';

/** c_cr,sp over the embedment: documents give 1.5 to 3 (common practice). Taken of the longest embedment that may be. */
const CRITICAL_EDGE = 3;

/** The least body of an insert with a thread [mm]. Example: M16 → 22.4. */
export function findLeastBody({ diameter }: Thread): number {
  return Math.ceil(10 * BODY_TO_THREAD * diameter - 1e-9) / 10;
}

/** Tapped the widest: whichever of the two oversize classes leaves the threads less to hold on. */
function findWidestClass(thread: Thread): InternalThreadClass {
  return diametralAllowance(thread, '6AX') > diametralAllowance(thread, '6AZ') ? '6AX' : '6AZ';
}

/** The thickest that a foot may be, and so the shortest that an insert reaches to its bearing side [mm]. Example: M16 → 10. */
export function findThickestFoot({ diameter }: Thread): number {
  return Math.ceil(FOOT_THICKNESS * diameter);
}

/** The least that an insert of a thread and length may be, and what is known of it in place of that. */
export interface LeastInsert {
  readonly item: CatalogueItem;
  /** Width of the foot, as drawn and for its place [mm]. */
  readonly footWidth: number;
  readonly bolt: BoltSteel;
  /** Length of full thread in contact [mm]. */
  readonly engagement: number;
  readonly steel: SteelPath;
  /** The embedment if the foot were as thin as nothing: the longest that goes with the length [mm]. */
  readonly longestEmbedment: number;
}

/**
 * The foot. Where its width is known and the body's is not, it bears on what the widest body leaves of it, though elsewhere the body is taken as
 * the slimmest.
 */
function makeFoot(body: number, known: KnownValues): CatalogueItem['foot'] {
  const width = findFootWidth(body, known);
  const common = { thickness_mm: null, isFullHead: true } as const;
  if (known.footDiameter_mm === null || known.bodyDiameter_mm !== null)
    return { kind: 'diameter', diameter_mm: width, ...common };
  return { kind: 'area', area_mm2: (Math.PI / 4) * (width ** 2 - (width / FOOT_TO_BODY) ** 2), ...common };
}

/** The width of the foot [mm]. */
function findFootWidth(body: number, { footDiameter_mm }: KnownValues): number {
  return footDiameter_mm ?? FOOT_TO_BODY * body;
}

/** Yield and strength count as known together only: with one alone no choice of the other is on the safe side in every rule. */
function findSteel(
  standard: StandardName,
  { steelUltimate_MPa: ultimate, steelYield_MPa: yieldStress }: KnownValues,
): Pick<CatalogueItem['steel'], 'ultimate_MPa' | 'yield_MPa'> {
  if (ultimate !== null && yieldStress !== null) return { ultimate_MPa: ultimate, yield_MPa: yieldStress };
  const least = findEdition(standard).takesPartialFactors ? LEAST_IN_SHEAR : LEAST_ULTIMATE;
  return { ultimate_MPa: least, yield_MPa: LEAST_YIELD };
}

/** The insert as a line of a catalogue that says what it is. */
function makeItem(
  thread: Thread,
  length: number,
  thickness: number,
  standard: StandardName,
  known: KnownValues,
): CatalogueItem {
  const body = known.bodyDiameter_mm ?? findLeastBody(thread);
  const embedment = known.embedment_mm ?? length - findThickestFoot(thread);
  const d = thread.diameter;
  return {
    id: `${thread.name}-${Math.round(length)}-assumed`,
    name: `Insert ${thread.name} × ${Math.round(length)}, its sizes assumed on the safe side; no product`,
    thread: thread.name,
    length_mm: length,
    embedment_mm: embedment,
    foot: makeFoot(body, known),
    bodyDiameter_mm: body,
    crossHole: { diameter_mm: Math.ceil(CROSS_HOLE * d), fromFoot_mm: d, boreThere_mm: d },
    threadDepth_mm: Math.max(d, known.engagement_mm ?? 0),
    threadStartsBelowTop_mm: 0,
    steel: { ...findSteel(standard, known), elongation_percent: null, areaReduction_percent: null },
    finish: 'galvanised',
    coating_um: 50,
    threadClass: known.threadClass ?? findWidestClass(thread),
    boltFinishes: ['plain', 'zinc', 'galvanised', 'stainless'],
    maxTorque_Nm: null,
    tested: [],
    qualification: known.document,
    ratedLoads: [],
    crossBar: null,
    splitting: {
      criticalEdge_mm: known.criticalEdge_mm ?? CRITICAL_EDGE * (known.embedment_mm ?? length),
      minimumThickness_mm: thickness,
    },
    leastEdge_mm: null,
    leastSpacing_mm: null,
    leastThickness_mm: null,
    pryOutFactor: null,
    price: null,
    leadTime_days: null,
  };
}

/**
 * The least insert that a thread and a length allow: every size, strength and class that is not known is taken where it resists least.
 * @param length from the top to the end of the foot [mm]
 * @param thickness of the concrete [mm]
 */
export function makeLeastInsert(
  name: ThreadName,
  length: number,
  thickness: number,
  standard: StandardName,
  known: KnownValues,
): LeastInsert {
  const thread = findThread(name);
  const item = makeItem(thread, length, thickness, standard, known);
  const bolt = findBoltSteel(known.boltClass ?? LEAST_BOLT);
  const engagement = known.engagement_mm ?? thread.diameter;
  return {
    item,
    footWidth: findFootWidth(item.bodyDiameter_mm, known),
    bolt,
    engagement,
    steel: steelPathOf(item, bolt, engagement),
    longestEmbedment: known.embedment_mm ?? length,
  };
}
