// Runs every case; sources and tolerances come with the entries in data/.

import { describe, expect, it } from 'vitest';
import { CASES } from './all-cases.ts';
import { ENTRIES } from './entry.ts';
import { isForLater, NOT_USED, VALUES_NOT_USED } from './not-run.ts';
import { runCase } from './published.ts';

describe('published values', () => {
  it.each(CASES.map((one) => [`${one.entry} (${one.how})`, one] as const))('%s', (_, one) => {
    const outside = runCase(one)
      .filter((row) => !row.isWithin)
      .map(
        (row) =>
          `${row.value.name}: printed ${row.value.value} ${row.value.unit}, computed ${row.computed}, allowed ±${row.tolerance}`,
      );
    expect(outside).toEqual([]);
  });

  it('leaves no value out without a reason', () => {
    const unexplained = ENTRIES.flatMap((entry) => {
      const { id, published } = entry;
      if (isForLater(entry) || NOT_USED[id] !== undefined) return [];
      const computed = new Set(CASES.filter((one) => one.entry === id).flatMap((one) => Object.keys(one.values)));
      const lost = published.filter(({ name }) => !computed.has(name) && VALUES_NOT_USED[id]?.[name] === undefined);
      return published.length === 0 ? [id] : lost.map(({ name }) => `${id}: ${name}`);
    });
    expect(unexplained).toEqual([]);
  });

  it('gives a reason only for what is there and not computed', () => {
    const ids = new Set(ENTRIES.map(({ id }) => id));
    const run = new Set(CASES.map(({ entry }) => entry));
    const whole = Object.keys(NOT_USED);
    expect(whole.filter((id) => !ids.has(id) || run.has(id))).toEqual([]);
    expect(ENTRIES.filter((entry) => isForLater(entry) && run.has(entry.id))).toEqual([]);
    const parts = Object.entries(VALUES_NOT_USED).flatMap(([id, values]) =>
      Object.keys(values).map((name) => ({ id, name })),
    );
    const stale = parts.filter(
      ({ id, name }) =>
        !ENTRIES.some((entry) => entry.id === id && entry.published.some((value) => value.name === name)) ||
        CASES.some((one) => one.entry === id && one.values[name] !== undefined),
    );
    expect(stale).toEqual([]);
  });
});
