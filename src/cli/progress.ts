/** Before this much time nothing is shown: short work needs no progress [ms]. */
const QUIET = 400;

/**
 * Progress of long work on standard error: one line that is rewritten on a terminal, a line now and then elsewhere. Standard
 * output stays clean for results.
 */
export class Progress {
  readonly #what: string;
  readonly #started = performance.now();
  #shown = this.#started;
  #hasLine = false;

  constructor(what: string) {
    this.#what = what;
  }

  /** Tells how far the work is; most calls print nothing. */
  tell(done: number, total: number): void {
    const now = performance.now();
    const pause = process.stderr.isTTY ? 100 : 2000;
    if (now - this.#started < QUIET || now - this.#shown < pause) return;
    this.#shown = now;
    const text = `${this.#what}: ${done} of ${total} (${Math.floor((100 * done) / total)} %)`;
    if (process.stderr.isTTY) {
      process.stderr.write(`\r${text}`);
      this.#hasLine = true;
    } else process.stderr.write(`${text}\n`);
  }

  /** Clears the line. */
  end(): void {
    if (this.#hasLine) process.stderr.write('\r\x1b[K');
  }
}
