// The sample job's numbers; lengths by hand: washer ISO 7089 M16 3 mm, plate 15 mm, engagement 16 mm (1 d), thread 40 deep.

import { describe, expect, it } from 'vitest';
import { chooseConnectionBolt } from '../../src/assess/bolt-of-connection.ts';
import { findCapacities } from '../../src/assess/capacities.ts';
import { mustResolve } from '../job/read.ts';
import { sampleCastIn, sampleConnection, sampleItem, sampleJob } from '../job/sample-job.ts';

function boltOf(parts: Parameters<typeof sampleJob>[0] = {}) {
  const resolved = mustResolve(sampleJob(parts));
  const asked = findCapacities(resolved);
  return chooseConnectionBolt(resolved, asked.kind === 'computed' ? asked.value : null);
}

describe('the bolt of a connection', () => {
  it('one length for packers up to 20 mm: 3 + 15 + 20 + 16 = 54, so 55; without packers 37 mm of 40 deep', () => {
    const bolt = boltOf()!;
    expect(bolt.answer.packerRows).toEqual([{ packers: [0, 20], choice: expect.objectContaining({ length: 55 }) }]);
    expect(bolt.answer.choice).toMatchObject({ engagement: { least: 17, greatest: 37 }, clearToBottom: 3 });
    expect(bolt.answer.isOk).toBe(true);
  });
  it('20 mm of packers drawn are part of the grip', () => {
    const drawn = boltOf({ connections: [sampleConnection({ packers_mm: 20 })] })!;
    expect(drawn.answer.packerRows).toEqual([]);
    expect(drawn.answer.choice).toMatchObject({ length: 55 });
  });
  it('a recess of 10 mm makes the bolt longer: 3 + 15 + 20 + 10 + 16 = 64, so 65', () => {
    const castIns = [sampleCastIn('1', 900, 500, { recess_mm: 10 }), sampleCastIn('2', 1100, 500, { recess_mm: 10 })];
    expect(boltOf({ castIns })!.answer.choice).toMatchObject({ length: 65 });
  });
  it("the lowest limit of the torque: never above the maker's 80 N m, less where the concrete is weaker", () => {
    const { answer } = boltOf()!;
    const limits = new Map(answer.torqueLimits.map(({ kind, torque }) => [kind, torque]));
    expect(limits.get("maker's maximum")).toBe(80_000);
    expect(limits.has('concrete')).toBe(true);
    expect(limits.has('body at the cross hole')).toBe(true);
    expect(answer.tightening).toBeNull();
  });
  it('takes a finish that the class can have', () => {
    const items = [sampleItem({ boltFinishes: ['stainless', 'zinc'] })];
    expect(boltOf({ items })!.finish).toBe('zinc');
    const connections = [sampleConnection({ boltClass: 'A4-70' })];
    expect(boltOf({ items, connections })!.finish).toBe('stainless');
  });
  it('is not known without a plate', () => {
    const bare = sampleConnection({
      fixture: null,
      inserts: ['1', '2'].map((insert) => ({ insert, hole: null })),
      actions: { kind: 'none' },
    });
    expect(boltOf({ connections: [bare] })).toBeNull();
  });
});
