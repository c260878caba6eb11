// Vitest reporter: ends the run with the plain line "N passed, N failed" that scripts and people read.

export default class CountReporter {
  onTestRunEnd(modules, unhandledErrors) {
    let passed = 0;
    let failed = unhandledErrors.length;
    let skipped = 0;
    for (const module of modules) {
      if (module.state() === 'failed' && module.children.size === 0) failed += 1;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed += 1;
        else if (state === 'failed') failed += 1;
        else skipped += 1;
      }
    }
    this.line = `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
    process.once('exit', () => process.stdout.write(`${this.line}\n`));
  }
}
