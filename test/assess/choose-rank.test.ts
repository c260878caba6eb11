import { describe, expect, it } from 'vitest';
import { NO_CHANGES, type PassingInsert } from '../../src/assess/choose/choice.ts';
import { findDelivery, rankInserts } from '../../src/assess/choose/rank.ts';
import { makeItem, namesOf, readJob } from './choosing.ts';

/** An insert that passes, like all others but for the changes. */
function passing(id: string, changes: Partial<PassingInsert> = {}): PassingInsert {
  return {
    item: readJob({ items: [makeItem('F16', 103), makeItem(id, 103)] }).library.catalogue.items[1]!,
    ratio: 0.5,
    governing: { mode: 'concrete-cone', combination: 'wind' },
    changes: NO_CHANGES,
    isAsDesigned: false,
    inPanel: 0,
    inJob: 0,
    delivery: { kind: 'not asked' },
    lookAlikes: [],
    cost: { amount: 10, currency: 'EUR' },
    consequences: [],
    notes: [],
    ...changes,
  };
}

const euro = (amount: number) => ({ cost: { amount, currency: 'EUR' } });
const moved = { changes: { ...NO_CHANGES, move: { dx: 5, dy: 0, beyond: 0 } } };
const twice = {
  changes: { ...NO_CHANGES, move: { dx: 5, dy: 0, beyond: 0 }, boltClass: { from: '4.6', to: '8.8' } as const },
};
const inTime = { delivery: { kind: 'in time', leadTime_days: 14 } } as const;

/** Each criterion with a better and a worse value, in the order in which they count. */
const CRITERIA: readonly (readonly [what: string, better: Partial<PassingInsert>, worse: Partial<PassingInsert>])[] = [
  ['as it stands', { isAsDesigned: true }, {}],
  ['no change before one', {}, moved],
  ['one change before two', moved, twice],
  ['in the panel before only in the job', { inPanel: 1, inJob: 1 }, { inJob: 9 }],
  ['in the job before a new kind', { inJob: 1 }, {}],
  ['in time before late', inTime, { delivery: { kind: 'late', leadTime_days: 30, by_days: 2 } }],
  ['in time before a lead time that is not known', inTime, { delivery: { kind: 'not known' } }],
  ['no look-alike before one', {}, { lookAlikes: ['F16-75'] }],
  ['cheaper', euro(9.9), {}],
  ['a price before none', euro(99), { cost: null }],
  ['less used', { ratio: 0.4 }, {}],
];

describe('the ranking', () => {
  it.each(CRITERIA)('%s', (_, better, worse) => {
    // The names alone would put them the other way round.
    const [a, b] = [passing('B', better), passing('A', worse)];
    expect(namesOf(rankInserts([a, b]))).toEqual(['B', 'A']);
    expect(namesOf(rankInserts([b, a]))).toEqual(['B', 'A']);
  });

  it('lets each criterion outweigh all that come after it', () => {
    for (const [i, [what, better, worse]] of CRITERIA.entries()) {
      // The later ones speak for the other insert, those about another property of it.
      const about = new Set([...Object.keys(better), ...Object.keys(worse)]);
      const rest = CRITERIA.slice(i + 1).filter(([, good, bad]) =>
        [...Object.keys(good), ...Object.keys(bad)].every((key) => !about.has(key)),
      );
      const first = Object.assign({}, ...rest.map(([, , bad]) => bad), better);
      const second = Object.assign({}, ...rest.map(([, good]) => good), worse);
      expect(namesOf(rankInserts([passing('A', second), passing('B', first)])), what).toEqual(['B', 'A']);
    }
  });

  it('goes by name where all is equal, whatever the order of the catalogue', () => {
    const all = ['C', 'A', 'B'].map((id) => passing(id));
    expect(namesOf(rankInserts(all))).toEqual(['A', 'B', 'C']);
    expect(namesOf(rankInserts([...all].reverse()))).toEqual(['A', 'B', 'C']);
  });

  it('does not compare prices in several currencies: the less used comes first, no price last', () => {
    const dollar = passing('D', { cost: { amount: 1, currency: 'USD' }, ratio: 0.6 });
    const free = passing('F', { cost: null, ratio: 0.1 });
    expect(namesOf(rankInserts([dollar, passing('E', { ratio: 0.5 }), free]))).toEqual(['E', 'D', 'F']);
  });
});

describe('what can be had by the pour', () => {
  it('is a lead time of at most the days that are left', () => {
    expect(findDelivery(14, 14)).toEqual({ kind: 'in time', leadTime_days: 14 });
    expect(findDelivery(14, 13)).toEqual({ kind: 'late', leadTime_days: 14, by_days: 1 });
    expect(findDelivery(0, 0)).toEqual({ kind: 'in time', leadTime_days: 0 });
  });

  it('is not known without a lead time, and not asked without a day', () => {
    expect(findDelivery(null, 14)).toEqual({ kind: 'not known' });
    expect(findDelivery(14, null)).toEqual({ kind: 'not asked' });
    expect(findDelivery(null, null)).toEqual({ kind: 'not asked' });
  });
});
