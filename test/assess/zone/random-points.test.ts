import { describe, expect, it } from 'vitest';
import { shiftsOf, type ZoneSubject } from '../../../src/assess/zone/trace-position-zone.ts';
import { findLimit } from '../../../src/assess/zone/zone-oracle.ts';
import type { Point } from '../../../src/engine/geometry/point.ts';
import { makeRandom } from '../../../src/engine/tolerance/seeded-random.ts';
import { tries } from '../../long.ts';
import { distanceToRim, isInZone, mustTrace, siteOf } from './zone-sample.ts';

/** What limits it: the plate; bars; the product document's least edge distance; the end of what is covered; bars on three sides. */
const CASES: readonly (readonly [string, ZoneSubject])[] = [
  ['C15', 0],
  ['C15', 'group'],
  ['C03', 1],
  ['C22', 'group'],
  ['C34', 0],
  ['C50', 0],
];

/** The boundary is known to this [mm]; a place that near outside it may pass. */
const KNOWN = 0.25;

const COUNT = tries(500, 120);

describe('a position zone of the demo job', () => {
  for (const [mark, subject] of CASES)
    it(`${mark} ${subject}: ${COUNT} random points inside pass, ${COUNT} outside fail, by the full check`, () => {
      const site = siteOf(mark);
      const zone = mustTrace(site, subject);
      expect(zone.checks).toBeLessThanOrEqual(2000);
      const random = makeRandom(7);
      const far = Math.max(...zone.boundary.map(([x, y]) => Math.max(Math.abs(x), Math.abs(y)))) + 3;
      // Where the window cut it, what is beyond was not looked at.
      const reach = Math.min(far, zone.window);
      const draw = (): Point => [reach * (2 * random() - 1), reach * (2 * random() - 1)];
      const [inside, outside]: [Point[], Point[]] = [[], []];
      for (let tries = 0; tries < 200_000 && (inside.length < COUNT || outside.length < COUNT); tries++) {
        const at = draw();
        if (isInZone(zone, at)) inside.push(at);
        else if (distanceToRim(zone, at) > KNOWN) outside.push(at);
      }
      const passes = (at: Point) => findLimit(site, shiftsOf(site, subject, at)) === null;
      expect([inside.length, outside.length].map((count) => Math.min(count, COUNT))).toEqual([COUNT, COUNT]);
      expect(inside.slice(0, COUNT).filter((at) => !passes(at))).toEqual([]);
      expect(outside.slice(0, COUNT).filter(passes)).toEqual([]);
    });
});
