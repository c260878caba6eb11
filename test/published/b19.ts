// Source: Betongelementboken, volume B, chapter B19 (Norwegian precast concrete association), on the basis of
// CEN/TS 1992-4: uncracked concrete, cube strength, partial factor 1.5. Its coefficients differ from EN 1992-4, so they
// are handed to the clause functions as arguments; what is tested are the forms, areas and factors.

import type { Point } from '../../src/engine/geometry/point.ts';
import { prepareRegion } from '../../src/engine/geometry/region.ts';
import { groupArea } from '../../src/engine/geometry/sight.ts';
import {
  CONE_BASIC,
  CONE_EDGE_FACTOR,
  CONE_REDUCED_EMBEDMENT,
  CONE_REFERENCE_AREA,
  CONE_RESISTANCE,
  CONE_SHELL_FACTOR,
} from '../../src/engine/standards/en-1992-4-2018/concrete-cone.ts';
import { DESIGN_RESISTANCE } from '../../src/engine/standards/en-1992-4-2018/partial-factors.ts';
import { BEARING_AREA, PULL_OUT } from '../../src/engine/standards/en-1992-4-2018/pull-out.ts';
import { STEEL_SHEAR } from '../../src/engine/standards/en-1992-4-2018/steel-shear.ts';
import { STEEL_TENSION } from '../../src/engine/standards/en-1992-4-2018/steel-tension.ts';
import type { Evaluator, PublishedCase } from './published.ts';

/** Cone coefficient for uncracked concrete and cube strength. */
const K_CONE = 11.9;
const GAMMA_C = 1.5;
/** Cube strength of grade B35 [MPa]. */
const B35_CUBE = 45;
/** Pull-out coefficient 6.0 · 1.4 for uncracked concrete and cube strength. */
const K_PULL_OUT = 8.4;
/** Steel as EN 1993-1-8 takes it, which the handbook follows: strength 0.9 f_u over 1.25. */
const STEEL_SHARE = 0.9;
const GAMMA_STEEL = 1.25;
const KILO = 1000;
const AREA = 'exact area of the projected squares';

const designCone = (by: Evaluator, cube: number, embedment: number): number =>
  by.clause(DESIGN_RESISTANCE, by.clause(CONE_BASIC, K_CONE, cube, embedment), GAMMA_C);

