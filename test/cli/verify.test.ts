import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Libsql from 'libsql';
import { expect, test } from 'vitest';
import { openSqliteStore } from '../../src/store/sqlite/open-sqlite.ts';
import { makeDevice, writeMany } from '../store/devices.ts';
import { sampleFile } from '../store/edits.ts';
import { done } from '../store/job-store.ts';
import { onepour } from './run-command.ts';

test('onepour verify: 0 nothing found, 1 something is not as it was written, 2 cannot be looked at', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'onepour-verify-shell-'));
  const path = join(folder, 'office.db');
  try {
    const store = await openSqliteStore(path);
    const { id } = await store.createJob(sampleFile());
    await done(store.takeRecords(id, writeMany(makeDevice('tablet'), id, 3)));
    const busy = onepour(['verify', '--store', path]);
    expect(busy.status).toBe(2);
    expect(busy.stderr).toMatch(/^.*office\.db is in use: another onepour office has it open\. .*\n$/);
    await store.close();
    const sound = onepour(['verify', '--store', path]);
    expect(sound).toMatchObject({ status: 0, stderr: '' });
    expect(sound.stdout).toContain('3 records of 1 job and 1 device, 0 photos\nNothing found.\nHead: 3:');
    const file = new Libsql(path);
    file.exec('DELETE FROM records WHERE number = 2');
    file.close();
    const found = onepour(['verify', '--store', path]);
    expect(found).toMatchObject({ status: 1, stderr: '' });
    expect(found.stdout).toContain('removed: line 2 of the log is not there\n');
    expect(onepour(['verify', '--store', join(folder, 'none.db')])).toMatchObject({ status: 2, stdout: '' });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
