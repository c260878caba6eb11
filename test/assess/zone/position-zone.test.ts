import { describe, expect, it } from 'vitest';
import { overlayPlaces } from '../../../src/assess/live/live-connection.ts';
import { setOutPanel } from '../../../src/assess/set-out/set-out-panel.ts';
import { findPlacedFindings } from '../../../src/assess/yard/placed-findings.ts';
import { findPositionBox } from '../../../src/assess/zone/find-box.ts';
import { findObstacle } from '../../../src/assess/zone/find-obstacle.ts';
import { shiftsOf, tracePositionZone } from '../../../src/assess/zone/trace-position-zone.ts';
import { assessAt, findLimit, moveMembers } from '../../../src/assess/zone/zone-oracle.ts';
import { sketchZone } from '../../../src/drawing/sketch/zone-sketch.ts';
import type { Point, Polygon } from '../../../src/engine/geometry/point.ts';
import { drawJointly } from '../../../src/engine/tolerance/joint-draws.ts';
import { makeRandom } from '../../../src/engine/tolerance/seeded-random.ts';
import type { Connection } from '../../../src/job/documents/connection.ts';
import { demoFile } from '../yard/yard-sample.ts';
import { mustTrace, siteOf } from './zone-sample.ts';

/** The second of two holes a slot along the line between them, as long as it is given [mm]. */
const slotted =
  (slot_mm: number) =>
  (connection: Connection): Connection => {
    const { fixture } = connection;
    if (fixture === null) throw new Error('no plate');
    const [first, second] = fixture.holes.map(({ at_mm }) => at_mm) as [Point, Point]; // two holes
    const slotAngle_deg = (Math.atan2(second[1] - first[1], second[0] - first[0]) * 180) / Math.PI;
    const holes = fixture.holes.map((hole, k) => (k === 0 ? hole : { ...hole, slot_mm, slotAngle_deg }));
    return { ...connection, fixture: { ...fixture, holes } };
  };

/** Loads times a factor. */
const loaded =
  (times: number) =>
  (connection: Connection): Connection => {
    const { actions } = connection;
    if (actions.kind !== 'loads') return connection;
    const combinations = actions.combinations.map((one) => ({
      ...one,
      N_kN: times * one.N_kN,
      Vx_kN: times * one.Vx_kN,
      Vy_kN: times * one.Vy_kN,
      Mx_kNm: times * one.Mx_kNm,
      My_kNm: times * one.My_kNm,
      T_kNm: times * one.T_kNm,
    }));
    return { ...connection, actions: { ...actions, combinations } };
  };

const reachOf = (ring: Polygon, [ux, uy]: Point) => Math.max(...ring.map(([x, y]) => ux * x + uy * y));
const WAYS: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
];

