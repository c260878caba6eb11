import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { compile } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { MATERIAL_CLAUSES } from '../../../src/engine/material/clauses.ts';

const FOLDER = new URL('../../../src/engine/material/', import.meta.url);
const sources = readdirSync(FOLDER).map((name) => readFileSync(new URL(name, FOLDER), 'utf8'));

/** The examples of a function's comment, "Example: a, b → result; a, b → result.", thousands set apart by a space. */
function findExamples(name: string): { args: number[]; printed: number; tolerance: number }[] {
  const before = sources.find((text) => text.includes(`function ${name}(`))!.split(`function ${name}(`)[0]!;
  const comment = before.slice(before.lastIndexOf('/**'), before.lastIndexOf('*/')).replace(/\n \*(?!\/)/g, '');
  const text = /Example: (.*)\.\s*$/.exec(comment)![1]!;
  const read = (part: string) => part.split(',').map((number) => Number(number.replaceAll(' ', '')));
  return text.split(';').map((one) => {
    const [left, right] = one.split('→') as [string, string];
    return { args: read(left), printed: read(right)[0]!, tolerance: 0.5 * 10 ** -(right.split('.')[1]?.length ?? 0) };
  });
}

const named = MATERIAL_CLAUSES.map((clause) => ({ name: `${clause.fn.name}, ${clause.reference}`, clause }));

describe('records of formulas on materials', () => {
  it('stand for one function each', () => {
    expect(new Set(MATERIAL_CLAUSES.map(({ fn }) => fn)).size).toBe(MATERIAL_CLAUSES.length);
  });

  it.each(named)('$name: the formula text gives what the function gives', ({ clause }) => {
    const formula = compile(clause.formula);
    const draws = clause.args.map(({ range: [min, max] }) => fc.double({ min, max, noNaN: true }));
    fc.assert(
      fc.property(fc.tuple(...draws), (args) => {
        const scope = Object.fromEntries(clause.args.map(({ symbol }, i) => [symbol, args[i]!]));
        const [fromText, fromFunction] = [Number(formula.evaluate(scope)), clause.fn(...args)];
        expect(Number.isFinite(fromFunction)).toBe(true);
        // The two differ by the rounding of a few operations only.
        expect(Math.abs(fromText - fromFunction)).toBeLessThanOrEqual(1e-12 * Math.abs(fromFunction));
      }),
      { numRuns: 200 },
    );
  });

  it.each(named)('$name: as many arguments as the function, each in the formula', ({ clause }) => {
    expect(clause.args.length).toBe(clause.fn.length);
    const words = clause.formula.match(/[A-Za-z_]\w*/g) ?? [];
    for (const { symbol } of clause.args) expect(words).toContain(symbol);
  });

  // Expected values: printed in each function's comment, worked with a calculator; held to half a unit of the last digit.
  it.each(named)('$name: the example of its comment is right', ({ clause }) => {
    for (const { args, printed, tolerance } of findExamples(clause.fn.name)) {
      expect(args.length).toBe(clause.fn.length);
      expect(Math.abs(clause.fn(...args) - printed)).toBeLessThanOrEqual(tolerance);
    }
  });
});
