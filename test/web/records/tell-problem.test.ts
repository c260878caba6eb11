import { describe, expect, it } from 'vitest';
import { type DeviceTroubles, tellProblem } from '../../../src/web/records/sync/tell-problem.ts';

const NONE: DeviceTroubles = {
  clock_s: 0,
  asides: 0,
  isForked: false,
  unread: 0,
  refused: null,
  withheld: null,
  fault: null,
  isPutBack: false,
  isOutdated: false,
};
const tell = (some: Partial<DeviceTroubles>) => tellProblem({ ...NONE, ...some });

describe('what a person must know of a device', () => {
  it('is nothing where all is well, or the server was never heard', () => {
    expect(tell({})).toBe(null);
    expect(tell({ clock_s: null })).toBe(null);
  });

  it('says how far the clock is off, and which way', () => {
    // Server's clock less the device's: a device that is ahead has less.
    for (const [clock_s, words] of [
      [-86_400, '1 day ahead'],
      [86_000, '1 day behind'],
      [-2 * 86_400, '2 days ahead'],
      [3_700, '1 hour behind'],
      [-7_300, '2 hours ahead'],
      [300, '5 minutes behind'],
      [-301, '5 minutes ahead'],
    ] as const)
      expect(tell({ clock_s }), String(clock_s)).toBe(
        `This device's clock is ${words}. It orders nothing, but the times on the records are wrong: set it.`,
      );
    for (const clock_s of [299, -299]) expect(tell({ clock_s }), String(clock_s)).toBe(null);
  });

  it('counts what was put aside and what cannot be read', () => {
    expect(tell({ asides: 1 })).toMatch(/^1 text was put aside/);
    expect(tell({ asides: 3 })).toMatch(/^3 texts were put aside/);
    expect(tell({ unread: 1 })).toMatch(/^1 record was written by a newer version/);
    expect(tell({ unread: 2 })).toMatch(/^2 records were written by a newer version/);
  });

  it('gives the reason of the server and of the device, and ends it as a sentence', () => {
    expect(tell({ refused: 'there is no room on the disk' })).toBe(
      'The server did not take everything: there is no room on the disk. It stays on this device and is sent again.',
    );
    expect(tell({ withheld: 'it was removed' })).toBe(
      'The server gives nothing new of this job: it was removed. What is written here is kept; it is asked again.',
    );
    expect(tell({ fault: 'There is no room left.' })).toBe(
      'This device did not take in everything: There is no room left. It is tried again.',
    );
  });

  it('says everything that is wrong, what keeps one from writing first', () => {
    const said = tell({ isOutdated: true, isForked: true, isPutBack: true, clock_s: -90_000, asides: 1 })!;
    const places = ['A newer version', 'clock is 1 day', '1 text was put aside', 'Another device wrote', 'put back to'];
    const found = places.map((words) => said.indexOf(words));
    expect(found.every((at) => at >= 0)).toBe(true);
    expect(found[0]).toBe(0);
    expect([...found.slice(0, 4)].sort((a, b) => a - b)).toEqual(found.slice(0, 4));
  });
});
