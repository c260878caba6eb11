// Source: ACI 349.2R-07, examples A1, A2 and A4, as asserted by a test of others: inch-pound coefficients; the φ of that
// edition and its 0.85 for ductility are handed to the clauses of ACI 318-19.

import {
  BREAKOUT_BASIC,
  BREAKOUT_BASIC_DEEP,
  BREAKOUT_RESISTANCE,
} from '../../src/engine/standards/aci-318-19/breakout.ts';
import { INCH_POUND } from '../../src/engine/standards/aci-318-19/coefficients.ts';
import {
  BEARING_LENGTH,
  EDGE_BASIC,
  EDGE_CORNER_FACTOR,
  EDGE_RESISTANCE,
  EDGE_THICKNESS_FACTOR,
} from '../../src/engine/standards/aci-318-19/edge-breakout.ts';
import { PRY_OUT, PRY_OUT_FACTOR } from '../../src/engine/standards/aci-318-19/pry-out.ts';
import {
  BEARING_AREA,
  PULL_OUT_BASIC,
  PULL_OUT_CRACKING,
  PULL_OUT_RESISTANCE,
} from '../../src/engine/standards/aci-318-19/pull-out.ts';
import { STEEL_TENSION } from '../../src/engine/standards/aci-318-19/steel-tension.ts';
import { DESIGN_STRENGTH } from '../../src/engine/standards/aci-318-19/strength-reduction.ts';
import { INCH, KIP, KSI, PSI, SQUARE_INCH } from './inch-pound.ts';
import type { Evaluator, PublishedCase } from './published.ts';

/** Concrete of all three examples [MPa]. */
const STRENGTH = 4000 * PSI;
/** Share of the concrete strength that ACI 349 compares with the steel strength. */
const DUCTILITY = 0.85;
const KILO = 1000;

/** N_sa [kip] of the stud of 1/2 in, whole shank, f_uta 65 ksi. */
const studSteel = (by: Evaluator): number =>
  by.clause(STEEL_TENSION, (Math.PI / 4) * 0.5 ** 2 * SQUARE_INCH, 65 * KSI) / KIP;

/** N_cb [kip] of one stud away from edges; embedment [in]. */
function studBreakout(by: Evaluator, embedment: number): number {
  const basic = by.clause(BREAKOUT_BASIC, INCH_POUND.breakout, 1, STRENGTH, embedment * INCH);
  return by.clause(BREAKOUT_RESISTANCE, basic, 1, 1, 1, 1, 1, 1) / KIP;
}

/** N_pn [kip] of a bearing area [in²]. */
function studPullOut(by: Evaluator, bearing: number): number {
  const basic = by.clause(PULL_OUT_BASIC, bearing * SQUARE_INCH, STRENGTH);
  return by.clause(PULL_OUT_RESISTANCE, PULL_OUT_CRACKING.cracked, basic) / KIP;
}

const exampleA1: PublishedCase = {
  entry: 'aci349.2r-A1',
  how: 'inputs of the entry; φ = 0.80 and 0.85 as that edition has them',
  values: {
    Nsa: studSteel,
    Nb: (by) => by.clause(BREAKOUT_BASIC, INCH_POUND.breakout, 1, STRENGTH, 4.69 * INCH) / KIP,
    Ncb: (by) => studBreakout(by, 4.69),
    Npn: (by) => studPullOut(by, 0.59),
    '0.85 min(Ncb,Npn)': (by) =>
      by.clause(DESIGN_STRENGTH, Math.min(studBreakout(by, 4.69), studPullOut(by, 0.59)), DUCTILITY),
    'phi Nsa': (by) => by.clause(DESIGN_STRENGTH, studSteel(by), 0.8),
  },
};

/** The coefficient 8 of studs welded to a plate, in place of 7. */
const WELDED = (8 / 7) * INCH_POUND.edge;

/** V_cb [kip]: no corner, thickness or neighbour cuts the body, so that A_Vc = A_Vco. */
function studEdge(by: Evaluator): number {
  const length = by.clause(BEARING_LENGTH, 3.06 * INCH, 0.5 * INCH);
  const basic = by.clause(EDGE_BASIC, WELDED, INCH_POUND.edgeCap, length, 0.5 * INCH, 1, STRENGTH, 10 * INCH);
  const corner = by.clause(EDGE_CORNER_FACTOR, 18 * INCH, 10 * INCH);
  const thickness = by.clause(EDGE_THICKNESS_FACTOR, 10 * INCH, 18 * INCH);
  return by.clause(EDGE_RESISTANCE, basic, 1, corner, thickness, 1, 1) / KIP;
}

/** V_cp [kip]. */
function studPryOut(by: Evaluator): number {
  const factor = by.clause(PRY_OUT_FACTOR, 3.06 * INCH, INCH_POUND.pryOutDepth);
  return by.clause(PRY_OUT, factor, studBreakout(by, 3.06));
}

const exampleA2: PublishedCase = {
  entry: 'aci349.2r-A2',
  how: 'inputs of the entry; coefficient 8 of a welded stud, 0.85 as that edition has it',
  values: {
    Vcb: studEdge,
    Vcp: studPryOut,
    Npn: (by) => studPullOut(by, 0.589),
    '0.85 min(Vcb,Vcp)': (by) => by.clause(DESIGN_STRENGTH, Math.min(studEdge(by), studPryOut(by)), DUCTILITY),
  },
};

/** Diameter of the disc that has the area of the square washer of 2.25 in [mm]. */
const WASHER_AS_DISC = Math.sqrt(4 / Math.PI) * 2.25 * INCH;

const exampleA4: PublishedCase = {
  entry: 'aci349.2r-A4',
  how: 'inputs of the entry; the printed section for N_sa; the square washer taken as the disc of equal area',
  values: {
    Nsa: (by) => by.clause(STEEL_TENSION, 492.433431, 125 * KSI) / KILO,
    Ncb: (by) => {
      const basic = by.clause(BREAKOUT_BASIC_DEEP, INCH_POUND.deepBreakout, 1, STRENGTH, 17.57 * INCH);
      return by.clause(BREAKOUT_RESISTANCE, basic, 1, 1, 1, 1, 1, 1) / KILO;
    },
    Np: (by) => {
      const bearing = by.clause(BEARING_AREA, WASHER_AS_DISC, Number.POSITIVE_INFINITY, 1.125 * INCH);
      return by.clause(PULL_OUT_BASIC, bearing, STRENGTH) / KILO;
    },
  },
};

export const CASES: readonly PublishedCase[] = [exampleA1, exampleA2, exampleA4];
