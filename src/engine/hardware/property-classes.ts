/** Property classes of bolts: carbon steel by ISO 898-1, austenitic stainless steel by ISO 3506-1. */
export type PropertyClass =
  | '4.6'
  | '5.6'
  | '5.8'
  | '8.8'
  | '10.9'
  | 'A2-50'
  | 'A2-70'
  | 'A2-80'
  | 'A4-50'
  | 'A4-70'
  | 'A4-80';

/** Steel of a bolt. Stresses MPa. */
export interface BoltSteel {
  readonly propertyClass: PropertyClass;
  /** Nominal tensile strength f_uk. */
  readonly ultimate: number;
  /** Nominal yield strength or 0.2 % stress f_yk. */
  readonly yield: number;
  /** Elongation after fracture A5 [%]; null where the standard gives a length instead (stainless). */
  readonly elongation: number | null;
  /** Reduction of area after fracture Z [%]; null where the standard asks for none, or none is known here. */
  readonly areaReduction: number | null;
}

type Row = readonly [ultimate: number, yieldStress: number, elongation: number | null, areaReduction: number | null];

/**
 * Nominal f_uk and f_yk: the class's own numbers (ISO 898-1: first figure × 100, second × tenth of it), as design standards
 * take them, never more than the standard's minimum. A5 and Z: ISO 898-1, Table 3 (machined test
 * pieces; Z recalled, which the table has for quenched and tempered classes only). Stainless: ISO 3506-1 (50: 500/210, 70: 700/450,
 * 80: 800/600); its elongation is a length in bolt diameters, not A5, so none is given here.
 */
const steels: Readonly<Record<PropertyClass, Row>> = {
  '4.6': [400, 240, 22, null],
  '5.6': [500, 300, 20, null],
  '5.8': [500, 400, 10, null],
  '8.8': [800, 640, 12, 52],
  '10.9': [1000, 900, 9, 48],
  'A2-50': [500, 210, null, null],
  'A2-70': [700, 450, null, null],
  'A2-80': [800, 600, null, null],
  'A4-50': [500, 210, null, null],
  'A4-70': [700, 450, null, null],
  'A4-80': [800, 600, null, null],
};

/** Names of the property classes known here. */
export const propertyClasses = [
  '4.6',
  '5.6',
  '5.8',
  '8.8',
  '10.9',
  'A2-50',
  'A2-70',
  'A2-80',
  'A4-50',
  'A4-70',
  'A4-80',
] as const satisfies readonly PropertyClass[];

/** Gives the nominal strengths [MPa], A5 and Z [%] of a bolt's property class. Example: 8.8 → 800, 640, 12, 52. */
export function findBoltSteel(propertyClass: PropertyClass): BoltSteel {
  const [ultimate, yieldStress, elongation, areaReduction] = steels[propertyClass];
  return { propertyClass, ultimate, yield: yieldStress, elongation, areaReduction };
}

/** True for stainless bolts, which are ordered by steel group and class (A2-70). */
export function isStainlessClass(propertyClass: PropertyClass): boolean {
  return propertyClass.startsWith('A');
}
