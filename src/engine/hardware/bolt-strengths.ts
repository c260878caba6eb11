import { findBoltSteel, type PropertyClass } from './property-classes.ts';
import type { Thread } from './threads.ts';

/** What a bolt's steel has at least. Stresses MPa. */
export interface LeastStrengths {
  /** R_m,min. */
  readonly ultimate: number;
  /** R_eL, R_p0.2 or R_pf, min. */
  readonly yield: number;
  /** Stress under proof load S_p; null where the standard has none (stainless). */
  readonly proof: number | null;
}

/** Above this diameter class 8.8 has strengths of its own [mm]. */
const LARGE_8_8 = 16;

type Row = readonly [ultimate: number, yieldStress: number, proof: number];
const large8_8: Row = [830, 660, 600];

/** Where the least strengths of ISO 898-1, Table 3, lie above the nominal ones of the class. */
const aboveNominal: Readonly<Partial<Record<PropertyClass, Row>>> = {
  '5.8': [520, 420, 380],
  '10.9': [1040, 940, 830],
};

/** Stress under proof load of the classes whose least strengths are the nominal ones: ISO 898-1, Table 3 (5.6 recalled). */
const proofStresses: Readonly<Partial<Record<PropertyClass, number>>> = { '4.6': 225, '5.6': 280, '8.8': 580 };

/**
 * Gives the least strengths that the product standard asks of a bolt [MPa]. They are never below the nominal strengths of the class,
 * with which design standards compute (`findBoltSteel`).
 *
 * Source: ISO 898-1, Table 3; ISO 3506-1, which has a 0.2 % stress and no proof load. Class 8.8 above 16 mm has higher ones. Example: 8.8 in M20 → 830, 660, 600.
 */
export function findLeastStrengths(propertyClass: PropertyClass, thread: Thread): LeastStrengths {
  const isLarge8_8 = propertyClass === '8.8' && thread.diameter > LARGE_8_8;
  const above = isLarge8_8 ? large8_8 : aboveNominal[propertyClass];
  if (above !== undefined) return { ultimate: above[0], yield: above[1], proof: above[2] };
  const { ultimate, yield: yieldStress } = findBoltSteel(propertyClass);
  return { ultimate, yield: yieldStress, proof: proofStresses[propertyClass] ?? null };
}

/** Loads of one bolt [N]. */
export interface BoltLoads {
  /** Least breaking load. */
  readonly breaking: number;
  /** Proof load; for stainless steel the load at the 0.2 % stress. */
  readonly proof: number;
  /** False where the standard has no proof load and the 0.2 % stress stands in its place. */
  readonly isProofLoad: boolean;
}

/**
 * Gives the nominal stress area A_s,nom as the tables of ISO 898-1 print it, with three figures [mm²].
 * Example: M16 → 157; M10 → 58.0.
 */
export function nominalStressArea(thread: Thread): number {
  return Number(thread.stressArea.toPrecision(3));
}

/**
 * Gives proof load and least breaking load of a bolt [N]: F_p = A_s,nom S_p and F_m = A_s,nom R_m,min.
 *
 * Source: ISO 898-1, Tables 4 and 5 (which print them with three figures); ISO 3506-1. Example: M20, 8.8 → 147 000 and 203 350.
 */
export function findBoltLoads(propertyClass: PropertyClass, thread: Thread): BoltLoads {
  const area = nominalStressArea(thread);
  const { ultimate, yield: yieldStress, proof } = findLeastStrengths(propertyClass, thread);
  return { breaking: area * ultimate, proof: area * (proof ?? yieldStress), isProofLoad: proof !== null };
}
