import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeSchedules } from '../../src/files/csv/write-schedules.ts';
import { readJob } from '../../src/files/read-job.ts';
import { indexJob } from '../../src/job/job-index.ts';
import { resolveConnection } from '../../src/job/resolve/resolve-connection.ts';
import { messagesOf } from './schedules.ts';

const demo = join(import.meta.dirname, '..', '..', 'demo');
const readText = (...path: string[]) => readFileSync(join(demo, ...path), 'utf8');
const reading = readJob(new Map([['job.json', readText('job.json')]]));

describe('the demo job', () => {
  it('is read without a fault and has what it promises', () => {
    expect(messagesOf(reading)).toEqual([]);
    if (!reading.ok) return;
    const { panels, castIns, connections } = reading.file.job;
    expect([panels.length, connections.length, castIns.filter((c) => c.role === 'fixing').length]).toEqual([
      12, 40, 120,
    ]);
    expect(new Set(castIns.map((c) => c.role))).toEqual(
      new Set(['fixing', 'lifting', 'brace', 'duct', 'plate', 'tie', 'other']),
    );
    expect(new Set(connections.map((c) => c.actions.kind))).toEqual(new Set(['loads', 'required', 'none']));
    expect(connections.some((c) => c.face === 'edge')).toBe(true);
  });
  it('resolves in every connection', () => {
    if (!reading.ok) throw new Error('the demo job has faults');
    const index = indexJob(reading.file);
    const kinds = reading.file.job.connections.map((connection) => resolveConnection(index, connection).kind);
    expect(kinds.filter((kind) => kind !== 'resolved')).toEqual([]);
  });
  it('is the same after schedules', () => {
    if (!reading.ok) throw new Error('the demo job has faults');
    const again = readJob(writeSchedules(reading.file));
    expect(messagesOf(again)).toEqual([]);
    expect(again.ok && again.file).toEqual(reading.file);
  });
});

describe('the job typed by hand', () => {
  it('is read without a fault', () => {
    const names = readdirSync(join(demo, 'typed-by-hand'));
    const typed = readJob(new Map(names.map((name) => [name, readText('typed-by-hand', name)])));
    expect(messagesOf(typed)).toEqual([]);
    expect(typed.ok && [typed.file.job.panels.length, typed.file.job.connections.length]).toEqual([3, 5]);
  });
});
