import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { launchChromium } from './harness/chromium.ts';
import { OfficeServer } from './harness/office-server.ts';
import { Screen, type ScreenOptions } from './harness/screen.ts';

/** A real server and a real browser for the tests of one file. */
export interface Office {
  readonly server: OfficeServer;
  readonly browser: Browser;
  /** Opens a path such as `/` for a person of its own. */
  open(path: string, options?: ScreenOptions): Promise<Screen>;
  /** Opens the same path for the same person once more: a second tab. */
  openBeside(screen: Screen, path: string): Promise<Screen>;
}

/**
 * Starts both before the tests of a file and ends them after. After each test every page must be without a fault (`screen.faults.expect` takes those
 * off that belong to the case); then the pages are closed. What the server stores stays for the next test.
 *
 * @param hasDemo whether the empty store gets the demo job
 */
export function useOffice({ hasDemo = true }: { readonly hasDemo?: boolean } = {}): Office {
  const running: { server?: OfficeServer; browser?: Browser } = {};
  const screens: Screen[] = [];
  const take = <T>(part: T | undefined): T => {
    if (part === undefined) throw new Error('the office is not started; expected inside a test');
    return part;
  };
  const keep = async (opened: Promise<Screen>) => {
    const screen = await opened;
    screens.push(screen);
    return screen;
  };

  beforeAll(async () => {
    running.server = await OfficeServer.start(hasDemo);
    running.browser = await launchChromium();
  }, 60_000);

  afterEach(async () => {
    const opened = screens.splice(0);
    for (const screen of opened) await screen.context.close();
    for (const { faults } of opened) faults.checkNone();
  });

  afterAll(async () => {
    await running.browser?.close();
    await running.server?.remove();
  });

  return {
    get server() {
      return take(running.server);
    },
    get browser() {
      return take(running.browser);
    },
    open: (path, options) => keep(Screen.open(take(running.browser), take(running.server).address, path, options)),
    openBeside: (screen, path) => keep(screen.openBeside(path)),
  };
}
