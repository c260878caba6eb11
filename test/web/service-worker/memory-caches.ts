/** Caches of a browser in memory: what the service worker uses of them. */
class MemoryCache {
  readonly kept = new Map<string, string>();
  readonly #fetch: (request: Request) => Promise<Response>;

  constructor(fetch: (request: Request) => Promise<Response>) {
    this.#fetch = fetch;
  }

  async match(request: string): Promise<Response | undefined> {
    const body = this.kept.get(new URL(request, SITE).pathname);
    return body === undefined ? undefined : new Response(body);
  }

  async put(request: string, answer: Response): Promise<void> {
    this.kept.set(new URL(request, SITE).pathname, await answer.text());
  }

  async add(address: string | Request): Promise<void> {
    const request = typeof address === 'string' ? new Request(new URL(address, SITE)) : address;
    const answer = await this.#fetch(request);
    if (!answer.ok) throw new TypeError(`${request.url}: ${answer.status}`);
    await this.put(request.url, answer);
  }

  async addAll(requests: readonly Request[]): Promise<void> {
    await Promise.all(requests.map((request) => this.add(request)));
  }
}

export const SITE = 'http://127.0.0.1:4180';

export class MemoryCaches {
  readonly all = new Map<string, MemoryCache>();
  readonly #fetch: (request: Request) => Promise<Response>;

  constructor(fetch: (request: Request) => Promise<Response>) {
    this.#fetch = fetch;
  }

  async open(name: string): Promise<MemoryCache> {
    const cache = this.all.get(name) ?? new MemoryCache(this.#fetch);
    this.all.set(name, cache);
    return cache;
  }

  async keys(): Promise<string[]> {
    return [...this.all.keys()];
  }

  async delete(name: string): Promise<boolean> {
    return this.all.delete(name);
  }
}
