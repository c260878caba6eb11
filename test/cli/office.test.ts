import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeCanonical } from '../../src/job/canonical.ts';
import type { JobFile } from '../../src/job/documents/job-file.ts';
import { hashText } from '../../src/job/fingerprint.ts';
import { readJobDocument } from '../../src/job/read-job-document.ts';
import { type OfficeProcess, startOffice } from '../server/office-process.ts';
import { onepour, ROOT } from './run-command.ts';

function readDemo(name: string): JobFile {
  const read = readJobDocument(JSON.parse(readFileSync(join(ROOT, 'demo', name), 'utf8')));
  if (!read.ok) throw new Error(`${name} is wrong`);
  return read.file;
}

/** Takes a port of the loopback address, as another program would. */
function takePort(port: number): Promise<Server | null> {
  return new Promise((resolve) => {
    const server = createServer();
    // Taken by someone else already: just as good.
    server.once('error', () => resolve(null));
    server.listen(port, '127.0.0.1', () => resolve(server));
  });
}

describe('onepour office', () => {
  let folder: string;
  let store: string;
  let running: OfficeProcess[];
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'onepour-office-'));
    store = join(folder, 'data', 'office.db');
    running = [];
  });
  afterEach(async () => {
    for (const office of running) if (office.child.exitCode === null) await office.end('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  });
  const start = async (...args: string[]) => {
    const office = await startOffice(args);
    running.push(office);
    return office;
  };
  const get = async (office: OfficeProcess, path: string): Promise<unknown> =>
    (await fetch(`${office.address}${path}`)).json();
  const listJobs = async (office: OfficeProcess, question = '') => {
    // The contract of the call; what is in it is looked at below.
    const { jobs } = (await get(office, `api/jobs${question}`)) as { jobs: readonly { id: string }[] };
    return jobs;
  };

  it('says where it is, where the data lie and how to stop it, and stops so', async () => {
    const office = await start('--store', store, '--port', '0');
    expect(office.printed()).toBe(`Onepour office: ${office.address}  jobs are kept in ${store}  stop with Ctrl+C\n`);
    expect(new URL(office.address).hostname).toBe('127.0.0.1');
    expect(await listJobs(office)).toEqual([]);
    expect(await office.end('SIGINT')).toBe(0);
    expect(readdirSync(join(folder, 'data'))).toEqual(['office.db']);
  });

  it('serves the screens that were built', async () => {
    const office = await start('--store', store, '--port', '0');
    const page = await fetch(`${office.address}jobs`, { headers: { accept: 'text/html' } });
    expect(page.status).toBe(200);
    expect(await page.text()).toBe(readFileSync(join(ROOT, 'dist/web/index.html'), 'utf8'));
  });

  it('has the demo job with two issued revisions in an empty store, once', async () => {
    const office = await start('--store', store, '--port', '0', '--demo');
    const jobs = await listJobs(office);
    expect(jobs).toMatchObject([{ number: 'SQ-17', revision: { letter: 'B' }, issued: 'B' }]);
    const job = `api/jobs/${jobs[0]?.id}`;
    const later = readDemo('job.json');
    expect(await get(office, job)).toMatchObject({ file: later });
    for (const [letter, name] of [
      ['A', 'job-rev-a.json'],
      ['B', 'job.json'],
    ] as const) {
      const file = readDemo(name);
      const fingerprint = hashText(writeCanonical(file));
      expect(await get(office, `${job}/revisions/${letter}`)).toMatchObject({
        ...file.job.revision,
        fingerprint,
        file,
      });
    }
    const { people, inForce } = (await get(office, `${job}/yard`)) as {
      people: readonly { name: string; roles: readonly string[] }[];
      inForce: unknown;
    };
    expect(inForce).toMatchObject({ letter: 'B', file: later });
    expect(new Set(people.flatMap(({ roles }) => roles))).toEqual(
      new Set(['setter', 'checker', 'foreman', 'qa', 'design engineer', 'installer']),
    );
    for (const { name } of people) expect(name).toContain('invented');
    await fetch(`${office.address}${job}`, { method: 'DELETE' });
    expect(await office.end('SIGTERM')).toBe(0);

    const again = await start('--store', store, '--port', '0', '--demo');
    expect(await listJobs(again)).toEqual([]);
    expect(await listJobs(again, '?removed=yes')).toHaveLength(1);
  });

  it('leaves an empty store empty without the demo', async () => {
    const office = await start('--store', store, '--port', '0');
    expect(await listJobs(office)).toEqual([]);
  });

  it('takes the next port when its own is taken and none was asked for', async () => {
    const taken = await takePort(4180);
    try {
      const office = await start('--store', store);
      const port = Number(new URL(office.address).port);
      expect(port).toBeGreaterThan(4180);
      expect(office.printed()).toContain(`onepour office: port 4180 is taken, so this is port ${port}\n`);
    } finally {
      taken?.close();
    }
  });

  it('does not take another port than the one that was asked for', async () => {
    const first = await start('--store', store, '--port', '0');
    const { port } = new URL(first.address);
    const { status, stdout, stderr } = onepour(['office', '--store', join(folder, 'other.db'), '--port', port]);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toBe(
      `onepour office: port ${port} of 127.0.0.1 is taken; name another with --port, or leave --port out\n`,
    );
  });

  it('is refused a store that another process has', async () => {
    await start('--store', store, '--port', '0');
    const { status, stdout, stderr } = onepour(['office', '--store', store, '--port', '0']);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toBe(
      `onepour office: ${store} is in use: another onepour office has it open. Use that one, stop it, or name another file\n`,
    );
  });

  it('warns when others can reach it', async () => {
    const office = await start('--store', store, '--port', '0', '--host', '0.0.0.0');
    expect(office.printed()).toContain(
      'there are no accounts: whoever reaches this address can read and change every job',
    );
  });

  it('says its https address, and wants certificate and key', async () => {
    const pem = (name: string) => join(ROOT, 'test/server/certificate', name);
    const pair = ['--certificate', pem('office.pem'), '--key', pem('office-key.pem')];
    const office = await start('--store', store, '--port', '0', ...pair);
    expect(office.printed()).toMatch(/\nOnepour office: https:\/\/127\.0\.0\.1:\d+\/ {2}jobs are kept in /);
    expect(await office.end('SIGTERM')).toBe(0);
    for (const [args, line] of [
      [pair.slice(0, 2), '--certificate without --key: for HTTPS both are needed\n'],
      [pair.slice(2), '--key without --certificate: for HTTPS both are needed\n'],
      [
        [...pair.slice(0, 2), '--key', pem('other-key.pem')],
        `onepour office: the key ${pem('other-key.pem')} does not belong to the certificate ${pem('office.pem')}\n`,
      ],
    ] as const) {
      const { status, stdout, stderr } = onepour(['office', '--store', join(folder, 'other.db'), ...args]);
      expect({ status, stdout, stderr }).toEqual({ status: 2, stdout: '', stderr: line });
    }
    expect(existsSync(join(folder, 'other.db'))).toBe(false);
  });

  it('refuses a port that is none', () => {
    for (const port of ['http', '-1', '65536', '4180.5']) {
      const { status, stderr } = onepour(['office', '--store', store, '--port', port]);
      expect(status).toBe(2);
      expect(stderr).toContain('expected a number from 0 to 65535');
    }
    expect(existsSync(store)).toBe(false);
  });
});
