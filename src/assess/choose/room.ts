import type { Region } from '../../engine/geometry/region.ts';
import { standInEachOther } from '../../job/check/check-cast-ins.ts';
import { checkInPlace, findPlace, type Place } from '../../job/check/check-place.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Panel } from '../../job/documents/panel.ts';

/** An insert of the panel that is not of this connection, with the diameter of its body [mm]. */
export interface Neighbour {
  readonly castIn: CastIn;
  readonly body: number;
}

/** Two inserts of one face with the least concrete between them; `body` null where both are of this connection. */
interface Pair {
  readonly own: CastIn;
  readonly other: CastIn;
  readonly body: number | null;
}

/** What the places of a connection have for an insert: found once, for every insert that is tried there. Lengths mm. */
export interface Room {
  readonly places: readonly Place[];
  readonly tightest: readonly Pair[];
  /** From the top of an insert to the far face, where that is least; null in an edge. */
  readonly depth: number | null;
}

function findTightest(pairs: readonly Pair[]): readonly Pair[] {
  const gap = ({ own, other, body }: Pair) =>
    Math.hypot(own.x_mm - other.x_mm, own.y_mm - other.y_mm) - (body ?? 0) / 2;
  return pairs.length === 0 ? [] : [pairs.reduce((least, pair) => (gap(pair) < gap(least) ? pair : least))];
}

/** Looks at the places of a connection's inserts and at what stands beside them. */
export function surveyRoom(
  panel: Panel,
  region: Region,
  castIns: readonly CastIn[],
  neighbours: readonly Neighbour[],
): Room {
  const places = castIns.map((castIn) => findPlace(castIn, panel, region, []));
  const beside = castIns.flatMap((own) => neighbours.map(({ castIn: other, body }) => ({ own, other, body })));
  const among = castIns.flatMap((own, i) => castIns.slice(0, i).map((other) => ({ own, other, body: null })));
  const isEdge = castIns[0]?.face === 'edge';
  return {
    places,
    tightest: [...findTightest(beside), ...findTightest(among)],
    depth: isEdge ? null : Math.min(...places.map(({ depth, castIn }) => depth - castIn.recess_mm)),
  };
}

/** Why an insert does not fit into the places: panel, layers, sides, what stands beside it; null where it does. */
export function findRoomFault({ places, tightest }: Room, item: CatalogueItem): string | null {
  for (const place of places) {
    const fault = checkInPlace(place, item)[0];
    if (fault !== undefined) return fault.text;
  }
  for (const { own, other, body } of tightest)
    if (standInEachOther(own, item.bodyDiameter_mm, other, body ?? item.bodyDiameter_mm))
      return `${item.id}, ${item.bodyDiameter_mm} mm thick, in place of insert ${own.id} would stand in insert ${other.id}`;
  return null;
}

/** Least concrete behind the feet of inserts of one type [mm]; null for inserts in an edge. */
export function findLeastCover({ depth }: Room, item: CatalogueItem): number | null {
  return depth === null ? null : depth - item.length_mm;
}

/** Why too little concrete is left behind the feet; null where it is as much as wanted [mm]. */
export function findCoverFault(room: Room, item: CatalogueItem, wanted: number): string | null {
  const left = findLeastCover(room, item);
  return left === null || left >= wanted
    ? null
    : `${item.id}, ${item.length_mm} mm long, leaves ${left} mm of cover behind the foot; the rules ask for ${wanted} mm`;
}