describe('a position zone', () => {
  it('one insert of two: where the plate goes on is known in closed form', () => {
    // C03: two inserts, holes that leave 1 mm all round. With the other as designed the plate goes on as long as the two are no farther
    // from their distance apart than both clearances: 2 mm along the line between them.
    const { reaches } = mustTrace(siteOf('C03'), 0);
    const [left, right, down, up] = reaches.map(({ reach }) => reach);
    expect([left, right].every((reach) => Math.abs(reach! - 2) < 0.05)).toBe(true);
    expect([down, up].every((reach) => reach! > 2.5)).toBe(true);
    expect(reaches.slice(0, 2).map(({ limit }) => limit?.kind)).toEqual(['plate fit', 'plate fit']);
  });

  it('is symmetric where the connection is', () => {
    // C14: four inserts in a square far from every edge; the plate alone limits each, alike.
    const site = siteOf('C14');
    const zones = site.members.map((_, at) => mustTrace(site, at).boundary);
    const [least, most] = [Math.min, Math.max].map((pick) =>
      pick(...zones.flatMap((ring) => WAYS.map((way) => reachOf(ring, way)))),
    ) as [number, number]; // two functions
    expect(most - least).toBeLessThan(0.15);
  });

  it('of a handed partner it is the mirror image', () => {
    const [own, partner] = ['C50', 'C50-H'].map((mark) => mustTrace(siteOf(mark), 0).boundary) as [Polygon, Polygon];
    for (const [x, y] of WAYS) expect(reachOf(partner, [-x, y])).toBeCloseTo(reachOf(own, [x, y]), 0);
  });

  it('more load never widens it', () => {
    const [light, heavy] = [2, 2.5].map((times) => mustTrace(siteOf('C05', loaded(times)), 'group').boundary);
    for (const way of WAYS) expect(reachOf(heavy!, way)).toBeLessThanOrEqual(reachOf(light!, way) + 0.25);
    expect(reachOf(heavy!, [1, 0])).toBeLessThan(reachOf(light!, [1, 0]) - 1);
  });

  it('ends where the standard does, whatever the ratio beyond', () => {
    // C10 stands where the edge begins to run on at 74.9°: to the left it is not covered, and with more load it fails there too.
    const { boundary, reaches } = mustTrace(siteOf('C10', loaded(3.4)), 'group');
    expect(reachOf(boundary, [-1, 0])).toBeLessThan(0.3);
    expect(reaches[0]).toMatchObject({ toward: 'smaller x', reach: 0 });
    expect(reaches[1]!.reach).toBeGreaterThan(2);
  });

  it('is drawn as one sees the face: what lies at greater x of the drawing is left on the other face', () => {
    const { connection, panel } = siteOf('C50');
    const zone = mustTrace(siteOf('C50'), 0);
    const sketch = sketchZone(panel, connection, zone, null);
    const isMirrored = connection.face !== panel.drawnFace;
    expect(isMirrored).toBe(true);
    const right = zone.reaches.find(({ toward }) => toward === 'greater x')!;
    expect(sketch.reaches.find(({ side }) => side === 'left')?.reach).toBe(right.reach);
    expect(Math.max(...sketch.boundary.map(([x]) => -x))).toBe(reachOf(zone.boundary, [1, 0]));
    expect(Math.max(...sketch.boundary.map(([, y]) => y))).toBe(reachOf(zone.boundary, [0, 1]));
  });

  it('none around a design that does not hold, with the reason', () => {
    const of = (mark: string) => tracePositionZone(siteOf(mark), 0);
    expect(of('C02')).toMatchObject({ kind: 'none', limit: { kind: 'strength', answer: { state: 'fails' } } });
    expect(of('C08')).toMatchObject({ kind: 'none', limit: { answer: { state: 'strength not checked' } } });
    expect(of('C12')).toMatchObject({ kind: 'none', limit: { answer: { state: 'not covered' } } });
    expect(findPositionBox(siteOf('C08')).kind).toBe('none');
  });

  it('what is in the way is what the judging of a placed insert finds', () => {
    const random = makeRandom(5);
    let [met, free] = [0, 0];
    for (const mark of ['C24', 'C50', 'C22']) {
      const site = siteOf(mark);
      const { index, panel, region, members } = site;
      const setOut = setOutPanel(index, panel.mark, null);
      for (let k = 0; k < 14; k++) {
        const shift: Point = [60 * (random() - 0.5), 60 * (random() - 0.5)];
        const moved = moveMembers(site, shiftsOf(site, 0, shift));
        const [castIn] = moved.castIns;
        const found = findPlacedFindings({
          ...{ index, moved: overlayPlaces(index, moved.castIns), bed: null, setOut, region },
          ...{ item: setOut.items.find((one) => one.castIn.id === members[0]!.id)!, castIn: castIn!, level: null },
        });
        expect(findObstacle(site, moved) === null, `${mark} ${shift} ${found}`).toBe(found.length === 0);
        if (found.length === 0) free += 1;
        else met += 1;
      }
    }
    expect(Math.min(met, free)).toBeGreaterThan(4);
  });
});

describe('the box of a connection', () => {
  it('is 0 where the plate lets no whole mm in at all inserts at once, and tells the tenths', () => {
    // Four holes with 1 mm all round: a square of ± 0.7 mm has its corners 0.99 mm away.
    expect(findPositionBox(siteOf('C15'))).toMatchObject({ within: 0, tenths: 0.7, limit: { kind: 'plate fit' } });
  });

  it('holds at all corners and at places drawn anew; the next does not', () => {
    const site = siteOf('C03', slotted(16));
    const box = findPositionBox(site);
    if (box.kind === 'none') throw new Error('no box');
    // Beside each other the plate may turn by 1°, along the line the slot lets them be.
    expect(box.within).toBeGreaterThanOrEqual(2);
    expect(box.checks).toBeLessThanOrEqual(2000);
    expect(box.worst.answer.state).toBe('passes');
    const at = (half: number, shares: Float64Array) =>
      site.members.map((_, k): Point => [half * shares[2 * k]!, half * shares[2 * k + 1]!]);
    const failing = (half: number, draws: readonly Float64Array[]) =>
      draws.filter((shares) => findLimit(site, at(half, shares)) !== null).length;
    expect(failing(box.within, drawJointly(2, 300, 99))).toBe(0);
    const corners = [-1, 1].flatMap((a) => [-1, 1].map((b) => Float64Array.from([a, a, b, b])));
    expect(failing(box.within, corners)).toBe(0);
    expect(failing(box.within + 1, corners)).toBeGreaterThan(0);
  });

  it('shrinks by strength where strength ends it', () => {
    // One insert near where the member steps back: what is covered ends 12.5 mm away.
    const box = findPositionBox(siteOf('C34'));
    expect(box).toMatchObject({ kind: 'box', limit: { kind: 'strength' } });
    if (box.kind === 'none') throw new Error('no box');
    expect(box.within).toBeGreaterThan(5);
    expect(box.within).toBeLessThanOrEqual(12);
  });
});

describe('inserts elsewhere', () => {
  it('with a plate that follows them, load and all, nothing changes in the plate', () => {
    const site = siteOf('C15', undefined, demoFile());
    const ratio = (shift: Point) => assessAt(site, moveMembers(site, shiftsOf(site, 'group', shift))).ratio!;
    // The load that stays where it was drawn is the worse, either way.
    expect(ratio([10, 0])).toBeGreaterThan(ratio([0, 0]));
    expect(ratio([-10, 0])).toBeGreaterThan(ratio([0, 0]));
  });
});
