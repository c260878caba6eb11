import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ClashItem, ClashScene } from '../../../../src/engine/form/clash/clash-scene.ts';
import { findClashes } from '../../../../src/engine/form/clash/find-clashes.ts';
import { makeSides } from '../../../../src/engine/form/clash/make-sides.ts';
import { prepareRegion } from '../../../../src/engine/geometry/region.ts';
import { makeBlock, makeCylinder, type Solid, type Vector } from '../../../../src/engine/geometry/solid.ts';
import { findByAllPairs, makeBox, makeInsert, makeLayer, makeScene, RULES, scenes, THICKNESS } from './scenes.ts';

const OPENING = [
  [900, 900],
  [1300, 900],
  [1300, 1300],
  [900, 1300],
] as const;

/** What is found, in short: part, other, clearance. */
function list(scene: ClashScene, rules = RULES) {
  return findClashes(scene, rules).map(({ item, part, other, clearance, needed }) => ({
    part: scene.items[item]!.parts[part]!.name,
    other:
      other.kind === 'bar'
        ? scene.bars[other.bar]!.id
        : other.kind === 'item'
          ? `${scene.items[other.item]!.id} ${scene.items[other.item]!.parts[other.part]!.name}`
          : `side ${other.side}`,
    clearance: Number(clearance.toFixed(6)),
    needed,
  }));
}

describe('clashes with bars, worked by hand', () => {
  // Bars at y = 100, 300 … (third line from below: y = 500), axis 40 mm deep, radius 5; body radius 11 down to 90 mm.
  const layer = makeLayer({});
  it('a body 3 mm from a bar', () => {
    expect(list(makeScene([makeInsert('F1', 700, 500 + 5 + 11 + 3)], [layer]))).toEqual([
      { part: 'body', other: 'L/3', clearance: 3, needed: 5 },
    ]);
  });
  it('a body exactly as far as needed, and a tenth nearer', () => {
    expect(list(makeScene([makeInsert('F1', 700, 500 + 16 + 5)], [layer]))).toEqual([]);
    expect(list(makeScene([makeInsert('F1', 700, 500 + 16 + 4.9)], [layer]))).toEqual([
      { part: 'body', other: 'L/3', clearance: 4.9, needed: 5 },
    ]);
  });
  it('a foot over a bar: 106 - 98 - 5 = 3 mm below it', () => {
    expect(list(makeScene([makeInsert('F1', 700, 505)], [makeLayer({ depth: 106 })]))).toEqual([
      { part: 'foot', other: 'L/3', clearance: 3, needed: 5 },
    ]);
  });
  it('a bar through the body and just above the foot', () => {
    // Bar from 79 to 89 deep, 1 mm above the foot, through the body; no cross bar.
    expect(list(makeScene([makeInsert('F1', 700, 500)], [makeLayer({ depth: 84 })]))).toEqual([
      { part: 'body', other: 'L/3', clearance: 0, needed: 5 },
      { part: 'foot', other: 'L/3', clearance: 1, needed: 5 },
    ]);
  });
  it('a cross bar may lie on a bar, but not in it', () => {
    // The cross bar along y reaches from 64 to 76 deep; bars 10 thick below it: axis at 81 touches.
    const insert = makeInsert('F1', 700, 400, { barDirection: Math.PI / 2 });
    expect(list(makeScene([insert], [makeLayer({ depth: 81 })]))).toEqual([]);
    expect(list(makeScene([insert], [makeLayer({ depth: 80.5, through: [0, 450] })]))).toEqual([
      { part: 'cross bar', other: 'L/3', clearance: 0, needed: 0 },
    ]);
    // Above it as well.
    expect(list(makeScene([insert], [makeLayer({ depth: 59, through: [0, 450] })]))).toEqual([]);
    expect(list(makeScene([insert], [makeLayer({ depth: 59.5, through: [0, 450] })]))).toHaveLength(1);
  });
  it('bars of every kind', () => {
    for (const kind of ['bars', 'mesh', 'strand'] as const)
      expect(list(makeScene([makeInsert('F1', 700, 500)], [makeLayer({ kind })]))).toHaveLength(1);
  });
});

