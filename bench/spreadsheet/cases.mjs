/** The benchmark's cases: a group of four inserts that moves in its panel, in ten combinations, and the same for the engine. */

import { CONSTANTS } from './formulas.mjs';

const COMBINATIONS = 10;
const IDS = ['A', 'B', 'C', 'D'];

/**
 * Case number `index`: strength, place and every load differ from one to the next. All inserts are pulled, and sheared
 * within 40 degrees of one direction, which turns once round over the combinations.
 * @returns group: f_ck, x_0, y_0, s_x, s_y; loads: for each combination N, Vx, Vy of A, B, C, D [N]
 */
export function makeCase(index) {
  const vary = (low, high, step) => low + (high - low) * (0.5 + 0.5 * Math.sin(index * step + step));
  const group = [vary(30, 50, 1.7), vary(44, 50, 2.3), vary(95, 140, 0.9), vary(130, 170, 3.1), vary(110, 125, 1.3)];
  const loads = Array.from({ length: COMBINATIONS }, (_, k) =>
    IDS.flatMap((_, i) => {
      const swing = Math.sin(7 * i + 3 * k + index);
      const angle = (2 * Math.PI * (k + 0.37)) / COMBINATIONS + 0.35 * swing;
      const shear = 1500 * (1 + 0.4 * Math.cos(5 * i + k + index));
      return [4000 * (1 + 0.5 * swing), shear * Math.cos(angle), shear * Math.sin(angle)];
    }),
  );
  return { group, loads };
}

/** The same case as the engine takes it: a group and the actions of each combination. */
export function toEngine({ group: [f_ck, x_0, y_0, s_x, s_y], loads }) {
  const c = CONSTANTS;
  const part = (name) => ({
    name,
    area: c[`${name}_A`],
    ultimate: c[`${name}_fu`],
    yield: c[`${name}_fy`],
    resists: 'both',
  });
  return {
    group: {
      standard: 'EN 1992-4',
      concrete: { strength: f_ck, cracked: c.cracked === 1, lightweightFactor: 1 },
      member: {
        thickness: c.h,
        outline: [
          [0, 0],
          [c.width, 0],
          [c.width, c.height],
          [0, c.height],
        ],
        openings: [],
      },
      reinforcement: {
        denseSurface: c.dense === 1,
        edge: c.stirrups === 1 ? 'bar-and-stirrups' : 'none',
        supplementary: false,
        limitsCrackWidth: false,
        stirrupSpacing: c.stirrup_spacing,
      },
      insert: {
        embedment: c.h_ef,
        shaftDiameter: c.d,
        foot: { kind: 'diameter', diameter: c.d_h, thickness: c.t_h },
        steelParts: [part('bolt'), part('body')],
        elongation: c.A5,
        areaReduction: 35,
        qualification: { document: 'bench document', standard: 'EN 1992-4' },
        isFullHead: true,
        tested: [],
      },
      positions: [
        { id: 'A', x: x_0, y: y_0 },
        { id: 'B', x: x_0 + s_x, y: y_0 },
        { id: 'C', x: x_0, y: y_0 + s_y },
        { id: 'D', x: x_0 + s_x, y: y_0 + s_y },
      ],
      leverArm: null,
      isTorqued: false,
      hasMortarPad: false,
      splitting: { criticalEdge: c.c_cr_sp, minimumThickness: c.h_min },
      partialFactors: { concrete: c.gamma_Mc, steelTension: null, steelShear: null },
      pryOutFactor: null,
      hangers: [],
      hairpins: [],
      uncoveredUses: [],
    },
    combinations: loads.map((row) => ({
      inserts: IDS.map((_, i) => ({ N: row[3 * i], Vx: row[3 * i + 1], Vy: row[3 * i + 2] })),
      compression: null,
    })),
  };
}

/** The same case as inputs of the contract's calculation `anchorage`, one a combination. */
export function toContract({ group: [f_ck, x_0, y_0, s_x, s_y], loads }) {
  const c = CONSTANTS;
  const part = (name) => ({
    name,
    area_mm2: c[`${name}_A`],
    ultimate_MPa: c[`${name}_fu`],
    yield_MPa: c[`${name}_fy`],
  });
  return loads.map((row) => ({
    calc: 'anchorage',
    standard: 'EN 1992-4',
    concrete: { strength_MPa: f_ck, cracked: c.cracked === 1, lightweightFactor: 1 },
    member: {
      thickness_mm: c.h,
      outline_mm: [
        [0, 0],
        [c.width, 0],
        [c.width, c.height],
        [0, c.height],
      ],
      openings_mm: [],
    },
    reinforcement: {
      denseSurface: c.dense === 1,
      edge: c.stirrups === 1 ? 'bar-and-stirrups' : 'none',
      supplementary: false,
      limitsCrackWidth: false,
      stirrupSpacing_mm: c.stirrup_spacing,
    },
    insert: {
      embedment_mm: c.h_ef,
      shaftDiameter_mm: c.d,
      headDiameter_mm: c.d_h,
      headThickness_mm: c.t_h,
      steelParts: [part('bolt'), part('body')],
      elongation_percent: c.A5,
      areaReduction_percent: 35,
      qualification: { document: 'bench document', standard: 'EN 1992-4' },
    },
    positions: [
      { id: 'A', x_mm: x_0, y_mm: y_0 },
      { id: 'B', x_mm: x_0 + s_x, y_mm: y_0 },
      { id: 'C', x_mm: x_0, y_mm: y_0 + s_y },
      { id: 'D', x_mm: x_0 + s_x, y_mm: y_0 + s_y },
    ],
    splitting: { c_cr_mm: c.c_cr_sp, h_min_mm: c.h_min },
    partialFactors: { gamma_Mc: c.gamma_Mc },
    actions: IDS.map((id, i) => ({
      id,
      N_kN: row[3 * i] / 1000,
      Vx_kN: row[3 * i + 1] / 1000,
      Vy_kN: row[3 * i + 2] / 1000,
    })),
  }));
}
