/** The group of the contract's example for calculations about one, in a panel of 3 m by 2.5 m; each test adds its positions and loads. */
export const EXAMPLE_GROUP = {
  standard: 'EN 1992-4',
  concrete: { strength_MPa: 32, cracked: true, lightweightFactor: 1 },
  member: {
    thickness_mm: 180,
    outline_mm: [
      [0, 0],
      [3000, 0],
      [3000, 2500],
      [0, 2500],
    ],
    openings_mm: [],
  },
  reinforcement: { denseSurface: false, edge: 'none', supplementary: false, limitsCrackWidth: true },
  insert: {
    embedment_mm: 96,
    shaftDiameter_mm: 24,
    headDiameter_mm: 44,
    stressArea_mm2: 157,
    ultimate_MPa: 800,
    yield_MPa: 640,
    elongation_percent: 14,
    areaReduction_percent: 35,
  },
};
