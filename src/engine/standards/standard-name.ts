/** Documents that the engine can check against, in the order in which they are listed. */
export const standardNames = ['EN 1992-4', 'AS 5216', 'ACI 318-19', 'ACI 318M-19'] as const;

export type StandardName = (typeof standardNames)[number];
