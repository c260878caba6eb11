import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explainAnchorage, findResistances, prepare } from '../../../src/engine/checks/anchorage.ts';
import { findShearAreas, findTensionAreas } from '../../../src/engine/checks/failure-areas.ts';
import type { Row } from '../../../src/engine/checks/result.ts';
import type { Point, Polygon } from '../../../src/engine/geometry/point.ts';
import { peerVisibleArea } from '../geometry/faces.ts';
import { load, makeGroup, rectangle } from './groups.ts';
import { anyCase, type Case, moveCase } from './random-groups.ts';

function measureRings(rings: readonly Polygon[]): number {
  let twice = 0;
  for (const ring of rings)
    ring.forEach(([x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length]!;
      twice += x * ny - y * nx;
    });
  return twice / 2;
}

/** The value of a quantity in the steps of a row. */
function quantityOf({ steps }: Row, symbol: string): number {
  const found = steps.find((step) => step.kind === 'quantity' && step.symbol === symbol);
  if (found === undefined) throw new Error(`no ${symbol} in the steps`);
  return found.value;
}

const movedCase: fc.Arbitrary<Case> = fc
  .tuple(anyCase, fc.double({ min: 0, max: 6, noNaN: true }), fc.boolean())
  .map(([one, turn, isMirrored]) => moveCase(one, turn, isMirrored, [1234.5, -987.25]));

describe('areas in tension', () => {
  it('are those of the check, their rings enclose them, and so does a general polygon library', () => {
    fc.assert(
      fc.property(fc.oneof(anyCase, movedCase), ({ group, actions }) => {
        const p = prepare(group);
        const rows = explainAnchorage(p, actions, true).rows.filter(({ design }) => design !== null);
        for (const mode of ['concrete-cone', 'splitting'] as const)
          for (const row of rows.filter((one) => one.mode === mode)) {
            const areas = findTensionAreas(p, actions, mode, row.direction!);
            const found = areas.find(({ inserts }) => inserts.join() === row.inserts.join())!;
            expect(found.area).toBe(quantityOf(row, 'A_c_N'));
            expect(Math.abs(measureRings(found.rings) - found.area)).toBeLessThan(1e-6 * found.area);
            if (group.member.outline === null) continue;
            const points = found.inserts.map((id): Point => {
              const { x, y } = group.positions.find((one) => one.id === id)!;
              return [x, y];
            });
            const [ux, uy] = [Math.cos(row.direction!), Math.sin(row.direction!)];
            const { outline, openings } = group.member;
            const peer = peerVisibleArea({ outline, openings, points, half: found.half, ux, uy });
            expect(Math.abs(peer - found.area)).toBeLessThan(1e-6 * found.area);
          }
      }),
      { numRuns: 300 },
    );
  });

  it('are of all inserts where no action is given, and none where nothing pulls', () => {
    const group = makeGroup({
      outline: rectangle(0, 0, 3000, 3000),
      at: [
        [300, 300],
        [400, 300],
      ],
    });
    const p = prepare(group);
    const [all] = findTensionAreas(p, null, 'concrete-cone', 0);
    expect(all!.inserts).toEqual(group.positions.map(({ id }) => id));
    expect(findTensionAreas(p, load([0, 500, 0], [0, 500, 0]), 'concrete-cone', 0)).toEqual([]);
    expect(findTensionAreas(p, load([500, 0, 0], [0, 0, 0]), 'concrete-cone', 0)[0]!.inserts).toHaveLength(1);
  });

  it('lie along the axis that the check tells, where two axes give the same area', () => {
    // An insert on the middle line of a wedge of 120 degrees, 150 mm from both of its sides, which run at 30 degrees and at -30.
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const apex = -150 / c;
    const outline: Polygon = [
      [0, apex],
      [2000, apex + (2000 * s) / c],
      [2000, 4000],
      [-2000, 4000],
      [-2000, apex + (2000 * s) / c],
    ];
    const p = prepare(makeGroup({ outline, at: [[0, 0]], thickness: 300, insert: { embedment: 110 } }));
    for (const sense of [1, -1]) {
      const [{ rings, half }] = findTensionAreas(p, load([1000, 0, 0]), 'concrete-cone', (sense * Math.PI) / 6) as [
        ReturnType<typeof findTensionAreas>[number],
      ];
      // The square's corner farthest from the sides, turned by the axis.
      const corner = [sense * half * (c - s), half * (c + s)];
      const near = rings.flat().some(([x, y]) => Math.hypot(x - corner[0]!, y - corner[1]!) < 1e-6);
      expect(near).toBe(true);
    }
  });
});

describe('areas in shear', () => {
  it('are those of the check: the stretches along the edge times the height', () => {
    fc.assert(
      fc.property(fc.oneof(anyCase, movedCase), ({ group, actions }) => {
        const p = prepare(group);
        const rows = explainAnchorage(p, actions, true).rows;
        for (const row of rows.filter((one) => one.mode === 'concrete-edge' && one.design !== null)) {
          const side = p.region.sides.findIndex(
            ({ fromX, fromY }) => fromX === row.edge!.from[0] && fromY === row.edge!.from[1],
          );
          const found = findShearAreas(p, actions, side).find(({ inserts }) => inserts.join() === row.inserts.join())!;
          expect(found.area).toBe(quantityOf(row, 'A_c_V'));
          const covered = found.spans.reduce((sum, { from, to }) => sum + to - from, 0);
          expect(covered * found.height).toBeCloseTo(found.area, 3);
          expect(found.rings).toHaveLength(found.spans.length);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('lie between the inserts and the edge', () => {
    // One insert 100 mm from the bottom edge, 1000 mm from the corners: the body covers 1.5 c1 to each side, worked by hand.
    const group = makeGroup({ outline: rectangle(0, 0, 2000, 2000), at: [[1000, 100]], thickness: 200 });
    const p = prepare(group);
    const side = p.region.sides.findIndex(({ ny }) => ny === -1);
    const [body] = findShearAreas(p, load([0, 0, -1000]), side);
    expect(body).toMatchObject({ edgeUsed: 100, length: 300, height: 150, area: 45000 });
    const [ring] = body!.rings;
    expect([...ring!].sort(([a], [b]) => a - b)).toEqual([
      [850, 0],
      [1000, 100],
      [1150, 0],
    ]);
    expect(measureRings(body!.rings)).toBeGreaterThan(0);
    expect(findResistances(p, false).rows.some(({ mode }) => mode === 'concrete-edge')).toBe(true);
    expect(findShearAreas(p, null, side)).toHaveLength(1);
  });
});
