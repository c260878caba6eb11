import { STRENGTH_CLASSES } from './strength-classes.ts';

/** From no strength on, so that a concrete below the lowest class has its pair too. */
const CLASS_PAIRS = [[0, 0], ...STRENGTH_CLASSES] as const;

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
