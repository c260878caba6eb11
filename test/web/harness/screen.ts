import { mkdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { checkAccess } from './axe.ts';
import { Faults } from './faults.ts';

/** Sizes at which every screen is looked at [px]. */
export const VIEWPORTS = {
  desk: { width: 1440, height: 900 },
  tablet: { width: 1180, height: 820 },
  phone: { width: 390, height: 844 },
} as const;

export interface ScreenOptions {
  readonly viewport?: keyof typeof VIEWPORTS;
  readonly theme?: 'light' | 'dark';
  /** Anything else that playwright takes for a new context. */
  readonly context?: BrowserContextOptions;
}

/** A file that the page gave to the person. */
export interface Download {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** One tab, with everything that goes wrong in it on record. */
export class Screen {
  readonly page: Page;
  readonly faults = new Faults();
  readonly #address: string;

  private constructor(page: Page, address: string) {
    this.page = page;
    this.#address = address;
    this.faults.watch(page);
  }

  /** A tab of a person of its own: nothing is shared with other tabs. */
  static async open(browser: Browser, address: string, path: string, options: ScreenOptions = {}): Promise<Screen> {
    const viewport = options.viewport ?? 'desk';
    const context = await browser.newContext({
      viewport: VIEWPORTS[viewport],
      hasTouch: viewport === 'phone',
      isMobile: viewport === 'phone',
      colorScheme: options.theme ?? 'light',
      locale: 'en-GB',
      timezoneId: 'UTC',
      ...options.context,
    });
    await context.addInitScript(watchLongTasks);
    return Screen.#show(context, address, path);
  }

  static async #show(context: BrowserContext, address: string, path: string): Promise<Screen> {
    const screen = new Screen(await context.newPage(), address);
    await screen.goto(path);
    return screen;
  }

  get context(): BrowserContext {
    return this.page.context();
  }

  /** Another tab of the same person. */
  openBeside(path: string): Promise<Screen> {
    return Screen.#show(this.context, this.#address, path);
  }

  async goto(path: string): Promise<void> {
    await this.page.goto(new URL(path, this.#address).href);
  }

  /** Fails with what axe finds serious on the page as it is now. */
  checkAccess(): Promise<void> {
    return checkAccess(this.page);
  }

  /** Writes a picture into the folder that `ONEPOUR_SHOTS` names; without it, nothing. */
  async shoot(name: string, fullPage = false): Promise<void> {
    const folder = process.env.ONEPOUR_SHOTS;
    if (folder === undefined || folder === '') return;
    const path = join(resolve(folder), `${name}.png`);
    mkdirSync(dirname(path), { recursive: true });
    await this.page.screenshot({ path, fullPage });
  }

  /** The file that comes of what `act` does. */
  async readDownload(act: () => Promise<unknown>): Promise<Download> {
    const [download] = await Promise.all([this.page.waitForEvent('download'), act()]);
    return { name: download.suggestedFilename(), bytes: new Uint8Array(readFileSync(await download.path())) };
  }

  /** Slows the page's processor down so many times; 1: as it is. Workers of the page keep their speed. */
  async slowDown(times: number): Promise<void> {
    const session = await this.context.newCDPSession(this.page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: times });
  }

  /** Tasks of the page's main thread over 50 ms since it was loaded, or since this was asked last [ms]. */
  takeLongTasks(): Promise<number[]> {
    return this.page.evaluate(() => {
      // Put there by `watchLongTasks` before the page's own scripts.
      const { longTasks } = globalThis as unknown as { longTasks: number[] };
      return longTasks.splice(0);
    });
  }
}

/** Runs in the page, before its scripts. */
function watchLongTasks(): void {
  const longTasks: number[] = [];
  Object.assign(globalThis, { longTasks });
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longTasks.push(duration);
  }).observe({ type: 'longtask', buffered: true });
}
