import { isStainlessClass, type PropertyClass } from '../../engine/hardware/property-classes.ts';
import type { ThreadName } from '../../engine/hardware/threads.ts';
import { checkBolts } from '../../job/check/check-connections.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { ConnectionSeat } from '../../job/resolve/connection-seat.ts';
import type { SeatHardware } from '../../job/resolve/fill-seat.ts';
import type { Changes } from './choice.ts';
import { findCoverFault, findRoomFault, type Room } from './room.ts';
import { type SuitedHoles, suitHoles } from './suit-holes.ts';

/** Whether an insert fits where the connection's inserts are, with which bolts and holes; or why not. */
export type Fit =
  | { readonly kind: 'fits'; readonly hardware: SeatHardware; readonly changes: Pick<Changes, 'holes' | 'boltThread'> }
  | { readonly kind: 'does not fit'; readonly reason: string };

/** Why the connection's bolts do not go into an insert: thread, finish, engagement as far as they are given; null where they do. */
function findBoltFault({ connection, panel, castIns, fixture }: ConnectionSeat, item: CatalogueItem): string | null {
  const { boltThread, boltFinish, engagement_mm } = connection;
  if (boltThread === null && boltFinish === null && engagement_mm === null) return null;
  const inserts = [{ path: [], hole: null, castIn: castIns[0]!, item }];
  return checkBolts({ path: [], value: connection }, { panel, fixture, inserts })[0]?.text ?? null;
}

/** Why bolts of a class are not of a finish that an insert takes; null where they may be. */
function findClassFault(boltClass: PropertyClass, item: CatalogueItem): string | null {
  const isStainless = isStainlessClass(boltClass);
  if (item.boltFinishes.some((finish) => (finish === 'stainless') === isStainless)) return null;
  const words = isStainless ? 'stainless' : 'not stainless';
  return `the bolts of class ${boltClass} are ${words}; ${item.id} takes: ${item.boltFinishes.join(', ')}`;
}

/**
 * Says of each insert whether it fits a connection: the same rules as when a job is read, the cover that the rules ask for behind the
 * foot, bolts and holes. An insert that stands there already fits by its place, whatever is left behind it.
 *
 * @param drills whether holes and a given bolt thread may be made to suit
 * @param present types of the connection's inserts as it stands
 */
export function openFitting(
  seat: ConnectionSeat,
  room: Room,
  drills: boolean,
  present: ReadonlySet<string>,
): (item: CatalogueItem) => Fit {
  const boltClass = seat.connection.boltClass ?? seat.rules.defaults.boltClass;
  const { boltThread } = seat.connection;
  const wantedCover = seat.rules.cover.behindFoot_mm;
  const suited = new Map<ThreadName, SuitedHoles>();
  const suit = (item: CatalogueItem): SuitedHoles => {
    const known = suited.get(item.thread) ?? suitHoles(seat, item, drills);
    suited.set(item.thread, known);
    return known;
  };
  // With holes made to suit, a bolt thread that is given goes with them.
  const bolted: ConnectionSeat = drills ? { ...seat, connection: { ...seat.connection, boltThread: null } } : seat;
  return (item) => {
    const isThere = present.has(item.id) && present.size === 1;
    const reason =
      (isThere
        ? null
        : (findRoomFault(room, item) ?? findCoverFault(room, item, wantedCover) ?? findClassFault(boltClass, item))) ??
      findBoltFault(bolted, item);
    if (reason !== null) return { kind: 'does not fit', reason };
    const holes = suit(item);
    if (holes.kind === 'unsuited') return { kind: 'does not fit', reason: holes.reason };
    const isOtherThread = boltThread !== null && boltThread !== item.thread;
    return {
      kind: 'fits',
      hardware: { boltClass, holes: holes.holes },
      changes: { holes: holes.change, boltThread: isOtherThread ? { from: boltThread, to: item.thread } : null },
    };
  };
}
