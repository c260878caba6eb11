import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ClashItem, ClashScene } from '../../../../src/engine/form/clash/clash-scene.ts';
import { findClashes } from '../../../../src/engine/form/clash/find-clashes.ts';
import { findRemedies } from '../../../../src/engine/form/clash/find-remedies.ts';
import type { Remedy } from '../../../../src/engine/form/clash/remedy.ts';
import { shiftAcross } from '../../../../src/engine/form/clash/shift-bars.ts';
import { makeCylinder, shiftSolid, turnSolid, type Vector } from '../../../../src/engine/geometry/solid.ts';
import { measureSolids } from '../../../../src/engine/geometry/solid-distance.ts';
import { makeBox, makeInsert, makeLayer, makeScene, RULES, replaceBars, replaceItem, scenes } from './scenes.ts';

const solve = (scene: ClashScene) => findRemedies(scene, RULES, findClashes(scene, RULES));
const first = (scene: ClashScene) => solve(scene).map(({ remedies }) => remedies[0] ?? null);

describe('shifting bars, worked by hand', () => {
  // A bar at y = 500 (radius 5); the body (radius 11) needs 5: 21 from axis to axis.
  it('the smaller way, with the other beside it', () => {
    const scene = makeScene([makeInsert('F1', 700, 507, { tolerance: 0 })], [makeLayer({})]);
    expect(solve(scene)).toMatchObject([
      { remedies: [{ kind: 'shift bar', bar: 2, shift: -14, otherWay: 28 }], fixedBar: null },
    ]);
  });
  it('clears every insert on the bar, not only the one in the clash', () => {
    // Against y by 14 it would meet the second insert: 500 - 21 - 11 … its body at y = 470 wants the bar at 449 or below.
    const scene = makeScene(
      [makeInsert('F1', 700, 507, { tolerance: 0 }), makeInsert('F2', 900, 470, { tolerance: 0 })],
      [makeLayer({})],
    );
    expect(first(scene)).toMatchObject([{ kind: 'shift bar', bar: 2, shift: 28, otherWay: -51 }]);
  });
  it('not beyond half the spacing', () => {
    const at = (spacing: number) =>
      makeScene([makeInsert('F1', 700, 500, { tolerance: 0 })], [makeLayer({ spacing, through: [0, 500] })]);
    expect(first(at(42))[0]).toBe(null);
    expect(solve(at(80))[0]!.remedies).toMatchObject([{ kind: 'shift bar', shift: 21, otherWay: -21 }]);
  });
  it('not nearer to the next bar than 25 mm, or its diameter', () => {
    // Spacing 60: 21 leaves 60 - 21 - 10 = 29; spacing 54: 23 < 25.
    const at = (spacing: number) =>
      makeScene([makeInsert('F1', 700, 500, { tolerance: 0 })], [makeLayer({ spacing, through: [0, 500] })]);
    expect(first(at(60))[0]).toMatchObject({ kind: 'shift bar', shift: 21 });
    expect(first(at(55))[0]).toBe(null);
    expect(first(at(56))[0]).toMatchObject({ kind: 'shift bar', shift: 21 });
  });
  it('not nearer to a side than its cover less 5 mm, nor across an opening', () => {
    // The bar at y = 30: side 25 away. The insert at y = 40: up 31 (free), down 11: 14 from the side, 1 below 15.
    const scene = makeScene([makeInsert('F1', 700, 40)], [makeLayer({ through: [0, 30], spacing: 500 })]);
    const found = findRemedies(
      scene,
      RULES,
      findClashes(scene, RULES).filter(({ other }) => other.kind === 'bar'),
    );
    expect(found[0]!.remedies[0]).toMatchObject({ kind: 'shift bar', shift: 31, otherWay: null });
    const nearer = makeScene([makeInsert('F1', 700, 41)], [makeLayer({ through: [0, 30], spacing: 500 })]);
    const other = findRemedies(
      nearer,
      RULES,
      findClashes(nearer, RULES).filter(({ other: o }) => o.kind === 'bar'),
    );
    expect(other[0]!.remedies[0]).toMatchObject({ kind: 'shift bar', shift: -10, otherWay: 32 });
    const opening = [
      [200, 515],
      [1000, 515],
      [1000, 610],
      [200, 610],
    ] as const;
    // Lines run whole below the opening: axis at 490, free of it by 20. With an insert at 480: up is barred, down 31.
    const open = makeScene([makeInsert('F1', 700, 472)], [makeLayer({ through: [0, 490], spacing: 600 })], {
      openings: [opening],
    });
    expect(first(open).filter((one) => one?.kind === 'shift bar')).toMatchObject([{ shift: 3, otherWay: -39 }]);
    const barred = makeScene([makeInsert('F1', 700, 475)], [makeLayer({ through: [0, 490], spacing: 600 })], {
      openings: [opening],
    });
    expect(first(barred).filter((one) => one?.kind === 'shift bar')).toMatchObject([{ shift: -36, otherWay: null }]);
  });
  it('a layer, where several of its bars clash', () => {
    const scene = makeScene(
      [makeInsert('F1', 700, 507, { tolerance: 0 }), makeInsert('F2', 900, 710, { tolerance: 0 })],
      [makeLayer({})],
    );
    const layers = solve(scene).map(({ remedies }) => remedies.find(({ kind }) => kind === 'shift layer'));
    const expected = { kind: 'shift layer', layer: 'L', shift: -14, otherWay: 31 };
    expect(layers).toMatchObject([expected, expected]);
  });
  it('no mesh, and no strand', () => {
    for (const kind of ['mesh', 'strand'] as const) {
      const scene = makeScene([makeInsert('F1', 700, 507, { tolerance: 0 })], [makeLayer({ kind })]);
      expect(solve(scene)).toMatchObject([{ remedies: [], fixedBar: kind }]);
    }
  });
});

