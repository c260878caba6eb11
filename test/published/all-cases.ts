// Every case and the rows that they give. Sources: each file names its own.

import { CASES as ACI_318 } from './aci-318.ts';
import { CASES as ACI_349 } from './aci-349.ts';
import { CASES as AGE } from './age.ts';
import { CASES as AS_5216 } from './as-5216.ts';
import { CASES as B19 } from './b19.ts';
import { CASES as BOLT_HOLES } from './bolt-holes.ts';
import { CASES as BOLT_PARTS } from './bolt-parts.ts';
import { CASES as BOLT_STRENGTHS } from './bolt-strengths.ts';
import { CASES as CEN_TS } from './cen-ts-1992-4.ts';
import { CASES as DESIGN_GUIDE } from './design-guide-1.ts';
import { CASES as DESIGN_GUIDE_ANCHORS } from './design-guide-1-anchors.ts';
import { CASES as DURABILITY } from './durability.ts';
import { CASES as EDUCATIONAL } from './educational-page.ts';
import { CASES as HARDWARE } from './hardware.ts';
import { CASES as HOLE_FIT } from './hole-fit.ts';
import { type PublishedRow, runCase } from './published.ts';
import { CASES as RAYLEIGH } from './rayleigh.ts';
import { CASES as REGISTRATION } from './registration.ts';
import { CASES as TAPES } from './tapes.ts';

export const CASES = [
  ...DESIGN_GUIDE,
  ...DESIGN_GUIDE_ANCHORS,
  ...ACI_349,
  ...ACI_318,
  ...AS_5216,
  ...EDUCATIONAL,
  ...B19,
  ...CEN_TS,
  ...HARDWARE,
  ...DURABILITY,
  ...AGE,
  ...BOLT_STRENGTHS,
  ...BOLT_PARTS,
  ...BOLT_HOLES,
  ...TAPES,
  ...REGISTRATION,
  ...HOLE_FIT,
  ...RAYLEIGH,
];

/** Computes every published value that has a case, in the order of the cases. */
export function runAllCases(): readonly PublishedRow[] {
  return CASES.flatMap(runCase);
}
