import { readFileSync } from 'node:fs';
import { CalcError } from '../calc/calc-error.ts';
import { calculate, describeCalculation, listCalculations } from '../calc/calculation.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import { findPageWidth } from './page-width.ts';
import { printCalculation } from './print/calculation.ts';
import { layPairs } from './print/table.ts';

/** Options of `onepour calc`. */
export interface CalcOptions {
  readonly list?: boolean;
  readonly schema?: string;
  readonly json?: boolean;
  readonly steps?: boolean;
}

function readInput(path: string): unknown {
  let text: string;
  try {
    text = readFileSync(path === '-' ? 0 : path, 'utf8');
  } catch {
    throw new UsageError(`${path}: cannot be read, expected a file with JSON, or "-" for standard input`);
  }
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    const reason = error instanceof Error ? error.message.split('\n')[0] : 'not JSON';
    throw new UsageError(
      `${path === '-' ? 'standard input' : path}: is not JSON (${reason}), expected one JSON object`,
    );
  }
}

/**
 * Runs calculations of the contract. Results go to standard output as JSON, one line a file when there are several.
 * @returns the exit code
 * @throws UsageError with one line that names file and key
 */
export function runCalc(files: readonly string[], options: CalcOptions): number {
  if (options.list) {
    const known = listCalculations().map(({ name, gives }) => [name, gives] as const);
    process.stdout.write(`${layPairs(known, findPageWidth())}\n`);
    return EXIT.pass;
  }
  try {
    if (options.schema !== undefined) {
      process.stdout.write(`${JSON.stringify(describeCalculation(options.schema), null, 2)}\n`);
      return EXIT.pass;
    }
    if (files.length === 0)
      throw new UsageError('calc: no file given, expected FILE.json or "-" (see onepour calc --help)');
    // All answers first: a fault in the last file prints no half of the results.
    const results = files.map((path) => {
      const given = readInput(path);
      try {
        return calculate(given, options.steps ?? false);
      } catch (error) {
        if (error instanceof CalcError && files.length > 1) throw new UsageError(`${path}: ${error.message}`);
        throw error;
      }
    });
    for (const result of results) {
      if (options.steps && !options.json) process.stdout.write(`${printCalculation(result, findPageWidth())}\n`);
      else process.stdout.write(`${JSON.stringify(result, null, files.length > 1 ? 0 : 2)}\n`);
    }
    return EXIT.pass;
  } catch (error) {
    if (error instanceof CalcError) throw new UsageError(error.message);
    throw error;
  }
}
