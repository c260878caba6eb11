import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Libsql from 'libsql';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { runVerify } from '../../src/cli/verify-command.ts';
import { hashText } from '../../src/job/fingerprint.ts';
import { writeExport } from '../../src/records/export.ts';
import { hashLogLine, LOG_START } from '../../src/records/log-line.ts';
import type { FactRecord, KindAndBody } from '../../src/records/record.ts';
import { writeRecord } from '../../src/records/record-text.ts';
import { openSqliteStore } from '../../src/store/sqlite/open-sqlite.ts';
import { Tablet } from '../records/writing.ts';
import { hashOf } from '../store/devices.ts';
import { sampleFile } from '../store/edits.ts';
import { done } from '../store/job-store.ts';

const PHOTO = Buffer.from('a photo of a ferrule (invented)');

function photoOf(hash: string): KindAndBody {
  return {
    kind: 'photo',
    body: { photo: hash, type: 'image/jpeg', bytes: PHOTO.length, width: 4, height: 3, of: 'insert', note: null },
  };
}

const started: KindAndBody = {
  kind: 'piece-started',
  body: { panelKey: 'k', mark: 'P03', serial: '2', pour: 'T1', bed: null, recastOf: null },
};
const comment = (text: string): KindAndBody => ({ kind: 'comment', body: { text } });

