import fc from 'fast-check';
import type {
  Clash,
  ClashBar,
  ClashItem,
  ClashPart,
  ClashRules,
  ClashScene,
} from '../../../../src/engine/form/clash/clash-scene.ts';
import { compareItems, compareWithBar, compareWithSides } from '../../../../src/engine/form/clash/compare-parts.ts';
import { compareClashes } from '../../../../src/engine/form/clash/find-clashes.ts';
import { type BarLayer, layOutBars } from '../../../../src/engine/form/clash/lay-out-bars.ts';
import { makeSides } from '../../../../src/engine/form/clash/make-sides.ts';
import type { Polygon } from '../../../../src/engine/geometry/point.ts';
import { prepareRegion } from '../../../../src/engine/geometry/region.ts';
import { makeBlock, makeCylinder, type Vector } from '../../../../src/engine/geometry/solid.ts';

export const THICKNESS = 150;
export const SQUARE: Polygon = [
  [0, 0],
  [2000, 0],
  [2000, 2000],
  [0, 2000],
];

/** An invented insert of the outside face: body 22 × 90, foot 40 × 8 below it, cross bar 12 × 200 through it 20 mm above the foot. */
export function makeInsert(
  id: string,
  x: number,
  y: number,
  { tolerance = 5, barDirection = null as number | null } = {},
): ClashItem {
  const parts: ClashPart[] = [
    { name: 'body', solid: makeCylinder([x, y, 0], [x, y, 90], 11) },
    { name: 'foot', solid: makeCylinder([x, y, 90], [x, y, 98], 20) },
  ];
  if (barDirection !== null) {
    const [u, v] = [100 * Math.cos(barDirection), 100 * Math.sin(barDirection)];
    parts.push({ name: 'cross bar', solid: makeCylinder([x - u, y - v, 70], [x + u, y + v, 70], 6) });
  }
  return {
    id,
    parts,
    cover: 20,
    tolerance,
    directions: [
      [1, 0, 0],
      [0, 1, 0],
    ],
    throughSide: null,
    turning: barDirection === null ? null : { centre: [x, y, 70], about: [0, 0, 1] },
  };
}

/** Something cast in that takes a box from the outside face. */
export function makeBox(id: string, x: number, y: number, size: number, depth: number): ClashItem {
  const corners = [0, size].flatMap((i) => [0, size].flatMap((j) => [0, depth].map((k): Vector => [x + i, y + j, k])));
  return {
    ...makeInsert(id, x, y, { tolerance: 0 }),
    cover: 0,
    parts: [{ name: 'item', solid: makeBlock(corners) }],
  };
}

export function makeLayer(given: Partial<BarLayer>): BarLayer {
  return {
    id: 'L',
    kind: 'bars',
    direction: 0,
    diameter: 10,
    spacing: 200,
    depth: 40,
    through: [0, 100],
    endCover: 20,
    ...given,
  };
}

export function makeScene(
  items: readonly ClashItem[],
  layers: readonly BarLayer[],
  { outline = SQUARE, openings = [] as readonly Polygon[], batter = 0 } = {},
): ClashScene {
  const region = prepareRegion(outline, openings);
  return {
    items,
    bars: layers.flatMap((layer) => layOutBars(layer, region)),
    region,
    sides: makeSides(region, THICKNESS, () => batter),
    thickness: THICKNESS,
  };
}

/** Everything compared with everything. */
export function findByAllPairs(scene: ClashScene, rules: ClashRules): readonly Clash[] {
  const found: Clash[] = [];
  scene.items.forEach((_, item) => {
    scene.bars.forEach((_bar, bar) => {
      found.push(...compareWithBar(scene, rules, item, bar));
    });
    for (let other = item + 1; other < scene.items.length; other++)
      found.push(...compareItems(scene, rules, item, other));
    found.push(...compareWithSides(scene, item, scene.sides));
  });
  return found.sort(compareClashes);
}

/** A scene with one thing changed. */
export function replaceItem(scene: ClashScene, place: number, item: ClashItem): ClashScene {
  return { ...scene, items: scene.items.with(place, item) };
}

export function replaceBars(scene: ClashScene, change: (bar: ClashBar, place: number) => ClashBar): ClashScene {
  return { ...scene, bars: scene.bars.map(change) };
}

export const RULES: ClashRules = { clearance: 5 };

const whole = (min: number, max: number) => fc.integer({ min, max });
const turn = whole(0, 35).map((n) => (n * Math.PI) / 36);

/** Crowded random panels: skew or square, with an opening or not, bars of every kind and direction, inserts and boxes. */
export const scenes: fc.Arbitrary<ClashScene> = fc
  .record({
    inserts: fc.array(
      fc.record({ x: whole(-20, 1520), y: whole(-20, 1020), bar: fc.option(turn), tolerance: whole(0, 8) }),
      { minLength: 1, maxLength: 12 },
    ),
    boxes: fc.array(fc.record({ x: whole(0, 1400), y: whole(0, 900), size: whole(20, 120), depth: whole(10, 150) }), {
      maxLength: 3,
    }),
    layers: fc.array(
      fc.record({
        kind: fc.constantFrom('bars' as const, 'bars' as const, 'mesh' as const, 'strand' as const),
        direction: fc.oneof(fc.constantFrom(0, Math.PI / 2), turn),
        diameter: fc.constantFrom(6, 10, 16),
        spacing: whole(80, 300),
        depth: whole(20, 130),
        x: whole(0, 300),
        y: whole(0, 300),
      }),
      { maxLength: 4 },
    ),
    skew: whole(0, 200),
    isOpen: fc.boolean(),
    batter: fc.constantFrom(0, 0.06),
  })
  .map(({ inserts, boxes, layers, skew, isOpen, batter }) =>
    makeScene(
      [
        ...inserts.map(({ x, y, bar, tolerance }, i) => makeInsert(`F${i}`, x, y, { tolerance, barDirection: bar })),
        ...boxes.map(({ x, y, size, depth }, i) => makeBox(`B${i}`, x, y, size, depth)),
      ],
      layers.map(({ x, y, ...layer }, i) => makeLayer({ ...layer, id: `L${i}`, through: [x, y] })),
      {
        outline: [
          [0, 0],
          [1500, -skew],
          [1500 - skew, 1000],
          [0, 1000],
        ],
        openings: isOpen
          ? [
              [
                [600, 300],
                [900, 360],
                [840, 700],
                [600, 600],
              ],
            ]
          : [],
        batter,
      },
    ),
  );
