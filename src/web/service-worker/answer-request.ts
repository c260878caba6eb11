import { nameCache, type Precache } from './precache.ts';

/** How long a page may take to come before the kept one is shown [ms]. */
const PATIENCE = 4000;

const YARD = '/yard.html';

/** What answers a request; null: the browser's own way, as if there were no worker. */
export function answerRequest(precache: Precache, origin: string, request: Request): Promise<Response> | null {
  const { origin: asked, pathname } = new URL(request.url);
  if (request.method !== 'GET' || asked !== origin || pathname.startsWith('/api/')) return null;
  if (request.mode === 'navigate') {
    const page = keptPage(pathname);
    return page === YARD ? takeKept(precache, request, page) : takeFresh(precache, request, page);
  }
  if (pathname.startsWith('/assets/')) return takeAsset(precache, request);
  return precache.first.includes(pathname) ? takeFresh(precache, request, pathname) : null;
}

/** The kept page that stands for an address: all but the answer and the yard are screens of the office. */
function keptPage(pathname: string): string {
  if (/^\/yard(\.html)?(\/|$)/.test(pathname)) return YARD;
  return /^\/answer(\.html)?(\/|$)/.test(pathname) ? '/answer.html' : '/index.html';
}

/** From the server; the kept one where that does not answer, fails or takes too long. */
async function takeFresh(precache: Precache, request: Request, kept: string): Promise<Response> {
  const fresh = fetch(request);
  const known = await (await caches.open(nameCache(precache))).match(kept);
  if (known === undefined) return fresh;
  const answer = await Promise.race([fresh.catch(() => null), wait(PATIENCE)]);
  return answer === null || answer.status >= 500 ? known : answer;
}

/**
 * The kept page at once, whether the server answers, is silent or is gone: in the yard a line that is there and carries nothing is the common case.
 * A page comes whole out of one build that way; a newer one is offered by the page and taken by a person.
 */
async function takeKept(precache: Precache, request: Request, kept: string): Promise<Response> {
  const known = await (await caches.open(nameCache(precache))).match(kept);
  return known ?? fetch(request);
}

/** Kept once it came: its address changes with its content. */
async function takeAsset(precache: Precache, request: Request): Promise<Response> {
  const cache = await caches.open(nameCache(precache));
  const known = await cache.match(request.url);
  if (known !== undefined) return known;
  const answer = await fetch(request);
  // Where there is no room it is not kept; the page that asked for it has it all the same.
  if (answer.ok) await cache.put(request.url, answer.clone()).catch(() => {});
  return answer;
}

function wait(milliseconds: number): Promise<null> {
  return new Promise((resolve) => setTimeout(() => resolve(null), milliseconds));
}