describe('records of a store are as they were written', () => {
  let folder: string;
  let path: string;
  let job: string;
  let one: Tablet;
  let two: Tablet;

  const send = async (...texts: readonly string[]) => {
    const store = await openSqliteStore(path);
    const answer = await done(store.takeRecords(job, texts));
    await store.close();
    return answer;
  };

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'onepour-verify-'));
    path = join(folder, 'office.db');
    const store = await openSqliteStore(path);
    job = (await store.createJob(sampleFile())).id;
    await store.keepPhoto({ hash: hashOf(PHOTO), type: 'image/jpeg', bytes: PHOTO });
    await store.close();
    [one, two] = [new Tablet(1, 0, job), new Tablet(2, 0, job)];
    one.write(started, 0);
    one.write(photoOf(hashOf(PHOTO)), 1, { item: 'k1' });
    one.write(comment('dry'), 2);
    two.write(comment('wet'), 3);
    one.write(comment('cold'), 4);
    one.write(comment('warm'), 5);
    const texts = one.written.map(({ text }) => text);
    await send(...texts.slice(0, 3), two.written[0]!.text, ...texts.slice(3));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  /** Runs the command in this process: exit code, and lines of the page. */
  const verify = async (more: { readonly head?: string; readonly file?: string; readonly json?: boolean } = {}) => {
    const write = vi.spyOn(process.stdout, 'write').mockReturnValue(true);
    try {
      const code = await runVerify({ store: path, ...more });
      return { code, text: write.mock.calls.map(([text]) => String(text)).join('') };
    } finally {
      write.mockRestore();
    }
  };

  /** What somebody does who owns the file. */
  const tamper = (...statements: readonly string[]) => {
    const file = new Libsql(path);
    for (const statement of statements) file.exec(statement);
    file.close();
  };

  const headOf = (text: string) => /^Head: (\d+:[0-9a-f]{64})$/m.exec(text)?.[1] ?? '';

  /** Makes every hash of the log anew, as a whole program of somebody's own could. */
  const rechain = () => {
    const file = new Libsql(path);
    const rows = file.prepare('SELECT number, job, text FROM records ORDER BY number').all() as {
      readonly number: number;
      readonly job: string;
      readonly text: string;
    }[];
    let before = LOG_START;
    for (const row of rows) {
      const hash = hashText(row.text);
      before = hashLogLine(before, row.job, hash);
      file.prepare('UPDATE records SET hash = ?, log_hash = ? WHERE number = ?').run(hash, before, row.number);
    }
    file.close();
  };

  it('finds nothing in a store that is as it was written, says what it looked at, and the head to write down', async () => {
    const { code, text } = await verify();
    expect(code).toBe(0);
    expect(text).toContain(`${path}: 6 records of 1 job and 2 devices, 1 photo\nNothing found.\nHead: 6:`);
    const head = headOf(text);
    expect((await verify({ head })).code).toBe(0);
    expect((await verify({ head: head.slice(0, 14) })).code).toBe(0);
    one.write(comment('late'), 9);
    await send(one.written.at(-1)!.text);
    expect((await verify({ head })).code).toBe(0);
  });

  it('finds a change in every column of a line, and of a text that was kept aside', async () => {
    const aside = JSON.stringify({ ...one.written[2]!.record, body: { text: 'other' } });
    await send(aside, 'no record');
    expect((await verify()).text).toContain('\n2 findings:\nkept aside: ');
    const columns = (table: string, row: string) => {
      const file = new Libsql(path);
      const [found] = file.prepare(`SELECT * FROM ${table} WHERE ${row}`).all() as Record<string, unknown>[];
      file.close();
      return Object.keys(found!);
    };
    // When a line came, why and when a text was kept aside and which job it came for: nothing else holds these.
    const free = new Set(['received_at', 'why', 'at', 'asides job']);
    const whole = readFileSync(path);
    const untold: string[] = [];
    for (const [table, row, before] of [
      ['records', 'number = 3', 2],
      ['asides', 'id IS NOT NULL', 2],
      ['asides', 'id IS NULL', 2],
    ] as const)
      for (const column of columns(table, row)) {
        if (free.has(column) || free.has(`${table} ${column}`)) continue;
        const isNumber = column === 'number' || column === 'device_number';
        const change = isNumber ? `${column} + 100` : `coalesce('x' || substr(${column}, 2), 'x')`;
        tamper('PRAGMA foreign_keys = OFF', `UPDATE ${table} SET ${column} = ${change} WHERE ${row}`);
        const { code, text } = await verify();
        if (code !== 1 || text.split(/^Head:/m)[0]!.split('\n').length <= before + 3) untold.push(`${table}.${column}`);
        writeFileSync(path, whole);
      }
    expect(untold).toEqual([]);
    expect((await verify()).text).toContain('\n2 findings:\nkept aside: ');
  });

  it('finds a changed byte, and names the record, the device, its number, the piece and the time', async () => {
    tamper(`UPDATE records SET text = replace(text, '"dry"', '"wet"') WHERE number = 3`);
    const { code, text } = await verify();
    expect(code).toBe(1);
    const { id, typedAt } = one.written[2]!.record;
    expect(text).toContain('\n1 finding:\nchanged: ');
    expect(text).toContain(
      `changed: line 3, record ${id}, device ${one.id} no. 3, piece P03 no. 2, typed ${typedAt.slice(0, 10)} ${typedAt.slice(11, 16)} UTC: its text is not the one that was taken in\n`,
    );
  });

  it('finds a changed byte though every hash of the log was made anew', async () => {
    tamper(`UPDATE records SET text = replace(text, '"dry"', '"wet"') WHERE number = 3`);
    rechain();
    const { code, text } = await verify();
    expect(code).toBe(1);
    expect(text).toContain(`it does not hold the hash of the record before it (line 3, record`);
  });

  it('finds a removed record, with the gap and without', async () => {
    tamper('DELETE FROM records WHERE number = 3');
    const { code, text } = await verify();
    expect(code).toBe(1);
    expect(text).toContain('removed: line 3 of the log is not there\n');
    expect(text).toContain(`removed: device ${one.id} no. 3 not there, though a later one is: line 5, record`);
    tamper(
      'UPDATE records SET number = 3 WHERE number = 4',
      'UPDATE records SET number = 4 WHERE number = 5',
      'UPDATE records SET number = 5 WHERE number = 6',
    );
    rechain();
    const closed = await verify();
    expect(closed.code).toBe(1);
    expect(closed.text).toContain(`removed: device ${one.id} no. 3 not there`);
  });

  it('finds reordered records', async () => {
    tamper(
      'UPDATE records SET number = -1 WHERE number = 2',
      'UPDATE records SET number = 2 WHERE number = 4',
      'UPDATE records SET number = 4 WHERE number = -1',
    );
    const { code, text } = await verify();
    expect(code).toBe(1);
    expect(text).toMatch(/reordered: line 4, record .* no\. 2, .*: it belongs on line 2\n/);
    expect(text).toMatch(/reordered: line 2, record .* no\. 1, .*: it belongs on line 4\n/);
  });

  it('finds a record that was moved to another piece', async () => {
    tamper(`UPDATE records SET piece = '${'3'.repeat(24)}' WHERE number = 3`);
    const { code, text } = await verify();
    expect(code).toBe(1);
    expect(text).toContain(`stored under piece ${'3'.repeat(24)}, its text says ${'1'.repeat(24)}`);
  });

  it('finds a copied tablet', async () => {
    const { record } = one.written[4]!;
    const copy = writeRecord({
      ...record,
      id: two.written[0]!.record.id.replace(/.$/, 'f'),
      body: { text: 'x' },
    } as FactRecord);
    await send(copy.text);
    const { code, text } = await verify();
    expect(code).toBe(1);
    expect(text).toMatch(new RegExp(`copied device: ${one.id} wrote two texts under no\\. 5: line 6, .*; line 7, `));
  });

  it('finds an id with two texts', async () => {
    const { record } = one.written[4]!;
    await send(writeRecord({ ...record, body: { text: 'x' } } as FactRecord).text);
    const { code, text } = await verify();
    expect(code).toBe(1);
    expect(text).toContain(`kept aside: record ${record.id}, piece P03 no. 2: the id stands for another text already`);
  });

  it('finds a record taken off the end by a head that was written down, and by nothing else', async () => {
    const head = headOf((await verify()).text);
    tamper('DELETE FROM records WHERE number = 6');
    const without = await verify();
    expect(without.code).toBe(0);
    expect(without.text).toContain('without it nothing tells that records were taken off the end');
    const { code, text } = await verify({ head });
    expect(code).toBe(1);
    expect(text).toContain('removed: the head that was written down is 6:');
    // Another one in its place is no help to whoever took it.
    two.write(comment('new'), 9);
    await send(two.written.at(-1)!.text);
    const put = await verify({ head });
    expect(put.text).toContain('rewritten: the head that was written down is 6:');
  });

  it('finds a photo that was changed, and one that is not there', async () => {
    const photos = join(`${path}.photos`, hashOf(PHOTO).slice(0, 2));
    const [name] = readdirSync(photos);
    writeFileSync(join(photos, name!), 'another photo');
    const changed = await verify();
    expect(changed.code).toBe(1);
    expect(changed.text).toContain(`photo changed: ${hashOf(PHOTO)}, of line 2, record`);
    rmSync(join(photos, name!));
    const gone = await verify();
    expect(gone.code).toBe(1);
    expect(gone.text).toContain(`photo missing: ${hashOf(PHOTO)}, of line 2, record`);
  });

  it('gives the findings as JSON too', async () => {
    tamper('DELETE FROM records WHERE number = 4');
    const { code, text } = await verify({ json: true });
    expect(code).toBe(1);
    const { findings, head } = JSON.parse(text);
    expect(findings).toEqual([
      { kind: 'lines missing', from: 4, to: 4, words: 'removed: line 4 of the log is not there' },
    ]);
    expect(head.number).toBe(6);
  });

  it('looks at a file of unsent records', async () => {
    const file = join(folder, 'unsent.json');
    const texts = one.written.map(({ text }) => text);
    writeFileSync(file, writeExport({ job, device: one.id, texts: texts.slice(2) }));
    const sound = await verify({ file });
    expect(sound.code).toBe(0);
    expect(sound.text).toContain(`${file}: 3 texts of job ${job}, written by device ${one.id}\nNothing found.`);
    writeFileSync(
      file,
      writeExport({ job, device: one.id, texts: texts.slice(2).map((text) => text.replace('cold', 'gold')) }),
    );
    const changed = await verify({ file });
    expect(changed.code).toBe(1);
    expect(changed.text).toMatch(/changed: text 3, .*: it does not hold the hash of the record before it \(text 2, /);
  });

  it('says what it cannot look at', async () => {
    await expect(runVerify({ store: join(folder, 'none.db') })).rejects.toThrow(/is not there: name the store/);
    await expect(runVerify({ store: path, head: '6' })).rejects.toThrow(/expected NUMBER:HASH/);
    await expect(runVerify({ store: path, head: '0:123456789abc' })).rejects.toThrow(/expected NUMBER:HASH/);
    await expect(runVerify({ store: path, head: '6:123456789abc', file: 'x' })).rejects.toThrow(/of a store/);
    await expect(runVerify({ store: path, file: join(folder, 'x') })).rejects.toThrow(/cannot be read/);
    writeFileSync(join(folder, 'x'), '{}');
    await expect(runVerify({ store: path, file: join(folder, 'x') })).rejects.toThrow(/onepour-records/);
    expect(readdirSync(folder).sort()).toEqual(['office.db', 'office.db.photos', 'x']);
  });
});
