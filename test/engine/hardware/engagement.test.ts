import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  findFullStrengthEngagement,
  findStripLoads,
  type ThreadPair,
} from '../../../src/engine/hardware/engagement.ts';
import { diametralAllowance } from '../../../src/engine/hardware/thread-shear.ts';
import { findThread, type ThreadName, threadNames } from '../../../src/engine/hardware/threads.ts';

const pair = (name: ThreadName, threadClass: '6H' | '6AZ' | '6AX' = '6H', bodyDiameter: number | null = null) => {
  const thread = findThread(name);
  return { thread, allowance: diametralAllowance(thread, threadClass), bodyDiameter } satisfies ThreadPair;
};

describe('engagement for the full strength of the bolt', () => {
  // The source's own form (H2-04): L = 2 A_s/(π D1max (1/2 + (d2min − D1max)/(√3 P))), limits in mm as printed there.
  it.each([
    ['M10', 57.99, 8.676, 8.862, 1.5],
    ['M12', 84.267, 10.441, 10.679, 1.75],
    ['M16', 156.67, 14.21, 14.503, 2],
    ['M20', 244.79, 17.744, 18.164, 2.5],
    ['M24', 352.5, 21.252, 21.803, 3],
  ] as const)('is that of the formula for steels of one strength, %s', (name, As, D1, d2, P) => {
    const L = (2 * As) / (Math.PI * D1 * (1 / 2 + (d2 - D1) / (Math.sqrt(3) * P)));
    expect(findFullStrengthEngagement(pair(name), { bolt: 800, insert: 800 })! / L).toBeCloseTo(1, 4);
  });
  // By hand, M16: L = 12.007 mm; J = 417.55 · 800/(569.1 · 490) = 1.19787; J L = 14.38 mm. Insert of 700 MPa: J = 0.8385, no increase.
  it('is longer by J where the insert is the weaker', () => {
    expect(findFullStrengthEngagement(pair('M16'), { bolt: 800, insert: 490 })).toBeCloseTo(14.38, 2);
    expect(findFullStrengthEngagement(pair('M16'), { bolt: 800, insert: 700 })).toBeCloseTo(12.007, 2);
  });
  // By hand, M16 6AZ: strip area of the insert 491.75/16 = 30.734 mm²/mm; 156.67 · 800/(0.5 · 30.734 · 490) = 16.645 mm.
  it('is longer in an oversize thread', () => {
    expect(findFullStrengthEngagement(pair('M16', '6AZ'), { bolt: 800, insert: 490 })).toBeCloseTo(16.645, 2);
  });
  // By hand: body 24 around M16 counts 0.75348/√3 = 0.43502 instead of 0.5: 16.645 · 0.5/0.43502 = 19.131. A body of 40 is thick: von Mises
  // 0.897/√3 = 0.5179 is above 0.5, which stays.
  it('is longer in a thin wall, and not known in one below 1.4 d', () => {
    const steel = { bolt: 800, insert: 490 };
    expect(findFullStrengthEngagement(pair('M16', '6AZ', 24), steel)).toBeCloseTo(19.131, 2);
    expect(findFullStrengthEngagement(pair('M16', '6AZ', 40), steel)).toBeCloseTo(16.645, 2);
    expect(findFullStrengthEngagement(pair('M16', '6AZ', 22), steel)).toBeNull();
  });
});

describe('loads that strip a thread', () => {
  // By hand, M16 6H over 16 mm: 0.5 · 417.55 · 640 = 133 616 N; 0.5 · 569.1 · 350 = 99 593 N.
  it('agree with a hand calculation', () => {
    const loads = findStripLoads(pair('M16'), 16, { bolt: 640, insert: 350 })!;
    expect(loads.bolt).toBeCloseTo(133_616, -1);
    expect(loads.insert).toBeCloseTo(99_594, -1);
    // 6AZ: 355.8 and 491.75 mm² (see the strip areas): 0.5 · 355.8 · 640 = 113 856, 0.5 · 491.75 · 350 = 86 056 N.
    const oversize = findStripLoads(pair('M16', '6AZ'), 16, { bolt: 640, insert: 350 })!;
    expect(oversize.bolt / 113_856).toBeCloseTo(1, 3);
    expect(oversize.insert / 86_056).toBeCloseTo(1, 3);
    expect(findStripLoads(pair('M16', '6H', 20), 16, { bolt: 640, insert: 350 })).toBeNull();
  });
  it('never grow with oversize, and are at full strength what breaks the bolt', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...threadNames),
        fc.constantFrom('6AZ' as const, '6AX' as const),
        fc.integer({ min: 300, max: 1200 }),
        fc.integer({ min: 300, max: 1200 }),
        fc.constantFrom(null, 1.5, 2.5),
        (name, threadClass, bolt, insert, wall) => {
          const body = wall === null ? null : wall * findThread(name).diameter;
          const [normal, oversize] = [pair(name, '6H', body), pair(name, threadClass, body)];
          const [a, b] = [normal, oversize].map((one) => findStripLoads(one, 10, { bolt, insert })!);
          expect(b!.bolt).toBeLessThanOrEqual(a!.bolt);
          expect(b!.insert).toBeLessThanOrEqual(a!.insert);
          const full = findFullStrengthEngagement(oversize, { bolt, insert })!;
          expect(full).toBeGreaterThanOrEqual(findFullStrengthEngagement(normal, { bolt, insert })!);
          const at = findStripLoads(oversize, full, { bolt, insert })!;
          expect(Math.min(at.bolt, at.insert)).toBeCloseTo(oversize.thread.stressArea * bolt, 3);
        },
      ),
    );
  });
});