describe('clashes with items, edges and openings, worked by hand', () => {
  it('two inserts: feet 20 + 20, 43 apart', () => {
    expect(list(makeScene([makeInsert('F1', 700, 500), makeInsert('F2', 743, 500)], []))).toEqual([
      { part: 'foot', other: 'F2 foot', clearance: 3, needed: 5 },
    ]);
  });
  it('an insert and a box', () => {
    expect(list(makeScene([makeInsert('F1', 700, 500), makeBox('B', 713, 480, 60, 50)], []))).toEqual([
      { part: 'body', other: 'B item', clearance: 2, needed: 5 },
    ]);
  });
  it('an insert whose foot is 15 mm from an edge, its body 24', () => {
    expect(list(makeScene([makeInsert('F1', 35, 500)], []))).toEqual([
      { part: 'foot', other: 'side 3', clearance: 15, needed: 20 },
    ]);
  });
  it('an insert near the corner of an opening: 6 and 8 mm off, 10 - 20 overlaps', () => {
    const found = list(makeScene([makeInsert('F1', 900 - 18, 900 - 24)], [], { openings: [OPENING] }));
    expect(found.map(({ part, clearance }) => [part, clearance])).toEqual([
      ['body', 19],
      ['foot', 10],
      ['body', 19],
      ['foot', 10],
    ]);
  });
  it('an insert in the middle of an opening, and one outside the panel', () => {
    for (const [x, y] of [
      [1100, 1080],
      [1000, -90],
    ] as const) {
      const found = findClashes(makeScene([makeInsert('F1', x, y)], [], { openings: [OPENING] }), RULES);
      expect(found.map(({ clearance }) => clearance)).toEqual([0, 0]);
      const [side] = found.map(({ other }) => other);
      expect(side?.kind).toBe('side');
    }
  });
  it('an insert out of an edge: its body comes out of that side, its foot keeps its cover', () => {
    const makeEdgeInsert = (length: number): ClashItem => ({
      ...makeInsert('F1', 0, 0),
      parts: [
        { name: 'body', solid: makeCylinder([700, 0, 75], [700, length, 75], 11) },
        { name: 'foot', solid: makeCylinder([700, length, 75], [700, length + 8, 75], 20) },
      ],
      throughSide: 0,
    });
    expect(list(makeScene([makeEdgeInsert(90)], []))).toEqual([]);
    expect(list(makeScene([makeEdgeInsert(15)], []))).toEqual([
      { part: 'foot', other: 'side 0', clearance: 15, needed: 20 },
    ]);
    expect(list(makeScene([{ ...makeEdgeInsert(90), throughSide: null }], []))).toEqual([
      { part: 'body', other: 'side 0', clearance: 0, needed: 20 },
    ]);
  });
  it('a battered edge comes nearer with depth', () => {
    // tan(batter) 0.1: at the foot's lower rim, 98 deep, the edge stands 9.8 mm farther in. Square to it: × cos.
    const batter = Math.atan(0.1);
    const found = list(makeScene([makeInsert('F1', 48, 500)], [], { batter }));
    expect(found).toEqual([
      { part: 'foot', other: 'side 3', clearance: Number(((48 - 20 - 9.8) * Math.cos(batter)).toFixed(6)), needed: 20 },
    ]);
  });
});

describe('sides', () => {
  it('meet at every depth where they lean', () => {
    const region = prepareRegion(
      [
        [0, 0],
        [2000, -300],
        [1800, 1500],
        [100, 1200],
      ],
      [OPENING],
    );
    const sides = makeSides(region, THICKNESS, (side) => 0.02 * side - 0.03);
    for (const { index, pieces } of sides) {
      const next = sides[region.sides[index]!.next]!;
      // Corners of a piece: from and to at the outside face, to and from at the inside face.
      const end = pieces.at(-1)!.corners;
      const start = next.pieces[0]!.corners;
      expect(end[1]).toEqual(start[0]!.map((v) => expect.closeTo(v, 6)));
      expect(end[2]).toEqual(start[3]!.map((v) => expect.closeTo(v, 6)));
      // Each lies off square by its own batter: the inside end, measured along the outward normal.
      const { nx, ny } = region.sides[index]!;
      const [a, b] = [end[1]!, end[2]!];
      expect((b[0] - a[0]) * nx + (b[1] - a[1]) * ny).toBeCloseTo(-THICKNESS * Math.tan(0.02 * index - 0.03), 6);
    }
  });
});

