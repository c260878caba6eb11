// Source: AISC Design Guide 1, 3rd ed. (2024), examples 4.7-3 to 4.7-11 and tables 4-1 and 4-2: anchors by ACI 318-19,
// inch-pound. The guide multiplies values that it has already rounded; where that shows in the printed digits, the printed
// values are handed on to the next clause, as the guide does, and what comes out unrounded is said.

import type { Point } from '../../src/engine/geometry/point.ts';
import { prepareRegion } from '../../src/engine/geometry/region.ts';
import { groupArea } from '../../src/engine/geometry/sight.ts';
import {
  BREAKOUT_BASIC_DEEP,
  BREAKOUT_REFERENCE_AREA,
  BREAKOUT_RESISTANCE,
} from '../../src/engine/standards/aci-318-19/breakout.ts';
import { INCH_POUND } from '../../src/engine/standards/aci-318-19/coefficients.ts';
import {
  EDGE_BASIC,
  EDGE_REFERENCE_AREA,
  EDGE_RESISTANCE,
} from '../../src/engine/standards/aci-318-19/edge-breakout.ts';
import { INTERACTION } from '../../src/engine/standards/aci-318-19/interaction.ts';
import { PRY_OUT, PRY_OUT_FACTOR } from '../../src/engine/standards/aci-318-19/pry-out.ts';
import {
  PULL_OUT_BASIC,
  PULL_OUT_CRACKING,
  PULL_OUT_RESISTANCE,
} from '../../src/engine/standards/aci-318-19/pull-out.ts';
import { GROUT_PAD_FACTOR, STEEL_SHEAR } from '../../src/engine/standards/aci-318-19/steel-shear.ts';
import { STEEL_TENSION, USABLE_ULTIMATE } from '../../src/engine/standards/aci-318-19/steel-tension.ts';
import {
  CONCRETE_PHI,
  DESIGN_STRENGTH,
  PULL_OUT_PHI,
  STEEL_PHI,
} from '../../src/engine/standards/aci-318-19/strength-reduction.ts';
import { INCH, KIP, KSI, PSI, SQUARE_INCH } from './inch-pound.ts';
import type { Evaluator, PublishedCase } from './published.ts';

type Values = PublishedCase['values'];

/** Grades of ASTM F1554: specified yield and ultimate strength [ksi]. */
const GRADE_36 = { f_ya: 36, f_uta: 58 } as const;
const GRADE_55 = { f_ya: 55, f_uta: 75 } as const;
const GRADE_105 = { f_ya: 105, f_uta: 125 } as const;
interface Grade {
  readonly f_ya: number;
  readonly f_uta: number;
}

/** Ultimate strength that counts [MPa]. */
const ultimate = (by: Evaluator, { f_ya, f_uta }: Grade): number =>
  by.clause(USABLE_ULTIMATE, f_uta * KSI, f_ya * KSI, INCH_POUND.highestUltimate);

/** N_sa [kip] of a section [in²]. */
const steel = (by: Evaluator, section: number, grade: Grade): number =>
  by.clause(STEEL_TENSION, section * SQUARE_INCH, ultimate(by, grade)) / KIP;

/** Design strength in the unit of the nominal strength. */
const reduce = (by: Evaluator, nominal: number, phi: number): number => by.clause(DESIGN_STRENGTH, nominal, phi);

/** N_pn [kip] of a bearing area [in²] in cracked concrete of a strength [psi]. */
function pullOut(by: Evaluator, bearing: number, strength: number): number {
  const basic = by.clause(PULL_OUT_BASIC, bearing * SQUARE_INCH, strength * PSI);
  return by.clause(PULL_OUT_RESISTANCE, PULL_OUT_CRACKING.cracked, basic) / KIP;
}

/** Anchors away from edges: embedment and places [in], concrete strength [psi]. */
interface Group {
  readonly embedment: number;
  readonly strength: number;
  readonly at: readonly Point[];
}

/** A_Nc [in²]: the exact union of the projected squares. */
function area(by: Evaluator, { embedment, at }: Group): number {
  const xs = at.map(([x]) => x * INCH);
  const ys = at.map(([, y]) => y * INCH);
  const found = groupArea(prepareRegion(null, []), xs, ys, 1.5 * embedment * INCH, 1, 0);
  return by.part('exact area of the projected squares', found) / SQUARE_INCH;
}

/** A_Nco [in²]. */
const referenceArea = (by: Evaluator, { embedment }: Group): number =>
  by.clause(BREAKOUT_REFERENCE_AREA, embedment * INCH) / SQUARE_INCH;

