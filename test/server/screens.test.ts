import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listNames } from '../../src/server/guard.ts';
import { makeServer } from '../../src/server/make-server.ts';
import { type Served, serve } from './serve.ts';

const PAGE = { accept: 'text/html,application/xhtml+xml' };

describe('the screens', () => {
  let served: Served;
  beforeAll(async () => {
    served = await serve();
  });
  afterAll(() => served.end());
  const get = (url: string, headers: Record<string, string> = {}) => served.inject({ method: 'GET', url, headers });

  it('are pages of the office at any address that is no file', async () => {
    for (const url of ['/', '/jobs/k3v7', '/jobs/k3v7/panels/P03?view=form', '/index.html']) {
      const answer = await get(url, PAGE);
      expect(answer.statusCode).toBe(200);
      expect(answer.headers['content-type']).toContain('text/html');
      expect(answer.headers['cache-control']).toBe('no-cache');
      expect(answer.body).toContain('<title>office</title>');
    }
  });

  it('have the ten-minute answer at an address of its own', async () => {
    for (const url of ['/answer', '/answer/', '/answer?thread=M16'])
      expect((await get(url, PAGE)).body).toContain('<title>answer</title>');
    expect((await get('/answers', PAGE)).body).toContain('<title>office</title>');
  });

  it('are kept by a browser where their name has a hash, and asked for again where not', async () => {
    const script = await get('/assets/office-1a2b3c4d.js');
    expect(script.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(script.headers['content-type']).toContain('javascript');
    expect((await get('/sw.js')).headers['cache-control']).toBe('no-cache');
    expect((await get('/')).headers['cache-control']).toBe('no-cache');
  });

  it('travel compressed', async () => {
    const plain = await get('/assets/office-1a2b3c4d.js');
    const packed = await get('/assets/office-1a2b3c4d.js', { 'accept-encoding': 'gzip, deflate, br' });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(packed.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(packed.rawPayload.length).toBeLessThan(plain.rawPayload.length);
    expect((await get('/sw.js', { 'accept-encoding': 'gzip' })).headers['cache-control']).toBe('no-cache');
  });

  it('have no page where a file or an answer is asked for', async () => {
    for (const [url, headers] of [
      ['/assets/office-00000000.js', PAGE],
      ['/api/nothing', PAGE],
      ['/picture.png', { accept: 'image/png' }],
      ['/jobs/k3v7', { accept: '*/*' }],
    ] as const) {
      const answer = await get(url, headers);
      expect(answer.statusCode).toBe(404);
      expect(answer.json()).toMatchObject({ error: 'not-found', message: `there is no GET ${url}` });
    }
    const post = await served.inject({ method: 'POST', url: '/jobs', headers: PAGE, payload: {} });
    expect(post.statusCode).toBe(404);
  });

  it('are missed with a word where they were not built', async () => {
    const app = await makeServer({
      store: served.store,
      webFolder: join(served.folder, 'not-there'),
      names: listNames('127.0.0.1'),
      certificate: null,
      tell: () => {},
    });
    const answer = await app.inject({ url: '/', headers: { ...PAGE, host: 'localhost' } });
    expect(answer.statusCode).toBe(404);
    expect(answer.json()).toMatchObject({ message: 'the screens are not built; "npm run build" builds them' });
    expect((await app.inject({ url: '/api/health', headers: { host: 'localhost' } })).statusCode).toBe(200);
    await app.close();
  });

  it('never reach a file outside their folder', async () => {
    for (const url of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/..%2fsecret.txt',
      '/assets/../../secret.txt',
      '/assets/..%5c..%5csecret.txt',
      '/%2e%2e%2foffice.db',
      '//secret.txt',
    ])
      for (const headers of [PAGE, { accept: '*/*' }]) {
        const { body } = await get(url, headers);
        expect(body).not.toContain('nobody reads this');
        expect(body).not.toContain('SQLite');
      }
  });

  it('take scripts and styles from this server alone, and stand in no frame', async () => {
    for (const url of ['/', '/assets/office-1a2b3c4d.js', '/api/jobs', '/api/nothing']) {
      const { headers } = await get(url);
      const policy = String(headers['content-security-policy']).split(';');
      expect(policy).toEqual(
        expect.arrayContaining([
          "default-src 'self'",
          "script-src 'self'",
          "style-src 'self'",
          "worker-src 'self'",
          "connect-src 'self'",
          "img-src 'self' data: blob:",
          "object-src 'none'",
          "frame-ancestors 'none'",
        ]),
      );
      expect(policy.join()).not.toContain('unsafe');
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['strict-transport-security']).toBeUndefined();
    }
  });
});
