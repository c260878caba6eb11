import { type WrittenStep, writeNumber } from '../../engine/checks/write-step.ts';
import { sayChoices, showFormula, showSentence, showSymbol } from '../../say/step-words.ts';
import { layText } from './table.ts';

/** One step on one to three lines: symbol, formula, numbers, result with unit, clause; long lines go on further in. */
export function printStep(step: WrittenStep, indent: string, width: number): string {
  const unit = step.unit === '-' || step.unit === '' ? '' : ` ${step.unit}`;
  const symbol = showSymbol(step.symbol);
  const result = `${writeNumber(step.result)}${unit}`;
  const lines =
    step.clause === ''
      ? [`${symbol} = ${result}   (${showSentence(step.formula)})`]
      : [
          `${symbol} = ${showFormula(step.formula)}   [${step.clause}]`,
          ...(step.numbers === step.formula ? [] : [`  = ${sayChoices(step.numbers)}`]),
          `  = ${result}`,
        ];
  return lines.map((line) => layText(line, width, indent, `${indent}    `)).join('\n');
}