/** Area of squares of half side `half` round the inserts, cut by a rectangular panel [mm²]. */
function areaInRectangle(by: Evaluator, size: Point, inserts: readonly Point[], half: number): number {
  const [width, height] = size;
  const outline: readonly Point[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  const xs = inserts.map(([x]) => x);
  const ys = inserts.map(([, y]) => y);
  return by.part(AREA, groupArea(prepareRegion(outline, []), xs, ys, half, 1, 0));
}

const coneFactors: PublishedCase = {
  entry: 'b19-k1',
  how: 'cone coefficient 11.9 (cube strength), h_ef = 1 mm, over 1.5',
  values: {
    'k1 B30': (by) => designCone(by, 37, 1),
    'k1 B35': (by) => designCone(by, 45, 1),
    'k1 B45': (by) => designCone(by, 55, 1),
    'k1 B55': (by) => designCone(by, 67, 1),
  },
};

const cone195: PublishedCase = {
  entry: 'b19-n0-195',
  how: 'cone coefficient 11.9 (cube strength), over 1.5',
  values: { 'N0_Rd,c': (by) => designCone(by, B35_CUBE, 195) / KILO },
};

const cone154: PublishedCase = {
  entry: 'b19-n0-154',
  how: 'cone coefficient 11.9 (cube strength), over 1.5',
  values: { 'N0_Rd,c': (by) => designCone(by, B35_CUBE, 154) / KILO },
};

const steel: PublishedCase = {
  entry: 'b19-steel-m24',
  how: 'strength 0.9 f_u over 1.25 (EN 1993-1-8, as the entry notes); shear half of tension (our reading, the entry does not say)',
  values: {
    'N_Rd,s': (by) =>
      by.clause(DESIGN_RESISTANCE, by.clause(STEEL_TENSION, 353, STEEL_SHARE * 400), GAMMA_STEEL) / KILO,
    'V_Rd,s': (by) =>
      by.clause(DESIGN_RESISTANCE, by.clause(STEEL_SHEAR, 1, 0.5, 353, STEEL_SHARE * 400), GAMMA_STEEL) / KILO,
  },
};

/** hef 400 mm in the middle of the top of a wall 300 mm thick, far from its ends: two edges at 150 mm, c_cr = 600 mm. */
const thinWall: PublishedCase = {
  entry: 'b19-thin-wall',
  how: 'cone coefficient 11.9 (cube strength), over 1.5; edges at 150 mm on two sides, the wall 4 m long',
  values: {
    'N_Rd,c cone': (by) => {
      const area = areaInRectangle(by, [4000, 300], [[2000, 150]], 600);
      const areaRatio = area / by.clause(CONE_REFERENCE_AREA, 600);
      const edge = by.clause(CONE_EDGE_FACTOR, 150, 600);
      const shell = by.clause(CONE_SHELL_FACTOR, 400);
      const basic = by.clause(CONE_BASIC, K_CONE, B35_CUBE, 400);
      const resistance = by.clause(CONE_RESISTANCE, basic, areaRatio, edge, shell, 1, 1, 1);
      return by.clause(DESIGN_RESISTANCE, resistance, GAMMA_C) / KILO;
    },
  },
  widened: {
    // ψ_s,N = 0.775 written as 0.78 raises the result by 0.005/0.775 of 82.5 kN.
    'N_Rd,c cone': { by: (0.005 / 0.775) * 82.5, because: 'the source seems to write ψ_s,N = 0.775 as 0.78' },
  },
};

/** Area of a hexagon 36 mm across flats [mm²]: √3/2 · 36². */
const HEXAGON = (Math.sqrt(3) / 2) * 36 ** 2;
/** The disc of the same area as the hexagon [mm]. */
const HEXAGON_AS_DISC = Math.sqrt((4 / Math.PI) * HEXAGON);

const foot: PublishedCase = {
  entry: 'b19-foot',
  how: 'hexagon 36 mm across flats taken as the disc of equal area; pull-out coefficient 8.4 (cube strength), over 1.5',
  values: {
    A_h: (by) => by.clause(BEARING_AREA, HEXAGON_AS_DISC, Number.POSITIVE_INFINITY, 24),
    N_Rd: (by) => {
      const area = by.clause(BEARING_AREA, HEXAGON_AS_DISC, Number.POSITIVE_INFINITY, 24);
      return by.clause(DESIGN_RESISTANCE, by.clause(PULL_OUT, K_PULL_OUT, area, B35_CUBE), GAMMA_C) / KILO;
    },
  },
};

/** Four inserts, spacing 80 mm and 100 mm, edges at 120, 80 and 110, 100 mm: a block of 280 mm by 310 mm. */
const FOUR_EDGES: readonly Point[] = [
  [120, 110],
  [200, 110],
  [120, 210],
  [200, 210],
];

/** h'_ef from c_max 120 mm and s_max 100 mm; the full embedment (200 mm, c_cr 300 mm) cancels [mm]. */
const reduceEmbedment = (by: Evaluator): number => by.clause(CONE_REDUCED_EMBEDMENT, 120, 100, 300, 200);

const fourEdges: PublishedCase = {
  entry: 'b19-19.3.2',
  how: 'c_max 120 mm, s_max 100 mm; the full embedment is not given and cancels; taken as 200 mm',
  values: {
    "h'ef": (by) => reduceEmbedment(by),
    'A0_c,N': (by) => by.clause(CONE_REFERENCE_AREA, 1.5 * reduceEmbedment(by)),
    'A_c,N': (by) => areaInRectangle(by, [280, 310], FOUR_EDGES, 1.5 * reduceEmbedment(by)),
    'psi_s,N': (by) => by.clause(CONE_EDGE_FACTOR, 80, 1.5 * reduceEmbedment(by)),
    'psi_re,N': (by) => by.clause(CONE_SHELL_FACTOR, reduceEmbedment(by)),
  },
};

export const CASES: readonly PublishedCase[] = [coneFactors, cone195, cone154, steel, thinWall, foot, fourEdges];
