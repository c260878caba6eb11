// Inch-pound units in N, mm and MPa, for sources that print them: 1 lb = 4.4482216152605 N and 1 in = 25.4 mm exactly.

export const POUND = 4.4482216152605;
export const KIP = 1000 * POUND;
export const INCH = 25.4;
export const SQUARE_INCH = INCH ** 2;
/** One pound for each square inch [MPa]. */
export const PSI = 0.006894757293168361;
export const KSI = 1000 * PSI;
