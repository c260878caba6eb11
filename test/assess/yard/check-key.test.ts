import { describe, expect, it } from 'vitest';
import type { PiecePlan } from '../../../src/assess/yard/piece-plan.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { demo } from '../../job/edit/demo.ts';
import { demoMarks, planOf, withCastIn, withPanel } from './pieces.ts';

/** Permanent keys of the items whose check key another state of the job changes. */
function changed(before: PiecePlan, after: PiecePlan): readonly string[] {
  return [...before.keys].flatMap(([key, hash]) => (after.keys.get(key) === hash ? [] : [key]));
}

function withJob(change: (job: JobFile['job']) => object): JobFile {
  return { ...demo, job: { ...demo.job, ...change(demo.job) } };
}

const mark = 'P13';
const plan = planOf(mark);
const first = plan.setOut.items[0]!;
const all = [...plan.keys.keys()];

describe('the check key of an insert', () => {
  it('is a hash of each item, the same on every device', () => {
    expect(all).toHaveLength(20);
    for (const hash of [...plan.keys.values(), plan.formKey]) expect(hash).toMatch(/^[0-9a-f]{64}$/);
    expect(changed(plan, planOf(mark, structuredClone(demo)))).toEqual([]);
    expect(changed(plan, planOf(mark, demo, 'f'.repeat(24)))).toEqual([]);
  });

  it('stays when a mark, a load, the concrete or a number changes', () => {
    const renamed = withJob((job) => ({
      panels: job.panels.map((panel) => (panel.mark === mark ? { ...panel, mark: 'Q13' } : panel)),
      castIns: job.castIns.map((one) => (one.panel === mark ? { ...one, panel: 'Q13' } : one)),
      connections: job.connections.map((one) =>
        one.panel === mark ? { ...one, panel: 'Q13', mark: `${one.mark}b` } : one,
      ),
      pours: job.pours.map((pour) => ({
        ...pour,
        pieces: pour.pieces.map((piece) => (piece.panel === mark ? { ...piece, panel: 'Q13' } : piece)),
      })),
    }));
    const after = planOf('Q13', renamed);
    expect(changed(plan, after)).toEqual([]);
    expect(after.formKey).toBe(plan.formKey);
    const unloaded = withJob((job) => ({
      connections: job.connections.map((one) => ({ ...one, actions: { kind: 'none' } })),
      concretes: job.concretes.map((one) => ({ ...one, strength28_MPa: one.strength28_MPa + 5 })),
      castIns: job.castIns.map((one) => ({ ...one, id: `n${one.id}` })),
    }));
    const numbered = {
      ...unloaded,
      job: {
        ...unloaded.job,
        connections: unloaded.job.connections.map((one) => ({
          ...one,
          inserts: one.inserts.map(({ insert, hole }) => ({ insert: `n${insert}`, hole })),
        })),
      },
    };
    expect(changed(plan, planOf(mark, numbered))).toEqual([]);
  });

  it('changes of that insert alone when it is moved, gets another tolerance, type, holding, cross bar or description', () => {
    const { id, key, x_mm } = first.castIn;
    const others = demo.library.catalogue.items.filter(({ id: item }) => item !== first.castIn.item);
    const ways = demo.library.holding.ways.filter(
      (way) => way.id !== first.castIn.holding && way.method === 'through the side form',
    );
    const changes: object[] = [
      { x_mm: x_mm + 1 },
      { tolerance_mm: 3 },
      { item: others[0]!.id },
      { description: 'with a ring' },
      { role: 'brace' },
      { crossBar: { direction_deg: 90, diameter_mm: 8, length_mm: 300 } },
      { recess_mm: 10 },
      ...ways.map((way) => ({ holding: way.id })),
    ];
    for (const change of changes)
      expect(changed(plan, planOf(mark, withCastIn(mark, id, change))), JSON.stringify(change)).toEqual([key]);
  });

  it('changes of that insert alone when it is moved across a large face', () => {
    const { id, key, x_mm, y_mm } = plan.setOut.items.find(({ place }) => place === 'mould face')!.castIn;
    for (const change of [{ x_mm: x_mm + 1 }, { y_mm: y_mm + 1 }])
      expect(changed(plan, planOf(mark, withCastIn(mark, id, change)))).toEqual([key]);
  });

  it('changes of all when the panel is laid into the form another way, and of the form too', () => {
    for (const inForm of [
      { turn_deg: 180, datum: 'bottom-left' },
      { turn_deg: 0, datum: 'bottom-right' },
    ]) {
      const after = planOf(
        mark,
        withPanel(mark, () => ({ inForm })),
      );
      expect(changed(plan, after)).toEqual(all);
      expect(after.formKey).not.toBe(plan.formKey);
    }
    expect(
      changed(
        plan,
        planOf(
          mark,
          withPanel(mark, () => ({ faceDown: 'inside' })),
        ),
      ),
    ).toEqual(all);
  });

  it('changes of all when the rails swap their names: who taped from the one was told the other', () => {
    const beds = demo.library.yard.beds.map((bed) => ({
      ...bed,
      names: { ...bed.names, railA: bed.names.railB, railB: bed.names.railA },
    }));
    const swapped = { ...demo, library: { ...demo.library, yard: { ...demo.library.yard, beds } } };
    expect(changed(plan, planOf(mark, swapped))).toEqual(all);
  });

  it('stays within rounding', () => {
    const { id, x_mm } = first.castIn;
    expect(changed(plan, planOf(mark, withCastIn(mark, id, { x_mm: x_mm + 1e-9 })))).toEqual([]);
  });
});

describe('the check key of the form', () => {
  it('changes with outline, openings, depth and tolerance', () => {
    const wider = planOf(
      mark,
      withPanel(mark, ({ outline_mm }) => ({ outline_mm: outline_mm.map(([x, y]) => [x, y > 0 ? y + 10 : y]) })),
    );
    const hole = [
      [100, 100],
      [300, 100],
      [300, 300],
    ];
    const open = planOf(
      mark,
      withPanel(mark, () => ({ openings_mm: [hole] })),
    );
    const deeper = planOf(
      mark,
      withPanel(mark, ({ thickness_mm }) => ({ thickness_mm: thickness_mm + 10 })),
    );
    const rules = { ...demo.library.rules, tolerances: { ...demo.library.rules.tolerances, form_mm: 4 } };
    const looser = planOf(mark, { ...demo, library: { ...demo.library, rules } });
    const keys = [plan, wider, open, deeper, looser].map(({ formKey }) => formKey);
    expect(new Set(keys).size).toBe(5);
    expect(changed(plan, looser)).toEqual([]);
  });

  it('is one for each panel of the demo job', () => {
    const keys = demoMarks.map((one) => planOf(one).formKey);
    expect(new Set(keys).size).toBe(demoMarks.length);
  });
});
