// The sample job's numbers; lengths by hand: washer ISO 7089 M16 3 mm and up to 3.3, plate 15 mm, engagement 16 mm (1 d), thread 40 deep.

import { describe, expect, it } from 'vitest';
import { chooseConnectionBolt } from '../../src/assess/bolt-of-connection.ts';
import { findCapacities } from '../../src/assess/capacities.ts';
import { mustResolve } from '../job/read.ts';
import { type Json, sampleCastIn, sampleConnection, sampleFixture, sampleItem, sampleJob } from '../job/sample-job.ts';

function boltOf(parts: Parameters<typeof sampleJob>[0] = {}) {
  const resolved = mustResolve(sampleJob(parts));
  const asked = findCapacities(resolved);
  return chooseConnectionBolt(resolved, asked.kind === 'computed' ? asked.value : null);
}

/** An insert whose tension is covered: with the values for splitting. */
const covered = sampleItem({ splitting: { criticalEdge_mm: 144, minimumThickness_mm: 150 } });

describe('the bolt of a connection', () => {
  it('without packers: 3.3 + 15 + 16 = 34.3, so 35; 16.7 mm in contact with a thick washer, 17 with 3 mm', () => {
    const bolt = boltOf()!;
    expect(bolt.answer.packerRows).toEqual([]);
    expect(bolt.answer.choice).toEqual({
      length: 35,
      engagement: { least: expect.closeTo(16.7, 9), greatest: 17 },
      clearToBottom: 23,
    });
    expect(bolt.answer.isOk).toBe(true);
    expect(bolt.notes).toContain(
      'checked without packers; more packers bend the bolts: give packers_mm and check again',
    );
    expect(bolt.notes.join('\n')).not.toMatch(/may be 3\.3 mm thick/);
  });
  // A plate of 16 mm: 3 + 16 + 16 = 35 would do with a nominal washer, 3.3 + 16 + 16 = 35.3 asks for 40.
  it('takes the next longer bolt rather than warn of thick washers', () => {
    const connections = [sampleConnection({ fixture: sampleFixture({ thickness_mm: 16 }) })];
    expect(boltOf({ connections })!.answer.choice!.length).toBe(40);
  });
  it('20 mm of packers stated are part of the grip: 3.3 + 35 + 16 = 54.3, so 55', () => {
    const drawn = boltOf({ connections: [sampleConnection({ packers_mm: 20 })] })!;
    expect(drawn.answer.choice).toMatchObject({ length: 55 });
    expect(drawn.notes).toContain(
      'checked with 20 mm of packers; more packers bend the bolts: give packers_mm and check again',
    );
  });
  it('a recess of 10 mm makes the bolt longer: 3.3 + 15 + 10 + 16 = 44.3, so 45', () => {
    const castIns = [sampleCastIn('1', 900, 500, { recess_mm: 10 }), sampleCastIn('2', 1100, 500, { recess_mm: 10 })];
    expect(boltOf({ castIns })!.answer.choice).toMatchObject({ length: 45 });
  });
  it("the lowest limit of the torque: never above the maker's 80 N m, less where the concrete is weaker", () => {
    const { answer, concreteLimit, notes } = boltOf({ items: [covered] })!;
    const limits = new Map(answer.torqueLimits.map(({ kind, torque }) => [kind, torque]));
    expect(limits.get("maker's maximum")).toBe(80_000);
    expect(limits.has('concrete')).toBe(true);
    expect(limits.has('body at the cross hole')).toBe(true);
    expect(answer.tightening).toBeNull();
    // Two inserts 200 mm apart in thick concrete far from edges: the cone is the weakest of all modes in tension.
    expect(concreteLimit).toEqual({ mode: 'concrete-cone', age_days: 28 });
    expect(notes.join('\n')).toMatch(/K 0\.2, from 0\.148 to 0\.308/);
  });
  it('names the age of the concrete that sets the limit', () => {
    const young = boltOf({ items: [covered], connections: [sampleConnection({ age_days: 7 })] })!;
    expect(young.concreteLimit!.age_days).toBe(7);
    const limitOf = ({ answer }: typeof young) => answer.torqueLimits.find(({ kind }) => kind === 'concrete')!.torque;
    expect(limitOf(young)).toBeLessThan(limitOf(boltOf({ items: [covered] })!));
  });
  it('has no limit of the concrete where its tension is not covered', () => {
    const { answer, concreteLimit } = boltOf({ items: [sampleItem({ ...covered, qualification: null })] })!;
    expect(concreteLimit).toBeNull();
    expect(answer.torqueLimits.map(({ kind }) => kind)).not.toContain('concrete');
  });
  it('chooses the finish that suits the insert where none is given, and says so', () => {
    const all = ['zinc', 'galvanised', 'stainless'];
    const finishOf = (item: Json, connection: Json = {}) =>
      boltOf({ items: [sampleItem({ boltFinishes: all, ...item })], connections: [sampleConnection(connection)] })!;
    expect(finishOf({}).finish).toBe('galvanised');
    expect(finishOf({}).notes[0]).toBe('finish not given: galvanised taken');
    expect(finishOf({ threadClass: '6H' }).finish).toBe('zinc');
    expect(finishOf({ finish: 'zinc' }).finish).toBe('zinc');
    expect(finishOf({}, { boltClass: 'A4-70' }).finish).toBe('stainless');
    expect(finishOf({ threadClass: '6H', boltFinishes: ['galvanised', 'plain'] }).finish).toBe('plain');
    const given = finishOf({}, { boltFinish: 'zinc' });
    expect([given.finish, given.notes.join('\n')]).toEqual(['zinc', expect.not.stringMatching(/finish not given/)]);
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
