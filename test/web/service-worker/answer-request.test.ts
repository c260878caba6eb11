import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { answerRequest } from '../../../src/web/service-worker/answer-request.ts';
import { forgetOthers, keepFirst, keepLater, type Precache } from '../../../src/web/service-worker/precache.ts';
import { MemoryCaches, SITE } from './memory-caches.ts';

const LIST: Precache = {
  version: 'v2',
  first: ['/index.html', '/answer.html', '/yard.html', '/icon.svg', '/assets/office-1.js'],
  later: ['/assets/font-1.ttf', '/assets/font-2.ttf'],
};

/** What the server does at the moment, and what it was asked for. */
const server = { isUp: true, status: 200, delay: 0, asked: [] as string[] };
let caches: MemoryCaches;

async function serve(request: Request | string): Promise<Response> {
  const { pathname } = new URL(typeof request === 'string' ? request : request.url, SITE);
  server.asked.push(pathname);
  if (server.delay > 0) await new Promise((resolve) => setTimeout(resolve, server.delay));
  if (!server.isUp) throw new TypeError('no connection');
  return new Response(`${server.status === 200 ? 'served' : server.status} ${pathname}`, { status: server.status });
}

beforeEach(() => {
  Object.assign(server, { isUp: true, status: 200, delay: 0, asked: [] });
  caches = new MemoryCaches(serve);
  vi.stubGlobal('caches', caches);
  vi.stubGlobal('fetch', serve);
  // In a worker an address without a host is of its own site.
  vi.stubGlobal(
    'Request',
    class extends Request {
      constructor(address: string, init?: RequestInit) {
        super(new URL(address, SITE), init);
      }
    },
  );
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** A request as a browser makes it; node makes none for a page. */
function ask(path: string, mode: 'navigate' | 'cors' = 'cors', method = 'GET'): Promise<Response> | null {
  const request = { url: new URL(path, SITE).href, mode, method } as Request;
  return answerRequest(LIST, SITE, request);
}

const read = async (answer: Promise<Response> | null) => (await answer!).text();

/** Keeps everything as it is now, so that "kept" and "served" can be told apart afterwards. */
async function keepAll(): Promise<void> {
  await keepFirst(LIST);
  for (const { kept } of caches.all.values()) for (const path of kept.keys()) kept.set(path, `kept ${path}`);
}

it('leaves alone what belongs to a job, what writes, and other sites', async () => {
  await keepAll();
  expect(ask('/api/jobs')).toBeNull();
  expect(ask('/api/openapi.json', 'navigate')).toBeNull();
  expect(ask('/index.html', 'cors', 'POST')).toBeNull();
  expect(ask('http://127.0.0.1:9999/index.html')).toBeNull();
  expect(ask('/licences/packages.txt')).toBeNull();
});

it('shows the page that the server gives, and the kept one when it gives none', async () => {
  await keepAll();
  expect(await read(ask('/', 'navigate'))).toBe('served /');
  server.status = 404;
  expect(await read(ask('/jobs/x', 'navigate'))).toBe('404 /jobs/x');
  server.status = 502;
  expect(await read(ask('/', 'navigate'))).toBe('kept /index.html');
  server.isUp = false;
  for (const [path, page] of [
    ['/', '/index.html'],
    ['/jobs/x/panels/P01', '/index.html'],
    ['/answers', '/index.html'],
    ['/answer', '/answer.html'],
    ['/answer/', '/answer.html'],
    ['/answer.html', '/answer.html'],
  ] as const)
    expect(await read(ask(path, 'navigate')), path).toBe(`kept ${page}`);
  expect(await read(ask('/icon.svg'))).toBe('kept /icon.svg');
});

it('shows the kept page when the server takes too long', async () => {
  await keepAll();
  vi.useFakeTimers();
  server.delay = 10_000;
  const answer = read(ask('/answer', 'navigate'));
  await vi.advanceTimersByTimeAsync(5_000);
  expect(await Promise.race([answer, 'still waiting'])).toBe('kept /answer.html');
  await vi.advanceTimersByTimeAsync(6_000);
});

it('shows the kept page of the yard at once, whatever the server does', async () => {
  await keepAll();
  server.asked = [];
  for (const path of ['/yard', '/yard/', '/yard/piece/0123/walk/1', '/yard.html'])
    expect(await read(ask(path, 'navigate')), path).toBe('kept /yard.html');
  expect(server.asked).toEqual([]);
  expect(await read(ask('/yardstick', 'navigate'))).toBe('served /yardstick');
  caches.all.get('onepour-v2')!.kept.delete('/yard.html');
  expect(await read(ask('/yard/pours', 'navigate'))).toBe('served /yard/pours');
});

it('waits for a page of which none is kept', async () => {
  server.isUp = false;
  await expect(ask('/', 'navigate')).rejects.toThrow('no connection');
});

it('asks once for what has a hash in its name', async () => {
  await keepAll();
  server.asked = [];
  expect(await read(ask('/assets/office-1.js'))).toBe('kept /assets/office-1.js');
  expect(await read(ask('/assets/screen-9.js'))).toBe('served /assets/screen-9.js');
  expect(await read(ask('/assets/screen-9.js'))).toBe('served /assets/screen-9.js');
  expect(server.asked).toEqual(['/assets/screen-9.js']);
  server.status = 404;
  expect((await ask('/assets/gone-1.js')!).status).toBe(404);
  server.status = 200;
  expect(await read(ask('/assets/gone-1.js'))).toBe('served /assets/gone-1.js');
});

it('gives what the server answers also where there is no room to keep it', async () => {
  const cache = await caches.open('onepour-v2');
  vi.spyOn(cache, 'put').mockRejectedValue(new DOMException('full', 'QuotaExceededError'));
  vi.spyOn(caches, 'open').mockResolvedValue(cache);
  expect(await read(ask('/assets/office-2.js'))).toBe('served /assets/office-2.js');
});

it('keeps all that comes first, or says that it cannot', async () => {
  await keepFirst(LIST);
  expect([...caches.all.get('onepour-v2')!.kept.keys()]).toEqual(LIST.first);
  server.status = 404;
  await expect(keepFirst(LIST)).rejects.toThrow('404');
});

it('fetches what comes later once', async () => {
  server.isUp = false;
  await expect(keepLater(LIST)).rejects.toThrow('no connection');
  server.isUp = true;
  await keepLater(LIST);
  server.asked = [];
  await keepLater(LIST);
  expect(server.asked).toEqual([]);
  expect([...caches.all.get('onepour-v2')!.kept.keys()]).toEqual(LIST.later);
});

it('forgets its older caches and no other', async () => {
  for (const name of ['onepour-v1', 'onepour-v2', 'somebody-else']) await caches.open(name);
  await forgetOthers(LIST);
  expect(await caches.keys()).toEqual(['onepour-v2', 'somebody-else']);
});
