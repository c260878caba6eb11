import { hostname, networkInterfaces } from 'node:os';
import type { FastifyInstance, FastifyRequest } from 'fastify';

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];
const EVERYWHERE = new Set(['0.0.0.0', '::']);

/** An address as it stands in a URL. */
function inUrl(address: string): string {
  return address.includes(':') ? `[${address}]` : address.toLowerCase();
}

/**
 * The names under which a server that listens at an address may be called.
 * @param certified names that its certificate is for
 */
export function listNames(host: string, certified: readonly string[] = []): ReadonlySet<string> {
  const names = new Set([...LOOPBACK, inUrl(host), ...certified]);
  if (!EVERYWHERE.has(host)) return names;
  for (const card of Object.values(networkInterfaces()))
    for (const { address } of card ?? []) names.add(inUrl(address));
  return names.add(hostname().toLowerCase());
}

/** Name and port of a header or an origin; null where it is neither. */
function readHost(text: string): { readonly name: string; readonly whole: string } | null {
  const match = /^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(:\d{1,5})?$/i.exec(text);
  return match?.[1] === undefined ? null : { name: match[1].toLowerCase(), whole: text.toLowerCase() };
}

/** Why a call is refused; null: it is not. */
function findRefusal({ method, headers }: FastifyRequest, names: ReadonlySet<string>, scheme: string): string | null {
  const host = readHost(headers.host ?? '');
  // A foreign name that leads to this machine would let a page of another site read the jobs.
  if (host === null || !names.has(host.name))
    return `the server does not answer to "${headers.host ?? ''}"; it is called ${[...names].join(', ')}`;
  if (method === 'GET' || method === 'HEAD') return null;
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none')
    return 'a page of another site may not change anything here';
  const { origin } = headers;
  if (origin !== undefined && origin.toLowerCase() !== `${scheme}://${host.whole}`)
    return `a page of ${origin} may not change anything here`;
  return null;
}

/** Refuses calls under a foreign name, and changes asked for by a page of another site, before anything else looks at them. */
export function guard(app: FastifyInstance, names: ReadonlySet<string>, scheme: 'http' | 'https'): void {
  app.addHook('onRequest', async (request, reply) => {
    const message = findRefusal(request, names, scheme);
    if (message !== null) await reply.code(403).send({ error: 'refused', message });
  });
}
