/**
 * Strength classes of normal-weight concrete: cylinder strength, and the cube strength that goes into their name [MPa]. EN 206, Table 12 (C8/10 to C100/115),
 * recalled; EN 1992-1-1, Table 3.1 has those up to C90/105.
 */
export const STRENGTH_CLASSES: readonly (readonly [cylinder: number, cube: number])[] = [
  [8, 10],
  [12, 15],
  [16, 20],
  [20, 25],
  [25, 30],
  [30, 37],
  [35, 45],
  [40, 50],
  [45, 55],
  [50, 60],
  [55, 67],
  [60, 75],
  [70, 85],
  [80, 95],
  [90, 105],
  [100, 115],
];
