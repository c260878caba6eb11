/** Uses that no rule of this engine covers; a group with one never passes. */
export const uncoveredUses = [
  'seismic',
  'fire',
  'fatigue',
  'lifting',
  'brace',
  'mixed types',
  'post-installed',
  'wet-set',
] as const;

export type UncoveredUse = (typeof uncoveredUses)[number];
