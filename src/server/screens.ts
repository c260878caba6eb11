import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply } from 'fastify';

const YEAR_s = 31_536_000;

/** Files under /assets/ have a hash in their name and never change; all else is asked for again each time. */
function setCaching(reply: FastifyReply, isHashed: boolean): void {
  reply.header('cache-control', isHashed ? `public, max-age=${YEAR_s}, immutable` : 'no-cache');
}

/** Whether a browser asks for a page, not for a file of one. */
function wantsPage(method: string, accept: string | undefined): boolean {
  return (method === 'GET' || method === 'HEAD') && (accept ?? '').includes('text/html');
}

function sayNotFound(reply: FastifyReply, message: string): FastifyReply {
  return reply.code(404).send({ error: 'not-found', message });
}

/** The page of an address that is no file: the answer, the yard, else the office. */
function findPage(path: string): string {
  if (/^\/answer\/?$/.test(path)) return 'answer.html';
  return /^\/yard(\/|$)/.test(path) ? 'yard.html' : 'index.html';
}

/** The screens: files of a folder, pages of the office at any address that is no file, the yard below /yard, the ten-minute answer at /answer. */
export async function addScreens(app: FastifyInstance, folder: string): Promise<void> {
  const isBuilt = existsSync(join(folder, 'index.html'));
  await app.register(fastifyStatic, {
    root: folder,
    // The addresses are those of the files there at the start: nothing outside the folder can be asked for.
    wildcard: false,
    preCompressed: true,
    cacheControl: false,
    index: ['index.html'],
    setHeaders: (reply, path) =>
      setCaching(reply, path.slice(folder.length).replaceAll('\\', '/').startsWith('/assets/')),
  });
  app.setNotFoundHandler((request, reply) => {
    const [path = ''] = request.url.split('?');
    if (path.startsWith('/api/') || path.startsWith('/assets/') || !wantsPage(request.method, request.headers.accept))
      return sayNotFound(reply, `there is no ${request.method} ${path}`);
    if (!isBuilt) return sayNotFound(reply, `the screens are not built; "npm run build" builds them`);
    return reply.sendFile(findPage(path));
  });
}
