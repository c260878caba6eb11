import { describe, expect, it } from 'vitest';
import { answerParts } from '../../../src/assess/parts/parts-answer.ts';
import type { StockLine } from '../../../src/assess/parts/stock.ts';
import { sampleCastIn } from '../../job/sample-job.ts';
import { indexParts, parts, ways } from './parts-job.ts';

const have = (id: string, inStock: number, onOrder = 0, arrives: string | null = null): StockLine => ({
  id,
  inStock,
  onOrder,
  arrives,
});

/** The small job with nothing left to decide. */
const decided = {
  castIns: [
    sampleCastIn('1', 900, 500, { holding: 'BOARDED' }),
    sampleCastIn('2', 1100, 500, { holding: 'BOARDED' }),
    sampleCastIn('1', 1000, 1000, { key: 'i1-2', panel: 'P2', holding: 'NAILED' }),
  ],
};

/** All that it takes, by far. */
const PLENTY = [
  'F16',
  'BOARD 2xM16 200x0',
  'NAIL',
  'PLATE-16',
  'bolt M16 x 35 8.8 galvanised',
  'washer M16 ISO 7089 galvanised',
].map((id) => have(id, 1000));

interface Asked {
  readonly pour?: string;
  readonly panel?: string;
  readonly stock?: readonly StockLine[];
  readonly orders?: readonly { readonly id: string; readonly ordered: number; readonly delivered: number }[];
  readonly today?: string;
}

function ask(changes: Parameters<typeof indexParts>[0], { pour, panel, stock, orders, today }: Asked = {}) {
  const lists = { stock: stock ?? null, orders: orders ?? null, today: today ?? '2026-11-25' };
  return answerParts(indexParts(changes), { pour: pour ?? null, panel: panel ?? null }, lists);
}

describe('the answer', () => {
  it('is complete where all is decided and nothing is short', () => {
    expect(ask(decided).state).toBe('complete');
    expect(ask(decided, { stock: PLENTY })).toMatchObject({ state: 'complete', shortages: [], errors: [] });
  });

  it('is open where a way of holding is not decided', () => {
    expect(ask({})).toMatchObject({ state: 'open', open: [expect.stringMatching(/^panel P1, holding not decided/)] });
  });

  it('is short where stock and orders do not cover the job, even for the site', () => {
    const stock = PLENTY.filter(({ id }) => !id.startsWith('bolt'));
    expect(ask(decided, { stock })).toMatchObject({ state: 'short', shortages: [] });
    // What the site takes is no matter of one pour.
    expect(ask(decided, { stock, pour: 'T1' }).state).toBe('complete');
  });

  it('is short where what is on order comes too late, though it is enough, and says so', () => {
    const stock = [...PLENTY.filter(({ id }) => id !== 'F16'), have('F16', 0, 100, '2026-12-14')];
    const answer = ask(decided, { stock });
    expect(answer.shortages.map(({ kind, need }) => [kind.id, need.pour])).toEqual([['F16', 'T1']]);
    expect(answer.state).toBe('short');
    expect(answer.notes).toEqual([
      'F16: enough is on order, but not sure to be there by pour T1; have it brought forward',
    ]);
    expect(ask(decided, { stock, pour: 'T2' }).state).toBe('complete');
  });

  it('is short where an order does not agree', () => {
    const orders = PLENTY.map(({ id }) => ({ id, ordered: 1000, delivered: 0 }));
    expect(ask(decided, { orders }).state).toBe('short');
  });

  it('is short where an insert cannot be held as the job says', () => {
    const castIns = [sampleCastIn('1', 900, 500, { face: 'inside', holding: 'NAILED' })];
    const answer = ask({ castIns, connections: [] });
    expect(answer.errors.some((text) => text.startsWith('panel P1, insert 1: '))).toBe(true);
    expect(answer.state).toBe('short');
  });

  it('is short where two kinds share an id, which no list could tell apart', () => {
    const twin = { id: 'F16', name: 'plate', kind: 'fixing plate', reusable: true };
    const plated = { id: 'TWIN', name: 'twin', method: 'nail-on plate', parts: [{ part: 'F16', count: 1 }] };
    const castIns = [sampleCastIn('1', 900, 500, { holding: 'TWIN' })];
    const answer = ask({ castIns, connections: [], parts: [...parts, twin], ways: [...ways, plated] });
    expect(answer.errors).toEqual([expect.stringMatching(/^F16 is the id of two kinds of part/)]);
    expect(answer.state).toBe('short');
  });
});

describe('what was asked', () => {
  it('limits pours, castings and what is said of them', () => {
    expect(ask({}).castings.map(({ pour, parts: { mark } }) => [pour, mark])).toEqual([
      ['T1', 'P1'],
      ['T1', 'P2'],
      ['T2', 'P1'],
      [null, 'P3'],
    ]);
    expect(ask({}, { pour: 'T1' }).pours.map(({ plan }) => plan.pour.id)).toEqual(['T1']);
    const panel = ask({}, { panel: 'P2' });
    expect(panel.castings.map(({ pour }) => pour)).toEqual(['T1']);
    expect(panel).toMatchObject({ state: 'complete', open: [], pours: [] });
  });

  it('lists shortages pour by pour, of one pour those alone', () => {
    const pours = ask(decided, { stock: [] }).shortages.map(({ need }) => need.pour);
    expect(pours).toEqual([...pours].sort());
    expect(new Set(pours)).toEqual(new Set(['T1', 'T2']));
    expect(new Set(ask(decided, { stock: [], pour: 'T2' }).shortages.map(({ need }) => need.pour))).toEqual(
      new Set(['T2']),
    );
  });
});

describe('what is said of the stock', () => {
  it('is what cannot be counted on, and what looks mistyped; what other jobs take is passed over', () => {
    const stock = [
      have('F16', 1000, 5),
      have('NAIL', 1000, 5, '2026-11-24'),
      have('NAIL', 0, 5, '2026-11-25'),
      have('NIAL', 1),
      have('CHAIR-50', 4),
      have('SLING 8 t', 2),
    ];
    expect(ask(decided, { stock }).notes).toEqual([
      expect.stringMatching(/^F16: 5 on order without a day of arrival/),
      expect.stringMatching(/^NAIL: 5 on order were due on 2026-11-24/),
      'NIAL in the stock is no part of this job; did you mean NAIL?',
    ]);
  });
});
