import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { bringIn } from './bring-in.ts';
import type { OfficeServer } from './office-server.ts';

export interface Precache {
  readonly version: string;
  readonly first: readonly string[];
  readonly later: readonly string[];
}

/** The list in the service worker as it is served. */
export function readPrecache(server: OfficeServer): Precache {
  const script = readFileSync(join(server.web, 'sw.js'), 'utf8');
  const found = /\{version:"(\w+)",first:(\[[^\]]*\]),later:(\[[^\]]*\])\}/.exec(script);
  if (found === null) throw new Error('sw.js has no list of what it keeps');
  const [, version, first, later] = found;
  return { version: version!, first: JSON.parse(first!), later: JSON.parse(later!) };
}

/** Waits until everything on the list is kept in the browser of a page. */
export async function waitUntilKept(page: Page, server: OfficeServer): Promise<void> {
  await bringIn(page, 'src/web/parts/register-service-worker.ts', 'keeping');
  const { version, first, later } = readPrecache(server);
  await page.evaluate(
    async ({ name, addresses }) => {
      // Put there by `bringIn`.
      const { keeping } = globalThis as unknown as {
        keeping: typeof import('../../../src/web/parts/register-service-worker.ts');
      };
      if (!(await keeping.registerServiceWorker())) throw new Error('this browser has no service worker');
      const cache = await caches.open(name);
      const isKept = async () => (await Promise.all(addresses.map((one) => cache.match(one)))).every((one) => one);
      while (!(await isKept())) await new Promise((resolve) => setTimeout(resolve, 20));
    },
    { name: `onepour-${version}`, addresses: [...first, ...later] },
  );
}

/** Has the server give another text for a file of the build while `act` runs. */
export async function withChanged(
  server: OfficeServer,
  name: string,
  change: (text: string) => string,
  act: () => Promise<void>,
): Promise<void> {
  const file = join(server.web, name);
  const text = readFileSync(file, 'utf8');
  const write = (content: string) => {
    writeFileSync(file, content);
    writeFileSync(`${file}.gz`, gzipSync(content));
  };
  try {
    write(change(text));
    await act();
  } finally {
    write(text);
  }
}