/** N_b [kip]. */
const basic = (by: Evaluator, { embedment, strength }: Group): number =>
  by.clause(BREAKOUT_BASIC_DEEP, INCH_POUND.deepBreakout, 1, strength * PSI, embedment * INCH) / KIP;

/** N_cbg [kip] from N_b [kip] and areas: cracked, no edge, no eccentricity. */
const breakout = (by: Evaluator, N_b: number, A_Nc: number, A_Nco: number): number =>
  by.clause(BREAKOUT_RESISTANCE, N_b, A_Nc / A_Nco, 1, 1, 1, 1, 1);

const groupBreakout = (by: Evaluator, group: Group): number =>
  breakout(by, basic(by, group), area(by, group), referenceArea(by, group));

/** The values that every example with a group prints. */
const areasAndBasic = (group: Group): Values => ({
  ANc: (by) => area(by, group),
  ANco: (by) => referenceArea(by, group),
  Nb: (by) => basic(by, group),
});

const FROM_INPUTS = 'inputs of the entry, cracked concrete, no supplementary reinforcement';
const HANDED_ON = 'printed values handed on, as the source does';

/** Table 4-1 and example 4.7-3 give the section of the thread; the engine takes a section as given. */
const example3Steel: PublishedCase = {
  entry: 'dg1-4.7-3-steel',
  how: FROM_INPUTS,
  values: {
    Nsa: (by) => steel(by, 0.462, GRADE_36),
    phiNsa: (by) => reduce(by, steel(by, 0.462, GRADE_36), STEEL_PHI.ductile.tension),
  },
};

const SQUARE_OF_FOUR: Group = {
  embedment: 15,
  strength: 4000,
  at: [
    [0, 0],
    [4, 0],
    [0, 4],
    [4, 4],
  ],
};

const example3: readonly PublishedCase[] = [
  {
    entry: 'dg1-4.7-3-breakout',
    how: FROM_INPUTS,
    values: { ...areasAndBasic(SQUARE_OF_FOUR), Ncbg: (by) => groupBreakout(by, SQUARE_OF_FOUR) },
  },
  {
    entry: 'dg1-4.7-3-breakout',
    how: `${HANDED_ON} (unrounded 76.6 kip)`,
    values: { phiNcbg: (by) => reduce(by, 109, CONCRETE_PHI.plain) },
  },
];

/** A shear lug has the second of the two edge formulas only, so the first does not bind; its φ is 0.65. */
const lugBasic = (by: Evaluator): number =>
  by.clause(EDGE_BASIC, Number.POSITIVE_INFINITY, INCH_POUND.edgeCap, INCH, INCH, 1, 4000 * PSI, 14.5 * INCH) / KIP;

const example5: readonly PublishedCase[] = [
  {
    entry: 'dg1-4.7-5-lug',
    how: 'the formula without diameter and length, as for a shear lug',
    values: {
      AVco: (by) => by.clause(EDGE_REFERENCE_AREA, 14.5 * INCH) / SQUARE_INCH,
      Vb: lugBasic,
    },
  },
  {
    entry: 'dg1-4.7-5-lug',
    how: `${HANDED_ON} (unrounded 40.1 and 26.1 kip); φ = 0.65 as the entry has it`,
    values: {
      Vcb: (by) => by.clause(EDGE_RESISTANCE, 31.4, 1210 / 946, 1, 1, 1, 1),
      phiVcb: (by) => reduce(by, 40.2, 0.65),
    },
  },
];

const LARGE: Group = {
  embedment: 24,
  strength: 5000,
  at: [
    [0, 0],
    [28, 0],
    [0, 6.5],
    [28, 6.5],
  ],
};

const groutShear = (by: Evaluator): number =>
  by.clause(STEEL_SHEAR, GROUT_PAD_FACTOR, 1.41 * SQUARE_INCH, ultimate(by, GRADE_36)) / KIP;

const largePryOut = (by: Evaluator): number => {
  const k_cp = by.clause(PRY_OUT_FACTOR, LARGE.embedment * INCH, INCH_POUND.pryOutDepth);
  return by.clause(PRY_OUT, k_cp, groupBreakout(by, LARGE));
};