describe('turning the cross bar, worked by hand', () => {
  // The cross bar lies from 64 to 76 deep, 100 either way along x; a mesh bar along y, 70 deep and 80 away, goes through it.
  const layer = makeLayer({ kind: 'mesh', direction: Math.PI / 2, depth: 70, through: [780, 0], spacing: 400 });
  it('by the least step that clears', () => {
    // Its corner comes to 100 cos a + 6 sin a; the mesh bar begins at 75. a = 45°: 74.95, less than that touches; 40°: 80.5.
    const scene = makeScene([makeInsert('F1', 700, 507, { tolerance: 0, barDirection: 0 })], [layer]);
    expect(first(scene)).toEqual([{ kind: 'turn cross bar', item: 0, angle: Math.PI / 4 }]);
  });
  it('the other way where something stands in the first', () => {
    const scene = makeScene(
      [makeInsert('F1', 700, 507, { tolerance: 0, barDirection: 0 }), makeBox('B', 740, 550, 30, 100)],
      [layer],
    );
    expect(first(scene)).toEqual([{ kind: 'turn cross bar', item: 0, angle: -Math.PI / 4 }]);
  });
  it('not out of the cover to a large face', () => {
    // Out of an edge the bar lies along it at first and would turn towards the faces: 75 deep ± 100 sin a + 6 cos a; 20 stays.
    const item: ClashItem = {
      ...makeInsert('F1', 0, 0, { tolerance: 0 }),
      parts: [
        { name: 'body', solid: makeCylinder([700, 0, 75], [700, 90, 75], 11) },
        { name: 'cross bar', solid: makeCylinder([600, 70, 75], [800, 70, 75], 6) },
      ],
      directions: [
        [1, 0, 0],
        [0, 0, 1],
      ],
      throughSide: 0,
      turning: { centre: [700, 70, 75], about: [0, -1, 0] },
    };
    // At 60 along it a bar along y passes at the same depth: 60 sin a has to reach 6 + radius. 16: 21.5°, so 25°: 47.7 < 55 off the middle.
    // 20: 25.7°, so 30°: 55.2, which is 0.2 too near to the face.
    const at = (radius: number) =>
      makeScene(
        [item],
        [
          makeLayer({
            kind: 'mesh',
            direction: Math.PI / 2,
            depth: 75,
            diameter: 2 * radius,
            through: [760, 0],
            spacing: 700,
          }),
        ],
      );
    const found = first(at(16))[0] as Extract<Remedy, { kind: 'turn cross bar' }>;
    expect(Math.round((found.angle * 180) / Math.PI)).toBe(25);
    expect(first(at(20))).toEqual([null]);
  });
});

