import type { SteelPart, TestedResistance } from '../../engine/checks/anchorage-group.ts';
import { netSectionAtCrossHole } from '../../engine/hardware/cross-hole.ts';
import type { BoltSteel } from '../../engine/hardware/property-classes.ts';
import {
  diametralAllowance,
  externalStripArea,
  internalStripArea,
  stripReduction,
} from '../../engine/hardware/thread-shear.ts';
import { findThread } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import { toNewton } from './units.ts';

/** The steel in the load path of one insert with its bolt. */
export interface SteelPath {
  readonly parts: readonly SteelPart[];
  readonly assumptions: readonly string[];
  readonly notCovered: readonly string[];
}

/** Shear strength over tensile strength (von Mises): an area that shears counts with this share of its size. */
const SHEAR_SHARE = 1 / Math.sqrt(3);

/** The insert's own steel at its two weak sections: the wall around the thread, and the body at the cross hole. */
function bodyParts(item: CatalogueItem): SteelPart[] {
  const thread = findThread(item.thread);
  const bore = thread.diameter + diametralAllowance(thread, item.threadClass);
  const strength = { ultimate: item.steel.ultimate_MPa, yield: item.steel.yield_MPa };
  const wall = (Math.PI / 4) * (item.bodyDiameter_mm ** 2 - bore ** 2);
  const parts: SteelPart[] = [
    { name: 'body around the thread', area: wall, ...strength, resists: 'both', isEmbedded: true },
  ];
  if (item.crossHole !== null) {
    const { diameter_mm, boreThere_mm } = item.crossHole;
    const { area } = netSectionAtCrossHole(item.bodyDiameter_mm, boreThere_mm, diameter_mm);
    parts.push({ name: 'body at the cross hole', area, ...strength, resists: 'tension' });
  }
  return parts;
}

/** Thread stripping, of the bolt's and of the insert's thread: areas in shear, given as areas in tension of equal resistance. */
function threadParts(item: CatalogueItem, bolt: BoltSteel, engagement: number): SteelPart[] | null {
  const thread = findThread(item.thread);
  const allowance = diametralAllowance(thread, item.threadClass);
  const share = stripReduction(item.bodyDiameter_mm / thread.diameter);
  if (share === null) return null;
  const counted = share * SHEAR_SHARE;
  return [
    {
      name: "stripping of the bolt's thread",
      area: counted * externalStripArea(thread, engagement, allowance),
      ultimate: bolt.ultimate,
      yield: bolt.yield,
      resists: 'tension',
    },
    {
      name: "stripping of the insert's thread",
      area: counted * internalStripArea(thread, engagement, allowance),
      ultimate: item.steel.ultimate_MPa,
      yield: item.steel.yield_MPa,
      resists: 'tension',
    },
  ];
}

/** The test of an insert's thread: the least where there are several. */
export function findThreadTest(item: CatalogueItem): CatalogueItem['tested'][number] | null {
  const tests = item.tested.filter(({ mode }) => mode === 'thread');
  return tests.toSorted((a, b) => a.characteristic_kN - b.characteristic_kN)[0] ?? null;
}

/** A tested resistance of the thread as a part: its area is the one that gives the tested value. */
function testedThread(item: CatalogueItem): SteelPart | null {
  const test = findThreadTest(item);
  if (test === null) return null;
  return {
    name: `thread as tested (${test.report})`,
    area: toNewton(test.characteristic_kN) / item.steel.ultimate_MPa,
    ultimate: item.steel.ultimate_MPa,
    yield: item.steel.yield_MPa,
    resists: 'tension',
  };
}

/** The tests that the engine puts in place of a formula by itself (the thread's is a steel part: `steelPathOf`). */
export function testedResistances(item: CatalogueItem): readonly TestedResistance[] {
  return item.tested.flatMap(({ mode, characteristic_kN, partialFactor, fromStrength_MPa, report }) =>
    mode === 'thread'
      ? []
      : [
          {
            mode,
            characteristic: toNewton(characteristic_kN),
            safety: partialFactor,
            fromStrength: fromStrength_MPa ?? 0,
            report,
          },
        ],
  );
}

/**
 * Every steel part that an insert's tension or shear goes through: the bolt, the body around the thread and at the cross hole, and
 * both threads. A resistance in tension is area × ultimate; for stripping the area is the strip area over √3 (von Mises), less
 * what bending and swelling take (`stripReduction`).
 *
 * Where the insert was tested in tension, its body is left out in tension; where its thread was, the strip areas are.
 *
 * @param engagement length of full thread in contact [mm]
 */
export function steelPathOf(item: CatalogueItem, bolt: BoltSteel, engagement: number): SteelPath {
  const boltPart: SteelPart = {
    name: `bolt ${item.thread} ${bolt.propertyClass}`,
    area: findThread(item.thread).stressArea,
    ultimate: bolt.ultimate,
    yield: bolt.yield,
    resists: 'both',
  };
  const isBodyTested = item.tested.some((t) => t.mode === 'steel-tension');
  const body = isBodyTested
    ? bodyParts(item)
        .filter((part) => part.resists === 'both')
        .map((part) => ({ ...part, resists: 'shear' as const }))
    : bodyParts(item);
  const tested = testedThread(item);
  const threads = tested === null ? threadParts(item, bolt, engagement) : [tested];
  return {
    parts: [boltPart, ...body, ...(threads ?? [])],
    assumptions: [
      ...(isBodyTested ? ["the insert's tested steel resistance stands for its body in tension"] : []),
      ...(tested === null ? [] : [`${tested.name} stands for the strip areas`]),
    ],
    notCovered:
      threads !== null
        ? []
        : [
            `thread stripping of ${item.id}: a body of ${item.bodyDiameter_mm} mm around ${item.thread} is below 1.4 d, where the rule gives nothing; a tested thread resistance is needed`,
          ],
  };
}