const example7: readonly PublishedCase[] = [
  {
    entry: 'dg1-4.7-7',
    how: `${FROM_INPUTS}; on a grout pad`,
    values: {
      Nsa: (by) => steel(by, 1.41, GRADE_36),
      ...areasAndBasic(LARGE),
      Ncbg: (by) => groupBreakout(by, LARGE),
      phiNcbg: (by) => reduce(by, groupBreakout(by, LARGE), CONCRETE_PHI.plain),
      Np: (by) => pullOut(by, 3.12, LARGE.strength),
      Vsa: groutShear,
      phiVsa: (by) => reduce(by, groutShear(by), STEEL_PHI.ductile.shear),
      Vcpg: largePryOut,
      phiVcpg: (by) => reduce(by, largePryOut(by), PULL_OUT_PHI),
    },
  },
  {
    entry: 'dg1-4.7-7',
    how: `${HANDED_ON} (unrounded 61.3 and 87.4 kip); the sum, allowed 1.2, is 1.2 times our ratio (unrounded 1.14)`,
    values: {
      phiNsa: (by) => reduce(by, 81.8, STEEL_PHI.ductile.tension),
      phiNpn: (by) => reduce(by, 125, PULL_OUT_PHI),
      interaction: (by) => 1.2 * by.clause(INTERACTION, 138 / 239, 14.5 / 25.5),
    },
  },
];

const PAIR_OF_12: Group = {
  embedment: 12,
  strength: 4000,
  at: [
    [0, 0],
    [6, 0],
  ],
};

const example9: readonly PublishedCase[] = [
  {
    entry: 'dg1-4.7-9',
    how: FROM_INPUTS,
    values: {
      Nsa: (by) => steel(by, 0.606, GRADE_36),
      ...areasAndBasic(PAIR_OF_12),
      Np: (by) => pullOut(by, 1.5, PAIR_OF_12.strength),
      phiNpn: (by) => reduce(by, pullOut(by, 1.5, PAIR_OF_12.strength), PULL_OUT_PHI),
    },
  },
  {
    entry: 'dg1-4.7-9',
    how: `${HANDED_ON} (unrounded 26.4, 74.3 and 52.0 kip)`,
    values: {
      phiNsa: (by) => reduce(by, 35.1, STEEL_PHI.ductile.tension),
      Ncbg: (by) => breakout(by, 63.6, 1510, 1300),
      phiNcbg: (by) => reduce(by, 73.9, CONCRETE_PHI.plain),
    },
  },
];

const PAIR_OF_18: Group = {
  embedment: 18,
  strength: 4000,
  at: [
    [0, 0],
    [12, 0],
  ],
};

const example11: readonly PublishedCase[] = [
  { entry: 'dg1-4.7-11', how: FROM_INPUTS, values: areasAndBasic(PAIR_OF_18) },
  {
    entry: 'dg1-4.7-11',
    how: `${HANDED_ON} (unrounded 153 and 107 kip)`,
    values: {
      Ncbg: (by) => breakout(by, 125, 3560, 2920),
      phiNcbg: (by) => reduce(by, 152, CONCRETE_PHI.plain),
    },
  },
];

/** Diameter [in] and section of the thread [in²] of table 4-1. */
const RODS = [
  [0.625, 0.226],
  [0.75, 0.334],
  [0.875, 0.462],
  [1, 0.606],
  [1.125, 0.763],
  [1.25, 0.969],
  [1.5, 1.41],
  [1.75, 1.9],
  [2, 2.5],
] as const;

const GRADES = { gr36: GRADE_36, gr55: GRADE_55, gr105: GRADE_105 } as const;

const table1: PublishedCase = {
  entry: 'dg1-table-4-1',
  how: 'sections of the entry; grades 36, 55 and 105 (f_ya, f_uta 36, 58; 55, 75; 105, 125 ksi)',
  values: Object.fromEntries(
    RODS.flatMap(([d, section]) =>
      Object.entries(GRADES).map(([name, grade]) => [
        `phiRn d=${d} ${name}`,
        (by: Evaluator) => reduce(by, steel(by, section, grade), STEEL_PHI.ductile.tension),
      ]),
    ),
  ),
};

/** Diameter of the rod [in] and bearing area of its heavy hex head or nut [in²] of table 4-2. */
const NUTS = [
  [0.625, 0.671],
  [0.75, 0.911],
  [0.875, 1.19],
  [1, 1.5],
  [1.125, 1.85],
  [1.25, 2.24],
  [1.5, 3.12],
  [1.75, 4.14],
  [2, 5.32],
] as const;

const table2: PublishedCase = {
  entry: 'dg1-table-4-2',
  how: 'bearing areas of the entry, cracked concrete',
  values: Object.fromEntries(
    NUTS.flatMap(([d, bearing]) =>
      [3000, 4000, 5000].map((strength) => [
        `phiNpn d=${d} fc=${strength}`,
        (by: Evaluator) => reduce(by, pullOut(by, bearing, strength), PULL_OUT_PHI),
      ]),
    ),
  ),
};

export const CASES: readonly PublishedCase[] = [
  example3Steel,
  ...example3,
  ...example5,
  ...example7,
  ...example9,
  ...example11,
  table1,
  table2,
];
