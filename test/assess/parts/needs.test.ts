import { describe, expect, it } from 'vitest';
import { findJobParts } from '../../../src/assess/parts/job-parts.ts';
import { findNeeds } from '../../../src/assess/parts/needs.ts';
import type { StockLine } from '../../../src/assess/parts/stock.ts';
import { sampleCastIn, samplePanel, samplePour } from '../../job/sample-job.ts';
import { indexParts } from './parts-job.ts';

const TODAY = '2026-11-25';

const have = (id: string, inStock: number, onOrder = 0, arrives: string | null = null): StockLine => ({
  id,
  inStock,
  onOrder,
  arrives,
});

/** The need of one kind of the small job: T1 on 2026-12-14 (twice P1, P2), T2 on 2026-12-15 (P1). */
function needOf(id: string, stock: readonly StockLine[] | null, today = TODAY) {
  const index = indexParts();
  return findNeeds(index, findJobParts(index), stock, today).find(({ kind }) => kind.id === id)!;
}

// By hand: F16 7 for T1 and 3 for T2, 5 % and at least 1 spare; lead time 14 days.
describe('what is used up', () => {
  it('is needed with its spares, once for the job', () => {
    expect(needOf('F16', null)).toMatchObject({ count: 10, spares: 1, needed: 11, reuse: null, stock: null });
  });

  it('is at hand pour by pour: what is left of one is the next one’s', () => {
    const { byPour, toOrder } = needOf('F16', [have('F16', 8)]);
    expect(byPour).toEqual([
      {
        pour: 'T1',
        date: '2026-12-14',
        needed: 8,
        atHand: 8,
        short: 0,
        orderBy: '2026-11-29',
        isTooLate: false,
      },
      {
        pour: 'T2',
        date: '2026-12-15',
        needed: 11,
        atHand: 8,
        short: 3,
        orderBy: '2026-11-30',
        isTooLate: false,
      },
    ]);
    expect(toOrder).toBe(3);
  });

  it('that is on order counts from the day after it comes: the bench is laid the day before the pour', () => {
    const shorts = (arrives: string) => needOf('F16', [have('F16', 0, 20, arrives)]).byPour.map(({ short }) => short);
    expect(shorts('2026-12-13')).toEqual([0, 0]);
    expect(shorts('2026-12-14')).toEqual([8, 0]);
    expect(shorts('2026-12-15')).toEqual([8, 11]);
  });

  it('that is on order without a day, or should have come, counts for no pour, yet is not ordered again', () => {
    for (const arrives of [null, '2026-11-24']) {
      const { byPour, toOrder } = needOf('F16', [have('F16', 0, 20, arrives)]);
      expect(byPour.map(({ short }) => short)).toEqual([8, 11]);
      expect(toOrder).toBe(0);
    }
  });

  it('adds up over several lines of the stock', () => {
    const stock = [have('F16', 3), have('F16', 2), have('F16', 0, 3, '2026-12-13'), have('F16L', 90)];
    expect(needOf('F16', stock)).toMatchObject({
      stock: { inStock: 5, onOrder: 3 },
      toOrder: 3,
      byPour: [{ short: 0 }, { short: 3 }],
    });
  });

  it.each([
    ['2026-11-29', false],
    ['2026-11-30', true],
  ])('short for the first pour can be ordered until 2026-11-29: on %s too late is %s', (today, isTooLate) => {
    expect(needOf('F16', [], today).byPour[0]).toMatchObject({ short: 8, orderBy: '2026-11-29', isTooLate });
  });

  it('that is not short is never too late', () => {
    expect(needOf('F16', [have('F16', 50)], '2026-12-10').byPour[0]).toMatchObject({ short: 0, isTooLate: false });
  });

  it('has no day to order by where the lead time is not known', () => {
    expect(needOf('bar 10 x 250', []).byPour[0]).toMatchObject({ short: 3, orderBy: null, isTooLate: false });
  });

  it('comes in whole packs', () => {
    // 20 nails and 1 spare; 21 less 15 is 6.
    expect(needOf('NAIL', [have('NAIL', 15)])).toMatchObject({ needed: 21, toOrder: 6, packs: 1 });
    expect(needOf('NAIL', [have('NAIL', 21)])).toMatchObject({ toOrder: 0, packs: 0 });
  });

  it('that no line of the stock names counts as none', () => {
    expect(needOf('F16', [])).toMatchObject({ stock: { inStock: 0, isListed: false }, toOrder: 11 });
  });
});

