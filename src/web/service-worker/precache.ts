/** What the worker keeps: addresses, and a version that changes with the content of any of them. */
export interface Precache {
  readonly version: string;
  /** Kept before the worker takes over: each page with what it shows first. */
  readonly first: readonly string[];
  /** Kept in the background once a page is shown: what writes a sheet. */
  readonly later: readonly string[];
}

const PREFIX = 'onepour-';

/** The cache of one version. */
export function nameCache({ version }: Precache): string {
  return `${PREFIX}${version}`;
}

/** Fetches everything that is needed to open a page. Rejects when one is missing: the worker before it then stays. */
export async function keepFirst(precache: Precache): Promise<void> {
  const cache = await caches.open(nameCache(precache));
  await cache.addAll(precache.first.map(askAgain));
}

/** Fetches what is not kept yet, one after another. */
export async function keepLater(precache: Precache): Promise<void> {
  const cache = await caches.open(nameCache(precache));
  for (const address of precache.later) {
    if ((await cache.match(address)) === undefined) await cache.add(address);
  }
}

/** Forgets what other versions kept. */
export async function forgetOthers(precache: Precache): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== nameCache(precache));
  await Promise.all(old.map((name) => caches.delete(name)));
}

/** Addresses with a hash stay the same for ever; pages must be the ones of this version. */
function askAgain(address: string): Request {
  return new Request(address, { cache: address.startsWith('/assets/') ? 'default' : 'reload' });
}
