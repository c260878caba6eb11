import fc from 'fast-check';
import { beforeAll, expect, test, vi } from 'vitest';

type Units = typeof import('../../src/web/parts/units.ts');

/** The module reads what this person chose before; Node has no such store. */
let module: Units;
beforeAll(async () => {
  const kept = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
  });
  module = await import('../../src/web/parts/units.ts');
});

function inUnits<T>(system: 'metric' | 'US', what: () => T): T {
  module.units.value = system;
  return what();
}

// Exact by definition (NIST SP 811): 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N.
test.each([
  ['length', 25.4, '1 in'],
  ['length', 3048, '120 in'],
  ['length', 92.075, '3-5/8 in'],
  ['length', 6.35, '1/4 in'],
  ['length', -12.7, '−1/2 in'],
  ['length', 110, '4.33 in'],
  ['force', 4.4482216152605, '1 kip'],
  ['stress', 27.579, '4000 psi'],
  ['stress', 355, '51\u202f490 psi'],
  ['moment', 1.3558179483, '1 kip·ft'],
] as const)('a %s of %f of a document reads as %s', (quantity, value, text) => {
  expect(inUnits('US', () => module.writeQuantity(quantity, value))).toBe(text);
});

test.each([
  ['3-5/8', 92.075],
  ['3 5/8', 92.075],
  ['11/4', 69.85],
  [`10'`, 3048],
  [`3'-4 1/2"`, 1028.7],
  ['-1/2', -12.7],
  ['40.5', 1028.7],
  ['100 mm', 100],
])('inches typed as %s', (typed, value) => {
  expect(inUnits('US', () => module.readQuantity('length', typed))).toEqual({ ok: true, value });
});

test.each([
  ['12,5', 12.5],
  ['12.5 mm', 12.5],
  ['−40', -40],
  ['4 in', 101.6],
])('millimetres typed as %s', (typed, value) => {
  expect(inUnits('metric', () => module.readQuantity('length', typed))).toEqual({ ok: true, value });
});

test.each(['', 'x', '1..2', '1e5', '3/0', '12 kg', 'NaN', 'Infinity'])('“%s” is no length', (typed) => {
  for (const system of ['metric', 'US'] as const)
    expect(inUnits(system, () => module.readQuantity('length', typed))).toMatchObject({ ok: false });
});

test('a force says as much as its size lets it', () => {
  const write = (value: number) => inUnits('metric', () => module.writeQuantity('force', value));
  expect([0, 0.1234, 1.234, 12.34, 123.4, 1234].map(write)).toEqual([
    '0 kN',
    '0.12 kN',
    '1.23 kN',
    '12.3 kN',
    '123 kN',
    '1234 kN',
  ]);
});

test('areas have their thousands set apart, and are read so too', () => {
  const shown = inUnits('metric', () => module.writeValue('area', 238_144));
  expect(shown).toBe('238\u202f144');
  expect(inUnits('metric', () => module.readQuantity('area', shown))).toEqual({ ok: true, value: 238_144 });
});

test('what is shown in a field and typed again unchanged is the same value, in sixteenths of an inch and in tenths of a millimetre', () => {
  fc.assert(
    fc.property(fc.integer({ min: -4000, max: 40_000 }), (count) => {
      const inch = (count / 16) * 25.4;
      const typed = inUnits('US', () => module.readQuantity('length', module.writeValue('length', inch)));
      expect(typed.ok && Math.abs(typed.value - inch) < 1e-6).toBe(true);
      const tenth = count / 10;
      const metric = inUnits('metric', () => module.readQuantity('length', module.writeValue('length', tenth)));
      expect(metric.ok && Math.abs(metric.value - tenth) < 1e-9).toBe(true);
    }),
  );
});