// By hand: 7 plates on Monday 2026-12-14, 3 the day after, back after 2 days, 10 % lost of 10 uses: 10 at once, 1 lost.
describe('what comes back', () => {
  it('is needed as often as it is out at once, with what is lost', () => {
    expect(needOf('PLATE-16', null)).toMatchObject({
      count: 10,
      spares: 0,
      reuse: { atOnce: 10, lost: 1 },
      needed: 11,
      byPour: [{ needed: 8 }, { needed: 11 }],
    });
  });

  // A board a casting of P1: two on Monday, back on Tuesday.
  it('is not needed twice where it is back in time', () => {
    expect(needOf('BOARD 2xM16 200x0', null)).toMatchObject({ count: 3, reuse: { atOnce: 2, lost: 0 }, needed: 2 });
  });

  it('is needed for the panel that takes most where no pour has a day', () => {
    const index = indexParts({ pours: [] });
    const needs = findNeeds(index, findJobParts(index), null, TODAY);
    // P1 takes 3 plates and P2 one: 3 at once, 10 % of 4 lost.
    expect(needs.find(({ kind }) => kind.id === 'PLATE-16')).toMatchObject({
      count: 4,
      reuse: { atOnce: 3, lost: 1 },
      needed: 4,
    });
  });
});

describe('pours before today', () => {
  it('have taken their parts from the stock already', () => {
    expect(needOf('F16', [have('F16', 4)], '2026-12-15')).toMatchObject({
      count: 3,
      spares: 1,
      needed: 4,
      byPour: [{ pour: 'T2', needed: 4, short: 0 }],
    });
  });

  it('still have out what comes back later', () => {
    // 7 of Monday and 3 of Tuesday, of which 10 % are lost.
    expect(needOf('PLATE-16', null, '2026-12-15')).toMatchObject({
      count: 3,
      reuse: { atOnce: 10, lost: 1 },
      byPour: [{ pour: 'T2', needed: 11 }],
    });
  });
});

describe('after the last pour', () => {
  it('nothing is needed, whatever is still out', () => {
    for (const { id, today } of [
      { id: 'PLATE-16', today: '2026-12-16' },
      { id: 'F16', today: '2026-12-16' },
    ])
      expect(needOf(id, [], today)).toMatchObject({ count: 0, spares: 0, needed: 0, toOrder: 0, byPour: [] });
  });

  it('parts of an earlier pour are no need of a later one that takes none', () => {
    const pieces = (panel: string) => [{ panel, serial: '1' }];
    const index = indexParts({
      panels: [samplePanel(), samplePanel({ key: 'p3', mark: 'P3' })],
      castIns: [
        sampleCastIn('1', 900, 500, { holding: 'NAILED' }),
        sampleCastIn('1', 900, 500, { key: 'i3', panel: 'P3', role: 'lifting', item: null, description: 'loop' }),
      ],
      connections: [],
      pours: [
        samplePour({ id: 'T1', date: '2026-12-14', pieces: pieces('P1') }),
        samplePour({ id: 'T2', date: '2026-12-15', pieces: pieces('P3') }),
      ],
    });
    const plate = findNeeds(index, findJobParts(index), [], '2026-12-15').find(({ kind }) => kind.id === 'PLATE-16');
    expect(plate).toMatchObject({ count: 0, reuse: { atOnce: 0, lost: 0 }, needed: 0 });
  });
});

describe('bolts for the site', () => {
  it('are to order for the job and short for no pour', () => {
    expect(needOf('bolt M16 x 35 8.8 galvanised', [])).toMatchObject({ count: 6, needed: 7, toOrder: 7, byPour: [] });
  });
});

describe('what is described in words only', () => {
  it('is held against the stock where the stock names it', () => {
    const id = 'duct: conduit box';
    expect(needOf(id, [])).toMatchObject({ stock: null, byPour: [{ short: 0 }, { short: 0 }] });
    expect(needOf(id, [have(id, 2)])).toMatchObject({ toOrder: 1, byPour: [{ short: 0 }, { short: 1 }] });
  });
});

it('takes a fraction of a day of lead time as a day', () => {
  const index = indexParts({
    parts: [{ id: 'NAIL', name: 'nail', kind: 'nail', reusable: false, leadTime_days: 1.5 }],
    ways: [{ id: 'NAILED', name: 'nailed', method: 'nail-on plate', parts: [{ part: 'NAIL', count: 1 }] }],
    castIns: [
      {
        key: 'i',
        id: '1',
        panel: 'P1',
        role: 'fixing',
        item: 'F16',
        face: 'outside',
        x_mm: 900,
        y_mm: 500,
        holding: 'NAILED',
      },
    ],
    connections: [],
    pours: [samplePour({ date: '2026-12-14' })],
  });
  const needs = findNeeds(index, findJobParts(index), [], TODAY);
  expect(needs.find(({ kind }) => kind.id === 'NAIL')!.byPour[0]!.orderBy).toBe('2026-12-11');
});
