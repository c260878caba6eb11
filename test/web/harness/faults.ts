import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** What goes wrong on a page without anyone seeing it: errors on its console, errors that nobody caught, requests without a good answer. */
export class Faults {
  #found: string[] = [];

  /** Records from now on. What a content security policy forbids, Chromium writes to the console. */
  watch(page: Page): void {
    page.on('console', (message) => {
      if (message.type() === 'error') this.#found.push(`console: ${message.text()} (${message.location().url})`);
    });
    page.on('pageerror', (error) => this.#found.push(`error: ${error.stack ?? error.message}`));
    page.on('requestfailed', (request) => {
      const why = request.failure()?.errorText ?? 'failed';
      // Asked for and then left by the page itself.
      if (why !== 'net::ERR_ABORTED') this.#found.push(`request: ${request.method()} ${request.url()}: ${why}`);
    });
    page.on('response', (response) => {
      if (response.status() >= 400)
        this.#found.push(`answer: ${response.request().method()} ${response.url()}: ${response.status()}`);
    });
  }

  /** Takes faults that belong to the case off the list. Fails when there is none: then the case is not the one meant. */
  expect(pattern: RegExp): void {
    const left = this.#found.filter((fault) => !pattern.test(fault));
    expect(left.length, `no fault like ${pattern} among:\n${this.#found.join('\n')}`).toBeLessThan(this.#found.length);
    this.#found = left;
  }

  /** Takes them off where there are any: a server that is down may be asked or not. */
  allow(pattern: RegExp): void {
    this.#found = this.#found.filter((fault) => !pattern.test(fault));
  }

  /** Fails when something is on the list. */
  checkNone(): void {
    expect(this.#found, `faults of the page:\n${this.#found.join('\n')}`).toEqual([]);
  }
}
