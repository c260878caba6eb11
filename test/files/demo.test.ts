import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { planPour } from '../../src/assess/set-out/plan-pour.ts';
import { holdingMethodNames } from '../../src/engine/form/holding-methods.ts';
import { writeSchedules } from '../../src/files/csv/write-schedules.ts';
import { readJob } from '../../src/files/read-job.ts';
import { compareJobs } from '../../src/job/difference/compare-jobs.ts';
import { summariseDifference } from '../../src/job/difference/summarise-difference.ts';
import { makeHandedPartner } from '../../src/job/handed/make-handed-partner.ts';
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
      14, 60, 160,
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

describe('the demo job in the form', () => {
  const earlier = readJob(new Map([['job.json', readText('job-rev-a.json')]]));
  if (!reading.ok) throw new Error('the demo job has faults');
  const { file } = reading;
  const { job, library } = file;

  it('uses every method of holding, and beds of both materials', () => {
    const used = new Set(job.castIns.flatMap(({ holding }) => holding ?? []));
    const methods = new Set(library.holding.ways.filter(({ id }) => used.has(id)).map(({ method }) => method));
    expect([...methods].sort()).toEqual([...holdingMethodNames].sort());
    expect(library.yard.beds.map(({ form }) => form)).toEqual(['timber', 'steel']);
  });
  it('has a panel of twenty inserts and its handed partner, which is made the same again', () => {
    const count = (mark: string) => job.castIns.filter(({ panel }) => panel === mark).length;
    expect([count('P13'), count('P13-H')]).toEqual([20, 20]);
    const again = makeHandedPartner(file, 'P13', 'P13-H');
    expect(again.ok && again.file).toEqual(file);
    expect(again.ok && again.notes).toEqual(['bracket of C43-H is handed: order a mirrored one']);
  });
  it('has three pours on two beds, one of two revisions, one of a mark twice; in one thin panel alone something does not go', () => {
    const plans = job.pours.map(({ id }) => planPour(indexJob(file), id));
    expect(plans.map(({ pour, bed, problems }) => [pour.id, bed.id, problems.length])).toEqual([
      ['T12', 'B1', 1],
      ['T13', 'B2', 0],
      ['T14', 'B1', 0],
    ]);
    expect(plans[0]!.problems[0]!.text).toMatch(/^this pour mixes revisions: P02 no\. 1 was planned by revision A/);
    expect(plans[2]!.pieces.filter(({ panel }) => panel === 'P12')).toHaveLength(2);
    const errors = plans.flatMap(({ setOuts }) => setOuts.flatMap(({ problems }) => problems));
    const wrong = errors.filter(({ severity }) => severity === 'error');
    expect(wrong.map(({ panel, kind }) => `${panel} ${kind}`)).toEqual(['P04 cover', 'P04 cover']);
  });
  it('was issued before, with two inserts elsewhere, another type, and no partner', () => {
    expect(messagesOf(earlier)).toEqual([]);
    if (!earlier.ok) return;
    const difference = compareJobs(earlier.file, file);
    expect(summariseDifference(difference)).toBe(
      '1 panel new, 2 inserts moved, 1 type changed, 1 connection changed, pours changed, 11 panels unchanged',
    );
    const { before, after } = difference.revisions;
    expect([before?.letter, after?.letter]).toEqual(['A', 'B']);
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
