import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { FastifyInstance, InjectOptions, LightMyRequestResponse } from 'fastify';
import { listNames } from '../../src/server/guard.ts';
import { makeServer } from '../../src/server/make-server.ts';
import { openSqliteStore } from '../../src/store/sqlite/open-sqlite.ts';
import type { Store } from '../../src/store/store.ts';

const SCREENS = {
  'index.html': '<!doctype html><title>office</title>',
  'answer.html': '<!doctype html><title>answer</title>',
  'sw.js': 'self.addEventListener("fetch", () => {});',
  'assets/office-1a2b3c4d.js': `const office = ${JSON.stringify('the office '.repeat(200))};`,
} as const;

export interface Served {
  readonly app: FastifyInstance;
  readonly store: Store;
  readonly folder: string;
  /** A call as a browser of this machine makes it. */
  readonly call: (
    method: 'GET' | 'POST' | 'DELETE',
    url: string,
    body?: unknown,
  ) => Promise<{ status: number; body: unknown }>;
  readonly inject: (options: InjectOptions) => Promise<LightMyRequestResponse>;
  /** What the server told whoever runs it. */
  readonly told: readonly string[];
  readonly end: () => Promise<void>;
}

/**
 * A server with a store of its own and small screens, not listening.
 * @param openStore where it is not the plain one
 */
export async function serve(openStore: (path: string) => Promise<Store> = openSqliteStore): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), 'onepour-server-'));
  const webFolder = join(folder, 'web');
  mkdirSync(join(webFolder, 'assets'), { recursive: true });
  for (const [name, text] of Object.entries(SCREENS)) {
    writeFileSync(join(webFolder, name), text);
    if (name.endsWith('.js')) writeFileSync(join(webFolder, `${name}.gz`), gzipSync(text));
  }
  writeFileSync(join(folder, 'secret.txt'), 'nobody reads this');
  const store = await openStore(join(folder, 'office.db'));
  const told: string[] = [];
  const app = await makeServer({
    store,
    webFolder,
    names: listNames('127.0.0.1'),
    certificate: null,
    tell: (line) => told.push(line),
  });
  const inject = (options: InjectOptions) =>
    app.inject({ ...options, headers: { host: '127.0.0.1:4180', ...options.headers } });
  return {
    app,
    store,
    folder,
    inject,
    told,
    call: async (method, url, body) => {
      const answer = await inject({ method, url, ...(body === undefined ? {} : { payload: body as object }) });
      return { status: answer.statusCode, body: answer.json() };
    },
    end: async () => {
      await app.close();
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
