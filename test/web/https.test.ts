import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startOffice } from '../../src/server/start-office.ts';
import { ROOT } from '../cli/run-command.ts';
import { launchChromium } from './harness/chromium.ts';

let folder: string;
let browser: Browser;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'onepour-https-'));
  // A name of the yard's network, not of the browser's own machine, and a certificate that the browser trusts.
  browser = await launchChromium(['--host-resolver-rules=MAP yard.test 127.0.0.1', '--ignore-certificate-errors']);
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

it('a tablet that has the yard from an https address opens it without the network and without the server', async () => {
  const pem = (name: string) => join(ROOT, 'test/server/certificate', name);
  const office = await startOffice({
    ...{ storePath: join(folder, 'office.db'), host: '127.0.0.1', port: 0, webFolder: join(ROOT, 'dist/web') },
    certificate: { certificate: pem('office.pem'), key: pem('office-key.pem') },
    prepare: async () => {},
    tell: () => {},
  });
  let isRunning = true;
  const stop = async () => {
    if (isRunning) await office.stop();
    isRunning = false;
  };
  const context = await browser.newContext({ viewport: { width: 1180, height: 820 } });
  try {
    const page = await context.newPage();
    const address = `https://yard.test:${office.port}/yard/`;
    await page.goto(address);
    expect(await page.evaluate(() => isSecureContext)).toBe(true);
    await page.evaluate(async () => (await navigator.serviceWorker.ready).scope);
    // A change by the page itself, past the guard.
    const saved = await page.evaluate(async () => {
      const body = JSON.stringify({ id: 'testsetter01', name: 'N. Nobody', roles: ['setter'], registration: null });
      return (await fetch('/api/people', { method: 'POST', body, headers: { 'content-type': 'application/json' } }))
        .status;
    });
    expect(saved).toBe(200);
    await page.close();
    await stop();
    await context.setOffline(true);
    const again = await context.newPage();
    await again.goto(address);
    await again.getByText('all sent').waitFor();
  } finally {
    await context.close();
    await stop();
  }
});
