import type { Step } from './result.ts';

/** A step as a person reads it: symbol = formula = the formula with its numbers = result, with its clause. */
export interface WrittenStep {
  readonly symbol: string;
  readonly unit: string;
  readonly formula: string;
  readonly numbers: string;
  readonly result: number;
  readonly clause: string;
}

/** Significant digits of a number put into a formula: enough to reach the printed result by hand. */
const DIGITS = 7;

/** A number as people copy it into a calculator: plain decimals, no exponent, no trailing zeros. */
export function writeNumber(value: number): string {
  if (!Number.isFinite(value)) return value > 0 ? 'infinity' : String(value);
  const rounded = Number(value.toPrecision(DIGITS));
  return rounded.toLocaleString('en-US', { useGrouping: false, maximumFractionDigits: 12 });
}

/** Puts numbers for symbols in a formula text; symbols are whole words. */
function putNumbers(formula: string, symbols: readonly string[], values: readonly number[]): string {
  return formula.replace(/[A-Za-z_][A-Za-z0-9_]*/g, (word) => {
    const index = symbols.indexOf(word);
    return index < 0 ? word : writeNumber(values[index]!);
  });
}

/** Writes one step of a calculation. */
export function writeStep(step: Step): WrittenStep {
  if (step.kind === 'quantity')
    return {
      symbol: step.symbol,
      unit: step.unit,
      formula: step.how,
      numbers: '',
      result: step.value,
      clause: '',
    };
  const { clause, args, value } = step;
  return {
    symbol: step.symbol,
    unit: clause.unit,
    formula: clause.formula,
    numbers: putNumbers(
      clause.formula,
      clause.args.map(({ symbol }) => symbol),
      args,
    ),
    result: value,
    clause: clause.reference,
  };
}
