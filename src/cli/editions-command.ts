import { describeCoverage } from '../engine/checks/coverage.ts';
import { EXIT } from './exit-codes.ts';
import { findPageWidth } from './page-width.ts';
import { printCoverage } from './print/coverage.ts';

/**
 * Shows what each edition computes.
 * @returns the exit code
 */
export function runEditions(options: { readonly json?: boolean }): number {
  process.stdout.write(
    options.json ? `${JSON.stringify(describeCoverage(), null, 2)}\n` : printCoverage(findPageWidth()),
  );
  return EXIT.pass;
}
