import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeCanonical } from '../../src/job/canonical.ts';

describe('canonical JSON', () => {
  // RFC 8785, 3.2.2 and 3.2.3, recalled.
  it('is that of the example of RFC 8785', () => {
    const given = JSON.parse(
      String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`,
    );
    expect(writeCanonical(given)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  it('puts keys in the order of their UTF-16 units, as the RFC sorts them', () => {
    const given = { '\u20ac': 1, '\r': 2, '\ufb33': 3, '1': 4, '\ud83d\ude00': 5, '\u0080': 6, '\u00f6': 7 };
    expect([...writeCanonical(given).matchAll(/:(\d)/g)].map(([, value]) => value).join('')).toBe('2467153');
  });

  it('does not depend on the order of keys, and reads back as the same (property)', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const written = writeCanonical(value);
        expect(writeCanonical(turnRound(value))).toBe(written);
        expect(writeCanonical(JSON.parse(written))).toBe(written);
      }),
    );
  });

  it('leaves out what is undefined, and refuses what JSON cannot say', () => {
    expect(writeCanonical({ b: undefined, a: 1 })).toBe('{"a":1}');
    expect(() => writeCanonical({ a: Number.NaN })).toThrow('NaN is not a number of JSON');
  });
});

/** The same value with the keys of every object in reverse. */
function turnRound(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turnRound);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, entry]) => [key, turnRound(entry)]),
  );
}
