import { isInside, type Region } from '../../geometry/region.ts';
import { type Cylinder, findMiddle, makeCylinder, type Solid, shiftSolid } from '../../geometry/solid.ts';
import { measureSolids, measureWithin } from '../../geometry/solid-distance.ts';
import type { Clash, ClashBar, ClashItem, ClashPart, ClashRules, ClashScene, ClashSide } from './clash-scene.ts';

/** A distance this much short of what is needed [mm] is enough: distances are known to 1e-6 mm. */
const SLACK = 1e-6;

/** Parts that may touch are taken as touching where they overlap by no more than this [mm]. */
const TOUCH = 1e-3;

/** What a part has to keep free of a bar [mm]: the cross bar is tied to bars, so it may touch them. */
function neededOfBar(part: ClashPart, rules: ClashRules): number {
  return part.name === 'cross bar' ? 0 : rules.clearance;
}

/** The clearance of two solids where it is less than needed [mm]; null where it is enough. */
function findShort(a: Solid, b: Solid, needed: number): number | null {
  const clearance = measureWithin(a, b, Math.max(needed - SLACK, SLACK));
  return clearance === Number.POSITIVE_INFINITY ? null : clearance;
}

/** A bar that may be touched, thinner and shorter by what counts as touching. */
function shrink({ from, to, axis, length, radius }: Cylinder): Cylinder {
  const off = Math.min(TOUCH, length / 4, radius / 2);
  const [x, y, z] = axis;
  return makeCylinder(
    [from[0] + off * x, from[1] + off * y, from[2] + off * z],
    [to[0] - off * x, to[1] - off * y, to[2] - off * z],
    radius - off,
  );
}

/** How near a part is to a bar, where that is too near [mm]; else null. */
export function findShortOfBar(part: ClashPart, bar: Cylinder, rules: ClashRules): number | null {
  const needed = neededOfBar(part, rules);
  const short = findShort(part.solid, bar, needed);
  if (short === null || needed > 0 || part.solid.kind !== 'cylinder') return short;
  return findShort(shrink(part.solid), bar, 0);
}

/** Every part of an item that is too near to a bar. */
export function compareWithBar(scene: ClashScene, rules: ClashRules, item: number, bar: number): readonly Clash[] {
  const { parts } = scene.items[item]!;
  const { solid } = scene.bars[bar]!;
  return parts.flatMap((one, part) => {
    const clearance = findShortOfBar(one, solid, rules);
    if (clearance === null) return [];
    return [{ item, part, other: { kind: 'bar', bar }, clearance, needed: neededOfBar(one, rules) }];
  });
}

/** Every two parts of two items that are too near to each other. */
export function compareItems(scene: ClashScene, rules: ClashRules, first: number, second: number): readonly Clash[] {
  const needed = rules.clearance;
  return scene.items[first]!.parts.flatMap((a, part) =>
    scene.items[second]!.parts.flatMap((b, otherPart): readonly Clash[] => {
      const clearance = findShort(a.solid, b.solid, needed);
      if (clearance === null) return [];
      return [{ item: first, part, other: { kind: 'item', item: second, part: otherPart }, clearance, needed }];
    }),
  );
}

/**
 * Every part of an item that is too near to a side; the body of an insert of an edge comes out of its own. A part that lies outside the
 * outline or in an opening overlaps the side nearest to it, however far it is from that.
 * @param sides those that may be near
 */
export function compareWithSides(scene: ClashScene, item: number, sides: readonly ClashSide[]): readonly Clash[] {
  const { parts, throughSide, cover } = scene.items[item]!;
  return parts.flatMap((one, part) => {
    const left = isInConcrete(one, scene.region) ? null : findNearestSide(one, scene);
    const all = left === null || sides.includes(left) ? sides : [...sides, left];
    return all.flatMap((side): readonly Clash[] => {
      if (isExempt(one, throughSide, side) && side !== left) return [];
      const clearance = side === left ? 0 : findShortOfSide(one, side, cover);
      if (clearance === null) return [];
      return [{ item, part, other: { kind: 'side', side: side.index }, clearance, needed: cover }];
    });
  });
}

function isExempt({ name }: ClashPart, throughSide: number | null, side: ClashSide): boolean {
  return throughSide === side.index && (name === 'body' || name === 'item');
}

function findShortOfSide(part: ClashPart, side: ClashSide, needed: number): number | null {
  let least: number | null = null;
  for (const piece of side.pieces) {
    const short = findShort(part.solid, piece, needed);
    if (short !== null && (least === null || short < least)) least = short;
  }
  return least;
}

function isInConcrete({ solid }: ClashPart, region: Region): boolean {
  const [x, y] = findMiddle(solid);
  return isInside(region, x, y);
}

/** The side whose pieces come nearest to a part. */
function findNearestSide({ solid }: ClashPart, { sides }: ClashScene): ClashSide {
  const distances = sides.map(({ pieces }) => Math.min(...pieces.map((piece) => measureSolids(solid, piece))));
  return sides[distances.indexOf(Math.min(...distances))]!;
}

/** What may be near an item that is moved or turned. */
export interface Surroundings {
  readonly bars: readonly ClashBar[];
  readonly items: readonly ClashItem[];
  readonly sides: readonly ClashSide[];
}

/** Whether parts of an item, where they would then be, clash with nothing and lie in the concrete. */
export function isClear(
  parts: readonly ClashPart[],
  { throughSide, cover }: ClashItem,
  { bars, items, sides }: Surroundings,
  region: Region,
  rules: ClashRules,
): boolean {
  return parts.every(
    (part) =>
      bars.every(({ solid }) => findShortOfBar(part, solid, rules) === null) &&
      items.every((item) => item.parts.every((one) => findShort(part.solid, one.solid, rules.clearance) === null)) &&
      sides.every((side) => isExempt(part, throughSide, side) || findShortOfSide(part, side, cover) === null) &&
      isInConcrete(part, region),
  );
}

/** A part moved by a vector [mm]. */
export function shiftPart({ name, solid }: ClashPart, by: readonly [number, number, number]): ClashPart {
  return { name, solid: shiftSolid(solid, by) };
}
