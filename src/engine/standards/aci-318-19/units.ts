import { type AciCoefficients, INCH_POUND, SI } from './coefficients.ts';

/** One of the two editions of ACI 318-19: the same clauses with other coefficients. */
export interface AciUnits {
  readonly name: 'ACI 318-19' | 'ACI 318M-19';
  readonly coefficients: AciCoefficients;
  /** Each coefficient as its edition prints it, for the steps. */
  readonly printed: Readonly<Record<'breakout' | 'deepBreakout' | 'blowOut' | 'edge' | 'edgeCap', string>>;
}

const converted = (printed: number) => `${printed} in lb, in and psi, converted to N, mm and MPa`;

export const INCH_POUND_UNITS: AciUnits = {
  name: 'ACI 318-19',
  coefficients: INCH_POUND,
  printed: {
    breakout: converted(24),
    deepBreakout: converted(16),
    blowOut: converted(160),
    edge: converted(7),
    edgeCap: converted(9),
  },
};

const rounded = 'as the SI edition prints it';

export const SI_UNITS: AciUnits = {
  name: 'ACI 318M-19',
  coefficients: SI,
  printed: { breakout: rounded, deepBreakout: rounded, blowOut: rounded, edge: rounded, edgeCap: rounded },
};
