import type { ClashItem } from '../../engine/form/clash/clash-scene.ts';
import type { Bounds } from '../../engine/geometry/solid.ts';
import { standInEachOther } from '../../job/check/check-cast-ins.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { PanelScene } from '../clash/build-scene.ts';
import { drawingWords, tellMeeting } from '../clash/describe-clash.ts';
import { findTop } from '../clash/find-top.ts';
import { buildItem } from '../clash/item-solids.ts';
import {
  findOutOfPlace,
  findShortCovers,
  listCovers,
  listMeetings,
  pickNew,
  pickOwn,
} from '../yard/placed-findings.ts';
import { boundAll, isNear, type Surroundings, type ZoneSite } from './zone-site.ts';

/** Which inserts of the connection are elsewhere than designed, by their places in its order, and all of them where they are. */
export interface Moved {
  readonly castIns: readonly CastIn[];
  readonly which: readonly number[];
}

function bodyOf({ index }: ZoneSite, { item }: CastIn): number | undefined {
  return item === null ? undefined : index.items.get(item)?.bodyDiameter_mm;
}

/** An insert that another stands in. */
function findOverlap(site: ZoneSite, { castIns }: Moved, castIn: CastIn): string | null {
  const body = bodyOf(site, castIn);
  if (body === undefined) return null;
  const near = [...site.neighbours, ...castIns].find((other) => {
    const otherBody = bodyOf(site, other);
    return other.id !== castIn.id && otherBody !== undefined && standInEachOther(castIn, body, other, otherBody);
  });
  return near === undefined ? null : `insert ${castIn.id} stands in insert ${near.id}`;
}

/** The solids of an insert where it is; as designed where it did not move. */
function solidsOf(site: ZoneSite, { lean, members }: Surroundings, castIn: CastIn, at: number): ClashItem | null {
  const designed = members[at]!;
  if (designed === null || castIn === site.members[at]) return designed;
  const { index, panel, bed, region } = site;
  const built = buildItem({
    panel,
    castIn,
    item: castIn.item === null ? undefined : index.items.get(castIn.item),
    rules: index.file.library.rules,
    top: findTop(index, panel, castIn, bed, region),
    movesAlone: false,
    lean,
    sideOf: () => designed.throughSide,
  });
  return typeof built === 'string' ? null : built.item;
}

/** A scene of the inserts where they are, with those things only that may be near: bars are many, and few come close. */
function sceneAround(
  { built, bars, sides, others }: Surroundings,
  own: readonly ClashItem[],
  clearance: number,
): PanelScene {
  const boxes = own.map((item) => ({ box: boundAll([item]), reach: Math.max(clearance, item.cover) + 1 }));
  const isClose = (other: Bounds) => boxes.some(({ box, reach }) => isNear(box, other, reach));
  return {
    ...built,
    scene: {
      ...built.scene,
      bars: bars.filter(({ solid }) => isClose(solid)),
      sides: sides.filter(({ pieces }) => pieces.some(isClose)),
      items: [...others.flatMap(({ item, box }) => (isClose(box) ? [item] : [])), ...own],
    },
  };
}

/** What the inserts that moved meet there and did not as designed. */
function findMeeting(site: ZoneSite, { castIns, which }: Moved): string | null {
  const { panel, rules, surroundings, designedMeetings } = site;
  const met = surroundings.flatMap((around) => {
    const own = castIns.flatMap((castIn, at) => solidsOf(site, around, castIn, at) ?? []);
    return listMeetings(panel, sceneAround(around, own, rules.clearance), rules);
  });
  if (met.length === 0) return null;
  for (const at of which) {
    const [found] = pickNew(pickOwn(met, castIns[at]!.id), designedMeetings[at]!);
    if (found !== undefined) return tellMeeting(found, drawingWords);
  }
  return null;
}

/**
 * What is in the way of inserts that stand elsewhere, the plate and strength aside: no concrete, another insert, too little cover, a bar. Only what
 * was not so as designed, in words without a full stop; null: nothing.
 */
export function findObstacle(site: ZoneSite, moved: Moved): string | null {
  const { index, panel, region } = site;
  for (const at of moved.which) {
    const castIn = moved.castIns[at]!;
    const out = findOutOfPlace(index, panel, region, castIn) ?? findOverlap(site, moved, castIn);
    if (out !== null) return out;
  }
  for (const at of moved.which) {
    const [short] = findShortCovers(site.designedCovers[at]!, listCovers(site, moved.castIns[at]!, null));
    if (short !== undefined) return `insert ${moved.castIns[at]!.id}: ${short}`;
  }
  return findMeeting(site, moved);
}