describe('moving the insert, worked by hand', () => {
  it('the shortest way that clears all of it', () => {
    // 3 mm short of a mesh bar above: down by 2 of its tolerance of 5.
    const scene = makeScene([makeInsert('F1', 700, 500 - 16 - 3)], [makeLayer({ kind: 'mesh' })]);
    expect(solve(scene)).toEqual([
      expect.objectContaining({ remedies: [{ kind: 'move', item: 0, along: [0, -2], distance: 2 }], fixedBar: 'mesh' }),
    ]);
  });
  it('not beyond its tolerance', () => {
    const at = (tolerance: number) =>
      makeScene([makeInsert('F1', 700, 500 - 16, { tolerance })], [makeLayer({ kind: 'mesh' })]);
    expect(first(at(5))).toEqual([{ kind: 'move', item: 0, along: [0, -5], distance: 5 }]);
    expect(first(at(4.9))).toEqual([null]);
  });
  it('aslant, where it has to leave two bars', () => {
    const scene = makeScene(
      [makeInsert('F1', 700 - 18, 500 - 19)],
      [
        makeLayer({ kind: 'mesh' }),
        makeLayer({ id: 'M', kind: 'mesh', direction: Math.PI / 2, through: [700, 0], depth: 52 }),
      ],
    );
    expect(first(scene)).toEqual(
      [0, 1].map(() => ({ kind: 'move', item: 0, along: [-3, -2], distance: Math.hypot(3, 2) })),
    );
  });
  it('the one of two inserts that moves less', () => {
    const scene = makeScene([makeInsert('F1', 700, 500, { tolerance: 1 }), makeInsert('F2', 743, 500)], []);
    expect(first(scene)).toEqual([{ kind: 'move', item: 1, along: [2, 0], distance: 2 }]);
  });
  it('away from an edge', () => {
    expect(first(makeScene([makeInsert('F1', 37, 500)], []))).toEqual([
      { kind: 'move', item: 0, along: [3, 0], distance: 3 },
    ]);
  });
});

/** What is moved, and whether it is clear of all items, bars and sides, with the thing moved by a share of its remedy. */
function apply(scene: ClashScene, remedy: Remedy, by: number): { scene: ClashScene; isOpen: boolean } {
  const hits = (changed: ClashScene, concerns: (clash: ReturnType<typeof findClashes>[number]) => boolean) => ({
    scene: changed,
    isOpen: findClashes(changed, RULES).some(concerns),
  });
  switch (remedy.kind) {
    case 'shift bar': {
      const changed = replaceBars(scene, (bar, i) =>
        i === remedy.bar ? { ...bar, solid: shiftAcross(bar, by) } : bar,
      );
      return hits(changed, ({ other }) => other.kind === 'bar' && other.bar === remedy.bar);
    }
    case 'shift layer': {
      const changed = replaceBars(scene, (bar) =>
        bar.layer === remedy.layer ? { ...bar, solid: shiftAcross(bar, by) } : bar,
      );
      return hits(changed, ({ other }) => other.kind === 'bar' && scene.bars[other.bar]!.layer === remedy.layer);
    }
    case 'turn cross bar': {
      const own = scene.items[remedy.item]!;
      const { centre, about } = own.turning!;
      const parts = own.parts.map((part) =>
        part.name === 'cross bar' ? { ...part, solid: turnSolid(part.solid, centre, about, by) } : part,
      );
      const isBar = (item: number, part: number) => item === remedy.item && own.parts[part]!.name === 'cross bar';
      return hits(
        replaceItem(scene, remedy.item, { ...own, parts }),
        ({ item, part, other }) => isBar(item, part) || (other.kind === 'item' && isBar(other.item, other.part)),
      );
    }
    case 'move': {
      const own = scene.items[remedy.item]!;
      const [u, v] = own.directions;
      const share = by / remedy.distance;
      const [a, b] = [remedy.along[0] * share, remedy.along[1] * share];
      const way: Vector = [a * u[0] + b * v[0], a * u[1] + b * v[1], a * u[2] + b * v[2]];
      const parts = own.parts.map((part) => ({ ...part, solid: shiftSolid(part.solid, way) }));
      return hits(
        replaceItem(scene, remedy.item, { ...own, parts }),
        ({ item, other }) => item === remedy.item || (other.kind === 'item' && other.item === remedy.item),
      );
    }
  }
}

