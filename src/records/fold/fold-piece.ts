import { writeCanonical } from '../../job/canonical.ts';
import type { FactRecord, RecordKind } from '../record.ts';
import { slotOf } from '../slots.ts';
import { findSeenLater } from './find-seen-later.ts';
import { findWithdrawn } from './find-withdrawn.ts';
import { orderRecords } from './order-records.ts';
import type { PieceState, SlotState } from './piece-state.ts';
import { uniteRecords } from './unique-records.ts';

/**
 * Key of a slot in `PieceState.slots`.
 * @param item key of the insert; null: of the piece
 * @example slotKey(null, 'clearance'), slotKey('k7', 'place 1')
 */
export function slotKey(item: string | null, slot: string): string {
  // No slot has a stroke in its name, so that no two questions share a key.
  return `${slot}/${item ?? ''}`;
}

function compareIds(a: FactRecord, b: FactRecord): number {
  return a.id < b.id ? -1 : 1;
}

/** Adds a place to the group of a key. */
function addTo<Key, Value>(groups: Map<Key, Value[]>, key: Key, value: Value): void {
  const group = groups.get(key);
  if (group === undefined) groups.set(key, [value]);
  else group.push(value);
}

function sayDifferent(records: readonly FactRecord[]): boolean {
  const texts = new Set(records.map(({ kind, body }) => writeCanonical([kind, body])));
  return texts.size > 1;
}

/** @param byId records of the piece, each id once */
function foldDistinct(piece: string, byId: ReadonlyMap<string, FactRecord>): PieceState {
  const ordered = orderRecords(byId);
  const history = ordered.records;
  const withdrawn = findWithdrawn(history);

  const bySlot = new Map<string, number[]>();
  const byItem = new Map<string, number[]>();
  const beside = new Map<RecordKind, FactRecord[]>();
  for (const [place, record] of history.entries()) {
    addTo(byItem, record.item ?? '', place);
    if (record.kind === 'correction' || withdrawn.has(record.id)) continue;
    const slot = slotOf(record);
    if (slot === null) addTo(beside, record.kind, record);
    else addTo(bySlot, slotKey(record.item, slot), place);
  }

  const slots = new Map<string, SlotState>();
  const isEarlier = findSeenLater(ordered, bySlot.values());
  for (const [key, places] of bySlot) {
    const latest = places.filter((place) => isEarlier[place] === 0).map((place) => history[place]!);
    const earlier = places.filter((place) => isEarlier[place] === 1).map((place) => history[place]!);
    slots.set(key, {
      slot: slotOf(latest[0]!)!,
      item: latest[0]!.item,
      latest: latest.sort(compareIds),
      isConflict: latest.length > 1 && sayDifferent(latest),
      earlier,
    });
  }

  const isNoHead = findSeenLater(ordered, byItem.values());
  const heads = new Map<string, readonly string[]>();
  for (const [item, places] of byItem)
    heads.set(
      item,
      places
        .filter((place) => isNoHead[place] === 0)
        .map((place) => history[place]!.id)
        .sort(),
    );

  for (const group of beside.values()) group.sort(compareIds);
  return { piece, slots, beside, withdrawn, history, heads };
}

/**
 * What records say about one piece. The same set of records gives the same state, in whatever order, how often, and through whom they came; a record
 * that others have seen and that has not arrived is missing until it does.
 * @param records those of other pieces are left out
 */
export function foldPiece(piece: string, records: Iterable<FactRecord>): PieceState {
  const own: FactRecord[] = [];
  for (const record of records) if (record.piece === piece) own.push(record);
  return foldDistinct(piece, uniteRecords(own));
}

/** Every piece that records name, by id. A new record touches its own piece only: fold that one again by `foldPiece`. */
export function foldRecords(records: Iterable<FactRecord>): ReadonlyMap<string, PieceState> {
  const byPiece = new Map<string, Map<string, FactRecord>>();
  for (const [id, record] of uniteRecords(records)) {
    const own = byPiece.get(record.piece);
    if (own === undefined) byPiece.set(record.piece, new Map([[id, record]]));
    else own.set(id, record);
  }
  const sorted = [...byPiece].sort(([a], [b]) => (a < b ? -1 : 1));
  return new Map(sorted.map(([piece, own]) => [piece, foldDistinct(piece, own)]));
}
