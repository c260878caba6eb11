import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepNearest, measureToEdges, measureToNeighbour } from '../../../src/drawing/screen/near-distances.ts';
import { laySceneItems, layScenePlate, orderStops } from '../../../src/drawing/screen/panel-scene.ts';
import { lookAt, placeDrawn, placeOnDocument, stepOnFace } from '../../../src/drawing/screen/panel-sight.ts';
import { findSnap, makeSnapField } from '../../../src/drawing/screen/snap.ts';
import { prepareRegion } from '../../../src/engine/geometry/region.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { demo } from '../../job/edit/demo.ts';

const index = indexJob(demo);
const panels = demo.job.panels;
const coordinate = fc.double({ min: -500, max: 7000, noNaN: true });

describe('two sights of a panel', () => {
  it('give back the place that they were given, in each reading', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...panels),
        fc.constantFrom('drawn' as const, 'form' as const),
        coordinate,
        coordinate,
        (panel, kind, x, y) => {
          const sight = lookAt(panel, kind);
          for (const [there, back] of [
            [sight.toView, sight.toDrawn],
            [sight.toRead, sight.fromRead],
          ] as const) {
            const [bx, by] = back(there([x, y]));
            expect(bx).toBeCloseTo(x, 6);
            expect(by).toBeCloseTo(y, 6);
          }
        },
      ),
    );
  });

  it('read nought at the datum corner in the form', () => {
    for (const panel of panels) {
      const sight = lookAt(panel, 'form');
      const [x, y] = sight.toRead(sight.toDrawn(sight.originAt));
      expect([Math.abs(x), Math.abs(y)]).toEqual([0, 0]);
    }
  });

  it('put an edge insert on its side, and move it along that side alone', () => {
    const panel = index.panels.get('P07')!;
    const castIn = index.castInsOf('P07').find(({ face }) => face === 'edge')!;
    const [x, y] = placeDrawn(panel, castIn);
    // Edge 2 of a rectangle runs back along its top.
    const top = Math.max(...panel.outline_mm.map(([, height]) => height));
    expect(y).toBe(top);
    expect(placeOnDocument(panel, 'edge', castIn.edge!, [x, y])[0]).toBeCloseTo(castIn.x_mm, 9);
    const [along, across] = stepOnFace(panel, castIn, [10, 25]);
    expect(along).toBeCloseTo(-10, 9);
    expect(across).toBe(0);
  });
});

describe('the scene of a panel', () => {
  it('has every hole of a plate where its insert is, in both sights', () => {
    for (const panel of panels)
      for (const kind of ['drawn', 'form'] as const) {
        const sight = lookAt(panel, kind);
        const items = new Map(laySceneItems(index, panel, sight).map((item) => [item.castIn.id, item]));
        for (const connection of index.connectionsOf(panel.mark)) {
          const plate = layScenePlate(index, panel, sight, connection);
          if (plate === null || connection.face === 'edge') continue;
          const holes = index.fixtureOf(connection)!.holes;
          for (const { insert, hole } of connection.inserts) {
            const at = plate.holes[holes.findIndex(({ id }) => id === hole)]!.at;
            const { at: place } = items.get(insert)!;
            // A bolt stands within its hole.
            expect(Math.hypot(at[0] - place[0], at[1] - place[1])).toBeLessThan(20);
          }
        }
      }
  });

  it('walks by each item once, a connection as one', () => {
    for (const panel of panels) {
      const items = laySceneItems(index, panel, lookAt(panel, 'drawn'));
      const stops = orderStops(panel, items);
      expect(stops.flatMap(({ ids }) => ids).sort()).toEqual(items.map(({ castIn }) => castIn.id).sort());
      expect(stops.filter(({ connection }) => connection !== null)).toHaveLength(
        index.connectionsOf(panel.mark).length,
      );
    }
  });
});

describe('distances', () => {
  /** 1000 × 600 with an opening from (400, 200) to (600, 400). */
  const region = prepareRegion(
    [
      [0, 0],
      [1000, 0],
      [1000, 600],
      [0, 600],
    ],
    [
      [
        [400, 200],
        [600, 200],
        [600, 400],
        [400, 400],
      ],
    ],
  );
  const same = (step: readonly [number, number]) => step;

  it('go from the outermost of several to the first side that is met', () => {
    const found = measureToEdges(
      region,
      [
        [200, 300],
        [300, 250],
      ],
      same,
    );
    const lengths = Object.fromEntries(found.map(({ toward, length }) => [toward, length]));
    // To the right the opening is met first, from the insert at x = 300.
    expect(lengths).toEqual({ left: 200, right: 100, below: 250, above: 300 });
    expect(keepNearest(found).map(({ toward }) => toward)).toEqual(['right', 'below']);
  });

  it('turn with the view', () => {
    const found = measureToEdges(region, [[200, 300]], ([x, y]) => [-x, y]);
    expect(Object.fromEntries(found.map(({ toward, length }) => [toward, length]))).toMatchObject({
      left: 200,
      right: 200,
    });
    expect(found.find(({ toward }) => toward === 'right')?.to[0]).toBe(0);
  });

  it('to a neighbour are between the two that are nearest', () => {
    const found = measureToNeighbour(
      [
        [0, 0],
        [100, 0],
      ],
      [
        [130, 40],
        [500, 0],
      ],
    );
    expect(found).toEqual({ from: [100, 0], to: [130, 40], length: 50 });
    expect(measureToNeighbour([[0, 0]], [])).toBeNull();
  });
});

describe('rests', () => {
  const box = { minX: 0, minY: 0, maxX: 1000, maxY: 600 };
  const field = makeSnapField([[300, 100]], box, 5, 8);

  it('are on other inserts, as far from the opposite side, in the middle, else on the grid', () => {
    expect(findSnap(field, [[303, 462]], [0, 0])).toEqual({
      by: [-3, -2],
      guides: [{ axis: 'x', kind: 'in line', at: 300 }],
    });
    expect(findSnap(field, [[704, 211]], [0, 0]).guides).toEqual([{ axis: 'x', kind: 'mirrored', at: 700 }]);
    expect(findSnap(field, [[120, 303]], [0, 0])).toEqual({
      by: [0, -3],
      guides: [{ axis: 'y', kind: 'middle', at: 300 }],
    });
  });

  it('count sides from where they are', () => {
    const shifted = makeSnapField([[300, 100]], { ...box, minX: 100, maxX: 1100 }, 5, 8);
    // 200 mm from the side at 100, so 200 mm from the side at 1100.
    expect(findSnap(shifted, [[903, 212]], [0, 0]).guides).toEqual([{ axis: 'x', kind: 'mirrored', at: 900 }]);
  });

  it('take a group by the insert that is nearest to a line, and by its middle', () => {
    const places = [
      [402, 200],
      [602, 200],
    ] as const;
    expect(findSnap(field, places, [0, 0])).toMatchObject({ by: [-2, 0], guides: [{ axis: 'x', kind: 'middle' }] });
  });

  it('count the grid from where coordinates are counted', () => {
    const off = findSnap(field, [[121, 210]], [2.5, 0]);
    expect(121 + off.by[0]).toBe(122.5);
  });

  it('never pull further than their reach, and not at all without one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 600, noNaN: true }),
        (x, y) => {
          const { by } = findSnap(field, [[x, y]], [0, 0]);
          expect(Math.max(Math.abs(by[0]), Math.abs(by[1]))).toBeLessThanOrEqual(8);
          expect(findSnap({ ...field, grid: 0, reach: -1 }, [[x, y]], [0, 0])).toEqual({ by: [0, 0], guides: [] });
        },
      ),
    );
  });
});
