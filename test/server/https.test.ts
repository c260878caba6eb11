import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readCertificate, tellCertificate } from '../../src/server/certificate.ts';
import { listNames } from '../../src/server/guard.ts';
import { type Office, startOffice } from '../../src/server/start-office.ts';
import { ROOT } from '../cli/run-command.ts';
import { sampleJob } from '../job/sample-job.ts';

/** A pair for tests, valid until 2046, and a key that belongs to nothing. */
const pem = (name: string) => join(ROOT, 'test/server/certificate', name);
const PAIR = { certificate: pem('office.pem'), key: pem('office-key.pem') };

interface Answered {
  readonly status: number;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly body: string;
}

describe('the office over HTTPS', () => {
  let folder: string;
  let office: Office;
  const told: string[] = [];
  const ask = (method: string, path: string, headers: Record<string, string>, body?: string): Promise<Answered> =>
    new Promise((resolve, reject) => {
      const call = request(
        {
          ...{ host: '127.0.0.1', port: office.port, method, path },
          ...{ servername: 'yard.test', ca: readFileSync(PAIR.certificate), agent: false },
          headers: { host: `yard.test:${office.port}`, ...headers },
        },
        (answer) => {
          let text = '';
          answer.setEncoding('utf8').on('data', (chunk: string) => {
            text += chunk;
          });
          answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body: text }));
        },
      );
      call.on('error', reject).end(body);
    });
  const create = (headers: Record<string, string>) =>
    ask('POST', '/api/jobs', { 'content-type': 'application/json', ...headers }, JSON.stringify({ file: sampleJob() }));
  const start = (certificate: typeof PAIR, name: string) =>
    startOffice({
      ...{ storePath: join(folder, name), host: '127.0.0.1', port: 0, certificate, webFolder: folder },
      prepare: async () => {},
      tell: (line) => told.push(line),
    });

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'onepour-https-'));
    office = await start(PAIR, 'office.db');
  });
  afterAll(async () => {
    await office.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  it('answers under the names of the certificate, and says what they are', async () => {
    expect(office.address).toBe(`https://127.0.0.1:${office.port}/`);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(
      /^the certificate is for localhost, yard\.test, [a-z0-9-]+\.wild\.test, 127\.0\.0\.1: call/,
    );
    const answer = await ask('GET', '/api/health', {});
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.body)).toMatchObject({ ok: true });
    expect(answer.headers['strict-transport-security']).toBeUndefined();
    expect((await ask('GET', '/api/health', { host: 'other.test' })).status).toBe(403);
  });

  it('takes changes from its own pages alone', async () => {
    const origin = `https://yard.test:${office.port}`;
    expect((await create({ origin, 'sec-fetch-site': 'same-origin' })).status).toBe(201);
    for (const other of [`http://yard.test:${office.port}`, 'https://yard.test', 'https://other.test', 'null'])
      expect((await create({ origin: other })).status).toBe(403);
  });

  it('says nothing in the clear', async () => {
    const heard = await new Promise<string>((resolve) => {
      const socket = connect(office.port, '127.0.0.1');
      let text = '';
      socket.setEncoding('utf8').on('data', (chunk: string) => {
        text += chunk;
      });
      socket.on('error', () => resolve(text)).on('close', () => resolve(text));
      socket.write('GET /api/jobs HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n');
    });
    expect(heard).not.toContain('"jobs"');
  });

  it('says in one line what is wrong with a pair, and leaves the store alone', async () => {
    const locked = join(folder, 'locked.pem');
    const type = 'ENCRYPTED PRIVATE KEY';
    writeFileSync(locked, `-----BEGIN ${type}-----\nMIIBvTBXBgkqhkiG9w0BBQ0w\n-----END ${type}-----\n`);
    const { certificate, key } = PAIR;
    for (const [pair, message] of [
      [{ certificate: join(folder, 'none.pem'), key }, /^the certificate .*none\.pem cannot be read: ENOENT/],
      [{ certificate, key: join(folder, 'none.pem') }, /^the key .*none\.pem cannot be read: ENOENT/],
      [{ certificate: folder, key }, /cannot be read: EISDIR/],
      [{ certificate: key, key }, /office-key\.pem is no certificate: expected PEM/],
      [{ certificate, key: certificate }, /office\.pem is no private key: expected PEM/],
      [{ certificate, key: locked }, /locked\.pem is (locked by a passphrase|no private key)/],
      [
        { certificate, key: pem('other-key.pem') },
        /^the key .*other-key\.pem does not belong to the certificate .*office\.pem$/,
      ],
    ] as const) {
      const fault = await start(pair, 'untouched.db').catch((error: unknown) => error);
      expect(fault).toMatchObject({ name: 'OfficeError', message: expect.stringMatching(message) });
      expect((fault as Error).message).not.toContain('\n');
    }
    await expect(async () => readFileSync(join(folder, 'untouched.db'))).rejects.toThrow('ENOENT');
  });
});

describe('a certificate', () => {
  it('for all names of a domain is for the name of this machine in it', () => {
    const { names } = readCertificate(PAIR, 'Office-7.Firm.lan');
    expect(names).toEqual(['localhost', 'yard.test', 'office-7.wild.test', '127.0.0.1']);
    expect(listNames('127.0.0.1', names).has('office-7.wild.test')).toBe(true);
    expect(listNames('127.0.0.1', names).has('other.wild.test')).toBe(false);
  });

  it('that ran out or soon will is told', () => {
    const read = readCertificate(PAIR);
    const tell = (day: string) => tellCertificate(read, new Date(`${day}T12:00:00Z`)).slice(1);
    expect(tell('2027-01-01')).toEqual([]);
    expect(tell('2046-11-20')).toEqual(['the certificate runs out on 2046-11-25: have it renewed']);
    expect(tell('2046-11-30')).toEqual(['the certificate ran out on 2046-11-25: browsers refuse it']);
    expect(tellCertificate({ ...read, names: [] }, new Date('2027-01-01'))[0]).toMatch(/for no name: browsers refuse/);
  });
});
