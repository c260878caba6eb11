import { hostname } from 'node:os';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listNames } from '../../src/server/guard.ts';
import { sampleJob } from '../job/sample-job.ts';
import { type Served, serve } from './serve.ts';

describe('the guard', () => {
  let served: Served;
  beforeAll(async () => {
    served = await serve();
  });
  afterAll(() => served.end());
  const ask = async (headers: Record<string, string>, method: 'GET' | 'POST' = 'GET', url = '/api/jobs') => {
    const payload = method === 'POST' ? { payload: { file: sampleJob() } } : {};
    return served.inject({ method, url, headers, ...payload });
  };

  it('answers under the names of this machine alone', async () => {
    for (const host of ['127.0.0.1:4180', 'localhost:4180', 'LOCALHOST', '[::1]:4180'])
      expect((await ask({ host })).statusCode).toBe(200);
    for (const host of [
      'office.example',
      'localhost.example:4180',
      '127.0.0.1.example',
      '?',
      'localhost:4180@office.example',
      '10.0.0.7',
    ]) {
      const answer = await ask({ host });
      expect(answer.statusCode).toBe(403);
      expect(answer.json()).toMatchObject({ error: 'refused' });
    }
    // Screens too: a page that was read under a foreign name could ask for all the rest.
    expect((await ask({ host: 'office.example', accept: 'text/html' }, 'GET', '/')).statusCode).toBe(403);
  });

  it('takes no change from a page of another site', async () => {
    for (const headers of [
      { origin: 'http://office.example' },
      { origin: 'null' },
      { origin: 'https://127.0.0.1:4180' },
      { origin: 'http://127.0.0.1:9999' },
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
      { origin: 'http://127.0.0.1:4180', 'sec-fetch-site': 'cross-site' },
    ] as Record<string, string>[])
      expect((await ask(headers, 'POST')).statusCode).toBe(403);
    expect(
      (
        await served.inject({
          method: 'DELETE',
          url: '/api/jobs/nnnnnnnnnnnn',
          headers: { origin: 'http://a.example' },
        })
      ).statusCode,
    ).toBe(403);
    expect((await served.store.listJobs({ removed: false })).length).toBe(0);
  });

  it('takes changes from its own pages and from a program', async () => {
    expect((await ask({}, 'POST')).statusCode).toBe(201);
    const own = { origin: 'http://127.0.0.1:4180', 'sec-fetch-site': 'same-origin' };
    expect((await ask(own, 'POST')).statusCode).toBe(201);
  });

  it('lets a page of another site read nothing', async () => {
    const { headers } = await ask({ origin: 'http://office.example' });
    expect(headers['access-control-allow-origin']).toBeUndefined();
    expect(headers['cross-origin-resource-policy']).toBe('same-origin');
  });

  it('knows the names of an address that it listens at', () => {
    expect([...listNames('127.0.0.1')]).toEqual(['localhost', '127.0.0.1', '[::1]']);
    expect(listNames('Office.Lan').has('office.lan')).toBe(true);
    expect(listNames('fe80::1').has('[fe80::1]')).toBe(true);
    expect(listNames('0.0.0.0').has(hostname().toLowerCase())).toBe(true);
    expect(listNames('127.0.0.1').has(hostname().toLowerCase())).toBe(false);
  });
});
