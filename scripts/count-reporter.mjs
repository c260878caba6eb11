// Vitest reporter: ends the run with the plain line "N passed, N failed" that scripts and people read.
// A file that fails to load or holds no test, a failed hook and an error outside any test each count as one failure.
// Where COUNTS_FILE names a file, the numbers go there instead and the caller writes the line.

import { writeFileSync } from 'node:fs';

export default class CountReporter {
  onTestRunEnd(modules, unhandledErrors) {
    let passed = 0;
    // A run that found no test file at all is no success either.
    let failed = unhandledErrors.length + (modules.length === 0 ? 1 : 0);
    for (const module of modules) {
      if (module.errors().length > 0) failed += 1;
      for (const suite of module.children.allSuites()) if (suite.errors().length > 0) failed += 1;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed += 1;
        if (state === 'failed') failed += 1;
      }
    }
    const file = process.env.COUNTS_FILE;
    if (file) writeFileSync(file, JSON.stringify({ passed, failed }));
    else process.once('exit', () => process.stdout.write(`${passed} passed, ${failed} failed\n`));
  }
}
