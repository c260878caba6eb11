import type { FactRecord } from '../record.ts';
import { NumberHeap } from './number-heap.ts';

/** Records of one piece in an order in which each comes after those that it has seen. */
export interface OrderedRecords {
  readonly records: readonly FactRecord[];
  /** For each record the places of the seen ones that are here, all before its own. */
  readonly seen: readonly (readonly number[])[];
}

/** Places of what a record has seen. What has not arrived is not there yet; nothing has seen itself. */
function placesSeen(record: FactRecord, own: number, placeOf: ReadonlyMap<string, number>): number[] {
  const places: number[] = [];
  for (const id of record.seen) {
    const place = placeOf.get(id);
    if (place !== undefined && place !== own) places.push(place);
  }
  return places;
}

/**
 * The lowest place of a ring, where each has seen the next. Only a faulty writer makes one, since an id is not known before its record is written.
 * @param isPlaced records that are in no ring; every other one has seen some that is not placed
 */
function findRing(seen: readonly (readonly number[])[], isPlaced: Uint8Array, start: number): number {
  const steps = new Map<number, number>();
  const walk: number[] = [];
  let at = start;
  while (!steps.has(at)) {
    steps.set(at, walk.length);
    walk.push(at);
    const next = seen[at]!.find((place) => isPlaced[place] === 0);
    if (next === undefined) return at;
    at = next;
  }
  return walk.slice(steps.get(at)).reduce((lowest, place) => Math.min(lowest, place));
}

/** Places in an order in which each comes after those that it has seen, otherwise rising. Breaks rings: what their lowest one has seen in them is dropped. */
function sortBySeen(seen: number[][]): readonly number[] {
  const seers: number[][] = seen.map(() => []);
  const waitsFor = Int32Array.from(seen, (places) => places.length);
  for (const [place, places] of seen.entries()) for (const earlier of places) seers[earlier]!.push(place);
  const ready = new NumberHeap();
  for (const [place, count] of waitsFor.entries()) if (count === 0) ready.push(place);
  const order: number[] = [];
  const isPlaced = new Uint8Array(seen.length);
  let lowest = 0;
  while (order.length < seen.length) {
    let place = ready.pop();
    if (place === undefined) {
      while (isPlaced[lowest] === 1) lowest += 1;
      place = findRing(seen, isPlaced, lowest);
      seen[place] = seen[place]!.filter((earlier) => isPlaced[earlier] === 1);
    }
    order.push(place);
    isPlaced[place] = 1;
    for (const seer of seers[place]!) {
      // One of a broken ring waits for nothing any more.
      if (isPlaced[seer] === 1) continue;
      waitsFor[seer] = waitsFor[seer]! - 1;
      if (waitsFor[seer] === 0) ready.push(seer);
    }
  }
  return order;
}

/**
 * Puts records of one piece in order by what they have seen, never by a clock; those that nothing orders stand in the order of their ids.
 * @param byId each id once
 */
export function orderRecords(byId: ReadonlyMap<string, FactRecord>): OrderedRecords {
  const byName = [...byId.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const placeOf = new Map(byName.map((record, place) => [record.id, place]));
  const seen = byName.map((record, place) => placesSeen(record, place, placeOf));
  // Where no clock was wrong the ids are in order already.
  if (seen.every((places, place) => places.every((earlier) => earlier < place))) return { records: byName, seen };
  const order = sortBySeen(seen);
  const newPlace = new Int32Array(order.length);
  for (const [place, old] of order.entries()) newPlace[old] = place;
  return {
    records: order.map((old) => byName[old]!),
    seen: order.map((old) => seen[old]!.map((earlier) => newPlace[earlier]!)),
  };
}
