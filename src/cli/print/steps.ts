import { type WrittenStep, writeNumber } from '../../engine/checks/write-step.ts';

const GREEK: Readonly<Record<string, string>> = { psi: 'ψ', gamma: 'γ', alpha: 'α', eta: 'η', ratio: 'ratio' };

/** A symbol as people write it: ψ for psi, a comma between index parts. `psi_s_N` → `ψ_s,N`. */
export function showSymbol(symbol: string): string {
  const [head = symbol, ...index] = symbol.split('_');
  const name = GREEK[head] ?? head;
  return index.length === 0 ? name : `${name}_${index.join(',')}`;
}

function showFormula(formula: string): string {
  return formula.replace(/[A-Za-z_][A-Za-z0-9_]*/g, (word) => showSymbol(word));
}

/** One step on one to three lines: symbol, formula, numbers, result with unit, clause. */
export function printStep(step: WrittenStep, indent: string): string {
  const unit = step.unit === '-' ? '' : ` ${step.unit}`;
  const symbol = showSymbol(step.symbol);
  const result = `${writeNumber(step.result)}${unit}`;
  if (step.clause === '') return `${indent}${symbol} = ${result}   (${step.formula})`;
  const lines = [`${symbol} = ${showFormula(step.formula)}   [${step.clause}]`];
  if (step.numbers !== step.formula) lines.push(`  = ${step.numbers}`);
  lines.push(`  = ${result}`);
  return lines.map((line) => indent + line).join('\n');
}
