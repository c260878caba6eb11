import { describe, expect, it } from 'vitest';
import { addUpJob, findJobParts } from '../../../src/assess/parts/job-parts.ts';
import { type OrderLine, reconcile } from '../../../src/assess/parts/reconcile.ts';
import { planPour } from '../../../src/assess/set-out/plan-pour.ts';
import { sampleCastIn, sampleConnection, sampleFixture } from '../../job/sample-job.ts';
import { indexParts } from './parts-job.ts';

const order = (id: string, ordered: number, delivered = 0): OrderLine => ({ id, ordered, delivered });

function countsOf(orders: readonly OrderLine[] | null, changes: Parameters<typeof indexParts>[0] = {}) {
  const index = indexParts(changes);
  return reconcile(index, findJobParts(index), orders);
}

const rowOf = (id: string, orders: readonly OrderLine[] | null) =>
  countsOf(orders).rows.find(({ kind }) => kind.id === id)!;

// By hand: the job takes 10 F16 with 1 spare, 20 nails with 1 spare in packs of 50, 10 uses of plates of which 11 are needed.
describe('drawing, schedule and order', () => {
  it('agree where nothing is ordered yet', () => {
    const { rows, foreign } = countsOf(null);
    expect(rows.flatMap(({ differences }) => differences)).toEqual([]);
    expect(foreign).toEqual([]);
    expect(rows.find(({ kind }) => kind.id === 'F16')).toMatchObject({
      drawing: 10,
      schedule: 10,
      ordered: null,
      delivered: null,
    });
    expect(rows.find(({ kind }) => kind.id === 'NAIL')).toMatchObject({ drawing: 20, schedule: null });
  });

  it.each([
    [9, ['ordered 1 fewer than the drawing has']],
    [10, ['ordered enough, but 1 too few for the spares']],
    [11, []],
    [12, ['ordered 1 more than needed']],
    [0, ['ordered 10 fewer than the drawing has']],
  ])('of F16 with %i ordered differ by %j', (ordered, differences) => {
    expect(rowOf('F16', [order('F16', ordered)]).differences).toEqual(differences);
  });

  it.each([
    [50, []],
    [51, ['ordered 1 more than needed in whole packs']],
  ])('of nails with %i ordered, in packs of 50, differ by %j', (ordered, differences) => {
    expect(rowOf('NAIL', [order('NAIL', ordered)]).differences).toEqual(differences);
  });

  it('hold what comes back against what is needed at once, not against its uses', () => {
    expect(rowOf('PLATE-16', [order('PLATE-16', 10)]).differences).toEqual(['ordered 1 fewer than needed']);
    expect(rowOf('PLATE-16', [order('PLATE-16', 11)]).differences).toEqual([]);
  });

  it('tell what is to come, and what came without an order', () => {
    expect(rowOf('F16', [order('F16', 11, 4)])).toMatchObject({ outstanding: 7, differences: [] });
    expect(rowOf('F16', [order('F16', 11, 13)])).toMatchObject({
      outstanding: 0,
      differences: ['delivered 2 more than ordered'],
    });
  });

  it('add up several orders of one part', () => {
    expect(rowOf('F16', [order('F16', 6, 6), order('F16', 5)])).toMatchObject({
      ordered: 11,
      delivered: 6,
      differences: [],
    });
  });

  it('tell what was not ordered at all, but for what is described in words only', () => {
    const { rows } = countsOf([]);
    expect(rows.filter(({ differences }) => differences.length === 0).map(({ kind }) => kind.group)).toEqual([
      'other cast-ins',
      'other cast-ins',
    ]);
    const boxes = countsOf([order('duct: conduit box', 2)]).rows.find(({ kind }) => kind.id === 'duct: conduit box');
    expect(boxes!.differences).toEqual(['ordered 1 fewer than the drawing has']);
  });

  it('tell an order of what the job does not take, with the part that was probably meant', () => {
    expect(countsOf([order('F61', 5), order('QQ-9', 5)]).foreign).toEqual([
      { id: 'F61', meant: 'F16' },
      { id: 'QQ-9', meant: null },
    ]);
  });

  it('count an order over pours that are long cast, too', () => {
    const pours = [{ id: 'T0', bed: 'B1', date: '2001-01-01', pieces: [{ panel: 'P2', serial: '1' }] }];
    const { rows } = countsOf([order('F16', 5)], { pours });
    // P2 takes one, P1 (in no pour) three, one spare.
    expect(rows.find(({ kind }) => kind.id === 'F16')).toMatchObject({ drawing: 4, needed: 5, differences: [] });
  });

  it('differ where a set-out has lost an item of the schedule', () => {
    const index = indexParts();
    const plans = index.file.job.pours.map(({ id }) => planPour(index, id));
    const lossy = plans.map((plan) => ({
      ...plan,
      setOuts: plan.setOuts.map((setOut) => ({
        ...setOut,
        items: setOut.items.filter(({ castIn }) => castIn.panel !== 'P2' && castIn.item !== 'F16L'),
      })),
    }));
    const { rows } = reconcile(index, addUpJob(index, lossy, []), null);
    const told = rows.filter(({ differences }) => differences.length > 0);
    expect(told.map(({ kind, differences }) => [kind.id, differences])).toEqual([
      ['F16', ['drawing 9, schedule 10']],
      ['F16L', ['drawing 0, schedule 3']],
      ['lifting: loop', ['drawing 0, schedule 1']],
    ]);
  });
});

describe('holes and inserts', () => {
  const holes = [
    { id: '1', at_mm: [-100, 0], diameter_mm: 18 },
    { id: '2', at_mm: [100, 0], diameter_mm: 18 },
    { id: '3', at_mm: [0, 0], diameter_mm: 18 },
  ];

  it('that do not find one another are told', () => {
    const { holes: free, loose } = countsOf(null, {
      connections: [sampleConnection({ fixture: sampleFixture({ holes }) })],
    });
    expect(free).toEqual(['connection C1 of panel P1: no insert behind hole 3 of its plate']);
    expect(loose).toEqual([
      'panel P1: fixing insert 3, 4 in no connection',
      'panel P2: fixing insert 1 in no connection',
    ]);
  });

  it('of a standard detail count like those of a plate', () => {
    const details = [{ id: 'T3', name: 'three holes', item: null, fixture: sampleFixture({ holes }) }];
    const { holes: free } = countsOf(null, {
      details,
      connections: [sampleConnection({ fixture: null, detail: 'T3' })],
    });
    expect(free).toEqual(['connection C1 of panel P1: no insert behind hole 3 of its plate']);
  });

  it('are told of fixings only', () => {
    const castIns = [
      sampleCastIn('1', 900, 500),
      sampleCastIn('2', 1100, 500),
      sampleCastIn('9', 2000, 2000, { role: 'lifting', item: null, description: 'loop' }),
    ];
    expect(countsOf(null, { castIns })).toMatchObject({ holes: [], loose: [] });
  });
});
