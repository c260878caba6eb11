import type { StandardName } from '../engine/standards/standard-name.ts';
import type { Rules } from '../job/documents/rules.ts';

/** Exposure classes of EN 206 in a few words. */
export const EXPOSURE_WORDS: Readonly<Record<Rules['exposure'], string>> = {
  X0: 'no attack, very dry',
  XC1: 'dry, or always under water',
  XC2: 'wet, seldom dry',
  XC3: 'moderate humidity, sheltered from rain',
  XC4: 'wet and dry by turns',
  XD1: 'salt in the air, not of the sea',
  XD2: 'wet with salt, seldom dry',
  XD3: 'wet and dry by turns, de-icing salt',
  XS1: 'salt air of the sea',
  XS2: 'always under the sea',
  XS3: 'tide, splash and spray',
};

/** Corrosivity categories of ISO 9223 in a few words. */
export const ENVIRONMENT_WORDS: Readonly<Record<Rules['environment'], string>> = {
  C1: 'very low: heated and dry inside',
  C2: 'low: unheated inside, country air',
  C3: 'medium: town air, mild coast',
  C4: 'high: industry, coast',
  C5: 'very high: harsh industry, open coast',
  CX: 'extreme: offshore, tropical salt',
};

/** Editions in full. */
export const STANDARD_WORDS: Readonly<Record<StandardName, string>> = {
  'EN 1992-4': 'EN 1992-4:2018',
  'AS 5216': 'AS 5216:2021',
  'ACI 318-19': 'ACI 318-19 (inch-pound)',
  'ACI 318M-19': 'ACI 318M-19 (SI)',
};

/** Whether the partial factors of the rules count by a standard. */
export function takesPartialFactors(standard: StandardName): boolean {
  return standard === 'EN 1992-4' || standard === 'AS 5216';
}

/** What is not covered by anything here, for people who might rely on it. */
export const NOT_COVERED = [
  'Earthquake, fire and fatigue.',
  'Lifting and bracing: a rated load is copied from its document, never computed.',
  'Inserts that are set into wet or hardened concrete, and repairs.',
  'Groups of inserts that differ from each other.',
  'Lightweight concrete, by any of the standards here.',
  'Bars that take the load of an insert, by ACI 318.',
  'Corners sharper than 90°.',
  'Prying of flexible plates; of a plate nothing but its elastic bending is looked at.',
  'What happens after the concrete is in: records of the pour and surveys.',
] as const;

/** What whoever uses an answer must know. */
export const RULE_CAUTIONS = [
  'No printed copy of EN 1992-4, AS 5216 or ACI 318 was at hand when this was made. Formulas and coefficients are recalled or seen second hand and checked against published values; confirm them against print before relying on them.',
  'Loads are design (factored) values of the code that the job is checked by; what a connection carries at most is a design value too.',
  'Places are taken as drawn: no tolerance of placing is in the ratios.',
  'Strength at an early age, temporary works and lifting have rules of their own; an answer at 28 days says nothing about them.',
] as const;
