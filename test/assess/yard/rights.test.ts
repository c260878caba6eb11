import { describe, expect, it } from 'vitest';
import { ACTS, type Act, EXTENTS, type Extent, mayDo, RIGHTS } from '../../../src/assess/yard/rights.ts';
import type { Person, Role } from '../../../src/records/person.ts';

const ROLES = ['setter', 'checker', 'foreman', 'qa', 'design engineer', 'installer'] as const satisfies readonly Role[];

function personOf(role: Role | null, registration: string | null = 'No. 1'): Person {
  return { id: 'aaaaaaaaaaaa', name: 'A', roles: role === null ? [] : [role], registration };
}

/** The whole table, written a second time by hand: setter, checker, foreman, QA, design engineer, installer. */
const TABLE: readonly (readonly [Act, Extent | null, string])[] = [
  ['check', null, 'yes yes yes yes yes yes'],
  ['photograph', null, 'yes yes yes yes yes yes'],
  ['comment', null, 'yes yes yes yes yes yes'],
  ['correct', null, 'yes yes yes yes yes yes'],
  ['hold', null, 'yes yes yes yes yes yes'],
  ['ask to move or reject', null, 'yes yes yes yes yes yes'],
  ['record as poured', null, 'yes yes yes yes yes yes'],
  ['strip', null, 'yes yes yes yes yes yes'],
  ['uncover', null, 'yes yes yes yes yes yes'],
  ['settle a conflict', null, 'no yes no yes yes no'],
  ['accept', 'inside the limits', 'no no no yes yes no'],
  ['accept', 'beyond the limits', 'no no no no yes no'],
  ['accept', 'not measurable', 'no no no no yes no'],
  ['accept', 'wrong type', 'no no no no yes no'],
  ['accept', 'rejected', 'no no no no yes no'],
  ['clear', null, 'no no no yes no no'],
  ['clear with a condition', null, 'no no no yes no no'],
  ['override', null, 'no no yes yes no no'],
  ['scrap', null, 'no no yes yes no no'],
  ['re-mark', null, 'no yes no yes no no'],
  ['survey', null, 'yes yes yes yes yes yes'],
  ['decide on site', null, 'no no yes yes yes yes'],
  ['change the design', null, 'no no no no yes no'],
  ['tighten', null, 'yes yes yes yes yes yes'],
  ['seal', null, 'yes yes yes yes yes yes'],
  ['plan a pull test', null, 'no no no yes yes no'],
];

const CELLS = TABLE.flatMap(([act, extent, row]) =>
  row.split(' ').map((answer, place) => ({ act, extent, role: ROLES[place]!, may: answer === 'yes' })),
);

describe('the table of rights', () => {
  it('is tested whole', () => {
    expect(new Set(TABLE.map(([act]) => act))).toEqual(new Set(ACTS));
    expect(TABLE.flatMap(([act, extent]) => (act === 'accept' ? [extent] : []))).toEqual([...EXTENTS]);
    expect(Object.keys(RIGHTS).sort()).toEqual([...ACTS].sort());
    expect(CELLS.length).toBe(156);
  });
  it.each(CELLS)('$role, $act $extent: $may', ({ act, extent, role, may }) => {
    expect(mayDo(personOf(role), act, extent ?? undefined).may).toBe(may);
  });
  it.each(CELLS.filter(({ role, may }) => role === 'design engineer' && may))(
    'takes a design engineer without a registration for none: $act $extent',
    ({ act, extent }) => {
      const allowed = act === 'accept' ? RIGHTS.accept[extent ?? 'inside the limits'] : RIGHTS[act];
      const unregistered = personOf('design engineer', null);
      expect(mayDo(unregistered, act, extent ?? undefined).may).toBe(allowed === 'anyone named');
    },
  );
  it.each(ACTS)('lets nobody do anything who is not on the list: %s', (act) => {
    expect(mayDo(null, act).may).toBe(false);
  });
  it('gives a right by the role in which it is used', () => {
    const both = { ...personOf('foreman'), roles: ['foreman', 'qa'] as const };
    expect(mayDo(both, 'clear')).toEqual({ may: true, as: 'qa' });
    expect(mayDo(both, 'clear', undefined, 'foreman').may).toBe(false);
    expect(mayDo(both, 'clear', undefined, 'qa').may).toBe(true);
    expect(mayDo(personOf(null), 'check')).toEqual({ may: true, as: null });
    expect(mayDo(personOf('setter'), 'clear')).toEqual({ may: false, why: 'this is for QA to decide' });
  });
});