/** Inserts on one layer of loose bars, several of which they hit. */
const looseScenes = fc
  .record({
    places: fc.array(fc.tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: -8, max: 8 })), {
      minLength: 2,
      maxLength: 3,
    }),
    spacing: fc.integer({ min: 120, max: 220 }),
  })
  .map(({ places, spacing }) =>
    makeScene(
      places.map(([line, off], i) => makeInsert(`F${i}`, 300 + 400 * i, 100 + line * spacing + off)),
      [makeLayer({ spacing })],
    ),
  );

describe('remedies of any panel', () => {
  it.each([
    ['crowded', scenes, 120, ['shift bar', 'turn cross bar', 'move']],
    ['one loose layer', looseScenes, 40, ['shift bar', 'shift layer']],
  ] as const)('clear what they move, and less of them does not (%s)', (_, arbitrary, numRuns, expected) => {
    const counts = { 'shift bar': 0, 'shift layer': 0, 'turn cross bar': 0, move: 0 };
    fc.assert(
      fc.property(arbitrary, (scene) => {
        for (const { clash, remedies } of solve(scene)) {
          for (const remedy of remedies) {
            counts[remedy.kind] += 1;
            if (remedy.kind === 'move') {
              expect(apply(scene, remedy, remedy.distance).isOpen).toBe(false);
              expect(Math.max(...remedy.along.map(Math.abs))).toBeLessThanOrEqual(scene.items[remedy.item]!.tolerance);
              continue;
            }
            if (remedy.kind === 'turn cross bar') {
              expect(apply(scene, remedy, remedy.angle).isOpen).toBe(false);
              continue;
            }
            expect(apply(scene, remedy, remedy.shift).isOpen).toBe(false);
            expect(apply(scene, remedy, remedy.shift - Math.sign(remedy.shift)).isOpen).toBe(true);
            if (remedy.otherWay !== null) {
              expect(Math.sign(remedy.otherWay)).toBe(-Math.sign(remedy.shift));
              expect(Math.abs(remedy.otherWay)).toBeGreaterThanOrEqual(Math.abs(remedy.shift));
              expect(apply(scene, remedy, remedy.otherWay).isOpen).toBe(false);
            }
            const { bars } = scene;
            const moved = bars.filter((bar, i) =>
              remedy.kind === 'shift bar' ? i === remedy.bar : bar.layer === remedy.layer,
            );
            expect(moved.every(({ kind, spacing }) => kind === 'bars' && Math.abs(remedy.shift) <= spacing / 2)).toBe(
              true,
            );
            // Bars of their own layer stay apart by 25 mm, or as far as they were.
            for (const bar of moved) {
              const solid = shiftAcross(bar, remedy.shift);
              for (const next of bars.filter(
                ({ layer, id }) => remedy.kind === 'shift bar' && layer === bar.layer && id !== bar.id,
              ))
                expect(measureSolids(solid, next.solid)).toBeGreaterThanOrEqual(
                  Math.min(25, measureSolids(bar.solid, next.solid)) - 1e-4,
                );
            }
          }
          if (clash.other.kind === 'bar' && scene.bars[clash.other.bar]!.kind !== 'bars')
            expect(remedies.every(({ kind }) => kind === 'move' || kind === 'turn cross bar')).toBe(true);
        }
      }),
      { numRuns },
    );
    for (const kind of expected) expect(counts[kind]).toBeGreaterThan(5);
  });

  it('are the smallest: no shorter move of whole millimetres clears', () => {
    fc.assert(
      fc.property(scenes, (scene) => {
        for (const { remedies } of solve(scene)) {
          for (const remedy of remedies) {
            if (remedy.kind === 'turn cross bar') {
              const steps = Math.round(remedy.angle / (Math.PI / 36));
              for (let step = 0; step < Math.abs(steps); step++)
                for (const sign of [1, -1])
                  expect(apply(scene, remedy, (sign * step * Math.PI) / 36).isOpen).toBe(true);
            }
            if (remedy.kind !== 'move') continue;
            const { tolerance } = scene.items[remedy.item]!;
            for (let a = -tolerance; a <= tolerance; a++) {
              for (let b = -tolerance; b <= tolerance; b++) {
                const distance = Math.hypot(a, b);
                if (distance === 0 || distance >= remedy.distance) continue;
                expect(apply(scene, { ...remedy, along: [a, b], distance }, distance).isOpen).toBe(true);
              }
            }
          }
        }
      }),
      { numRuns: 12 },
    );
  });
});