describe('clashes of any panel', () => {
  it('are those of comparing all with all', () => {
    let count = 0;
    fc.assert(
      fc.property(scenes, (scene) => {
        const found = findClashes(scene, RULES);
        expect(found).toEqual(findByAllPairs(scene, RULES));
        count += found.length;
      }),
      { numRuns: 150 },
    );
    expect(count).toBeGreaterThan(150);
  });

  it('stay when the panel is moved or drawn from the other side', () => {
    fc.assert(
      fc.property(scenes, fc.integer({ min: -3000, max: 3000 }), fc.boolean(), (scene, by, isMirrored) => {
        const flip = (p: Vector): Vector => [isMirrored ? by - p[0] : by + p[0], p[1] - by, p[2]];
        const other = changeScene(scene, flip);
        const short = (s: ClashScene) =>
          findClashes(s, RULES)
            // Rounding may decide about what just touches or just keeps its distance.
            .filter(({ clearance, needed }) => clearance > 1e-3 && needed - clearance > 1e-3)
            .map(({ item, part, other: { kind }, clearance }) => `${item} ${part} ${kind} ${clearance.toFixed(4)}`)
            .sort();
        expect(short(other)).toEqual(short(scene));
      }),
      { numRuns: 60 },
    );
  });

  it('come and grow with the clearance that is asked for', () => {
    fc.assert(
      fc.property(scenes, (scene) => {
        const few = findClashes(withCover(scene, 10), { clearance: 2 });
        const many = findClashes(withCover(scene, 30), { clearance: 12 });
        const name = ({ item, part, other }: (typeof few)[number]) => JSON.stringify([item, part, other]);
        const all = new Map(many.map((clash) => [name(clash), clash.clearance]));
        for (const clash of few) expect(all.get(name(clash))).toBeCloseTo(clash.clearance, 5);
      }),
      { numRuns: 60 },
    );
  });
});

/** A scene whose inserts want another cover. */
function withCover(scene: ClashScene, cover: number): ClashScene {
  return { ...scene, items: scene.items.map((item) => (item.cover === 0 ? item : { ...item, cover })) };
}

/** A scene with every point of it moved; a mirror image where that is one. */
function changeScene(scene: ClashScene, flip: (p: Vector) => Vector): ClashScene {
  const zero = flip([0, 0, 0]);
  const along = (v: Vector): Vector => flip(v).map((c, i) => c - zero[i]!) as unknown as Vector;
  const change = <S extends Solid>(solid: S): S =>
    (solid.kind === 'cylinder'
      ? makeCylinder(flip(solid.from), flip(solid.to), solid.radius)
      : makeBlock(solid.corners.map(flip))) as S; // of the same kind as it was
  const region = prepareRegion(
    scene.region.outline!.map(([x, y]) => flip([x, y, 0]).slice(0, 2) as unknown as [number, number]),
    scene.region.openings.map((ring) =>
      ring.map(([x, y]) => flip([x, y, 0]).slice(0, 2) as unknown as [number, number]),
    ),
  );
  return {
    ...scene,
    region,
    items: scene.items.map((item) => ({
      ...item,
      parts: item.parts.map(({ name, solid }) => ({ name, solid: change(solid) })),
      directions: [along(item.directions[0]), along(item.directions[1])],
    })),
    bars: scene.bars.map((bar) => ({ ...bar, solid: change(bar.solid), across: along(bar.across) })),
    sides: scene.sides.map((side) => ({ ...side, pieces: side.pieces.map(change) })),
  };
}
