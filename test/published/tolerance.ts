// How far a computed number may lie from a published one: half a unit of the last digit that its source prints.

import type { PublishedValue } from './entry.ts';

/** Rounding in floating point, where a source prints an exact number. */
const EXACT = 1e-9;
/** Tables that are taken over as they stand; where the source tells no rounding, the number as it is written. */
const AS_WRITTEN: ReadonlySet<string> = new Set(['as printed', 'as quoted', 'double precision', '']);
/** Values that a test of others asserts with many figures are compared at three: so the entries' own word on them. */
const FIGURES_OF_OTHERS = 3;
/** Values derived from a printed formula are written with four figures. */
const FIGURES_DERIVED = 4;

/**
 * Largest difference allowed by the digits as printed, in the value's unit.
 *
 * @example 145 kN, "whole kN": 0.5. 48.3, "3 significant figures": 0.05. 8.9, "1 decimal": 0.05.
 * @throws Error when the rounding is none that is known here
 */
export function toleranceOf({ name, value, rounding, unit }: PublishedValue): number {
  // Percentiles of a distribution are irrational: no page writes them whole, whatever it says of its rounding.
  if (rounding === 'as printed' && unit.startsWith('sigma')) return halfUnitAsWritten(value);
  if (/^exact\b/.test(rounding) || AS_WRITTEN.has(rounding)) return EXACT * Math.abs(value);
  if (rounding === 'as in the test, 5 or more figures') return halfUnitOfFigure(value, FIGURES_OF_OTHERS);
  if (rounding === 'derived') return halfUnitOfFigure(value, FIGURES_DERIVED);
  if (/^whole \w+$/.test(rounding)) return 0.5;
  // Strengths to 0.1 MPa and moduli to 1 GPa in one table.
  if (rounding === '0.1 MPa, 1 GPa') return name.startsWith('E') ? 0.5 : 0.05;
  const figures = /^(\d+) (significant )?figures( as printed)?$/.exec(rounding);
  if (figures !== null) return halfUnitOfFigure(value, Number(figures[1]));
  const decimals = /^(\d+) decimals?$/.exec(rounding);
  if (decimals !== null) return 0.5 * 10 ** -Number(decimals[1]);
  // Coefficients that an edition rounds as it likes are compared at the digits that it writes.
  if (/^code rounding\b/.test(rounding)) return halfUnitAsWritten(value);
  // A printed step: "0.001", "1", or with a unit or a remark in brackets.
  const step = /^((?:0\.0*)?1|0\.5)( [a-z]+| \(.*\))?$/.exec(rounding);
  if (step !== null) return 0.5 * Number(step[1]);
  throw new Error(`value "${name}": no tolerance is known for the rounding "${rounding}"`);
}

/** Half a unit of the last digit that the number is written with: 10 → 0.5, 0.66 → 0.005. */
function halfUnitAsWritten(value: number): number {
  return 0.5 * 10 ** -(String(value).split('.')[1]?.length ?? 0);
}

/** Half a unit of the given significant figure of a number. */
function halfUnitOfFigure(value: number, figures: number): number {
  // The exponent as the number is written, so that 999.6 and 1000 are not mixed up by a logarithm.
  const exponent = Number(Math.abs(value).toExponential().split('e')[1]);
  return 0.5 * 10 ** (exponent - figures + 1);
}
