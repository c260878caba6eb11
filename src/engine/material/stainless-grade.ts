/** Where stainless steel stands, as Annex A of EN 1993-1-4 asks. */
export interface StainlessSite {
  /** Chlorides: an internally controlled environment, a road tunnel with de-icing salt, or distances to the sea and salted roads. */
  readonly chlorides:
    | { readonly kind: 'internal' }
    | { readonly kind: 'tunnel' }
    | {
        readonly kind: 'distances';
        /** M, to the sea [km]; Infinity far inland. */
        readonly sea: number;
        /** S, to a road with de-icing salt [km]; Infinity where there is none. */
        readonly saltedRoad: number;
        /** On the North Sea coast of Germany or any coast of the Baltic, where the sea counts less. */
        readonly isMildCoast: boolean;
      };
  /** Sulphur dioxide in the air [µg/m³], up to 250. */
  readonly sulphurDioxide: number;
  /** Washed by rain all over, cleaned by a written regime, or neither. */
  readonly washing: 'rain' | 'regime' | 'none';
}

/** Steel by its number (EN 10088): A2, A4, duplex, super-austenitic. */
export type StainlessGrade = '1.4301' | '1.4401' | '1.4462' | '1.4529';

/** Corrosion resistance class. */
export type ResistanceClass = 'I' | 'II' | 'III' | 'IV' | 'V';

/** The corrosion resistance factor with its parts, the class, and the least steel of those known here. */
export interface StainlessChoice {
  readonly chlorides: number;
  readonly sulphurDioxide: number;
  readonly washing: number;
  readonly factor: number;
  readonly resistanceClass: ResistanceClass;
  readonly grade: StainlessGrade;
}

/** Source: EN 1993-1-4:2006 + A1:2015, Table A.1, F3; recalled: confirm in print. */
const WASHING: Readonly<Record<StainlessSite['washing'], number>> = { rain: 0, regime: -3, none: -7 };

/** Least steel of a class. Source: EN 1993-1-4:2006 + A1:2015, Table A.3; recalled: confirm in print. */
const GRADES: Readonly<Record<ResistanceClass, StainlessGrade>> = {
  I: '1.4301',
  II: '1.4301',
  III: '1.4401',
  IV: '1.4462',
  V: '1.4529',
};

const ORDER: readonly StainlessGrade[] = ['1.4301', '1.4401', '1.4462', '1.4529'];

/** F1, chlorides. Source: EN 1993-1-4:2006 + A1:2015, Table A.1. Sea and road: the worse. */
function findChlorides(given: StainlessSite['chlorides']): number {
  switch (given.kind) {
    case 'internal':
      return 1;
    case 'tunnel':
      return -10;
    case 'distances':
      return Math.min(byTheSea(given.sea, given.isMildCoast), byTheRoad(given.saltedRoad));
  }
}

function byTheSea(distance: number, isMildCoast: boolean): number {
  if (distance <= 0.25) return isMildCoast ? -10 : -15;
  if (distance <= 1) return -7;
  return distance <= 10 ? -3 : 0;
}

function byTheRoad(distance: number): number {
  if (distance <= 0.01) return -7;
  return distance <= 0.1 ? -3 : 0;
}

/** F2, sulphur dioxide [µg/m³]. Source: EN 1993-1-4:2006 + A1:2015, Table A.1. */
function findSulphurDioxide(content: number): number {
  if (content < 10) return 0;
  return content <= 90 ? -5 : -10;
}

/** Source: EN 1993-1-4:2006 + A1:2015, Table A.2; limits recalled: confirm in print. */
function findResistanceClass(factor: number): ResistanceClass {
  if (factor === 1) return 'I';
  if (factor > -7) return 'II';
  if (factor > -15) return 'III';
  return factor >= -20 ? 'IV' : 'V';
}

/**
 * Gives the corrosion resistance factor F1 + F2 + F3 of a site, its class and the least steel of those known here. An internally
 * controlled environment is class I whatever else is given.
 *
 * Source: EN 1993-1-4:2006 + A1:2015, Annex A. Range: sulphur dioxide up to 250 µg/m³; not for swimming pools (Table A.4).
 * Example: 0.5 km from the sea, no salted road, 5 µg/m³, washed by rain → −7, class III, 1.4401.
 */
export function chooseStainless(site: StainlessSite): StainlessChoice {
  const isInternal = site.chlorides.kind === 'internal';
  const chlorides = findChlorides(site.chlorides);
  const sulphurDioxide = isInternal ? 0 : findSulphurDioxide(site.sulphurDioxide);
  const washing = isInternal ? 0 : WASHING[site.washing];
  const factor = chlorides + sulphurDioxide + washing;
  const resistanceClass = findResistanceClass(factor);
  return { chlorides, sulphurDioxide, washing, factor, resistanceClass, grade: GRADES[resistanceClass] };
}

/** Whether a steel is at least as resistant as another. */
export function isAtLeast(grade: StainlessGrade, wanted: StainlessGrade): boolean {
  return ORDER.indexOf(grade) >= ORDER.indexOf(wanted);
}
