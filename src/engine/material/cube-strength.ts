/** Pairs of a class of normal-weight concrete: cylinder and cube strength [MPa]. EN 206, Table 12 (C8/10 to C100/115), recalled. */
const CLASS_PAIRS: readonly (readonly [cylinder: number, cube: number])[] = [
  [0, 0],
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

/**
 * Strength of cylinders of a concrete of which cubes of 150 mm were tested [MPa], by the pairs of the strength classes, straight between two of them; stronger cubes
 * than those of the highest class count as that.
 *
 * Source: EN 206, Table 12, recalled; to use the pairs for single results is common practice.
 * @param cube [MPa]. Example: 37 → 30; 41 → 32.5.
 */
export function cylinderFromCube(cube: number): number {
  const next = CLASS_PAIRS.findIndex(([, of]) => of >= cube);
  if (next === -1) return CLASS_PAIRS.at(-1)![0];
  const [highCylinder, highCube] = CLASS_PAIRS[next]!;
  if (next === 0) return highCylinder;
  const [lowCylinder, lowCube] = CLASS_PAIRS[next - 1]!;
  return lowCylinder + ((highCylinder - lowCylinder) * (cube - lowCube)) / (highCube - lowCube);
}
