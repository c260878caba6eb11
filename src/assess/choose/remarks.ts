import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { JobFile } from '../../job/documents/job-file.ts';
import type { SeatParts } from '../../job/resolve/connection-seat.ts';
import { findUnfitHolding } from './apply-choice.ts';
import type { Changes, PassingInsert } from './choice.ts';
import { findLeastCover, type Room } from './room.ts';

function describeFinish({ finish, coating_um }: CatalogueItem): string {
  return coating_um > 0 ? `${finish} (${coating_um} µm)` : finish;
}

/** A finish that none of the present inserts has, or with less coating. */
function noteFinish(item: CatalogueItem, present: readonly CatalogueItem[], environment: string): string[] {
  if (present.some(({ finish, coating_um }) => finish === item.finish && coating_um <= item.coating_um)) return [];
  const now = [...new Set(present.map(describeFinish))].join(', ');
  return [
    `finish ${describeFinish(item)} in place of ${now}: see that it lasts here (corrosivity ${environment}) and suits the bolts`,
  ];
}

/** What goes along with a choice, and what a person should look at. */
export type Remarks = Pick<PassingInsert, 'consequences' | 'notes'>;

/**
 * Says of each insert what goes along with it, and what a person should look at before it is taken, though the check passes.
 * @param present the connection's inserts as it stands
 */
export function openRemarks(
  parts: SeatParts,
  room: Room,
  present: readonly CatalogueItem[],
  library: JobFile['library'],
): (item: CatalogueItem, changes: Changes) => Remarks {
  const detail = library.details.details.find(({ id }) => id === parts.connection.detail);
  const isHeld = parts.castIns.some(({ holding }) => holding !== null);
  const wanted = parts.rules.cover.behindFoot_mm;
  return (item, changes) => {
    const consequences: string[] = [];
    if (isHeld)
      for (const { id, thread } of findUnfitHolding(parts, item.thread, library.holding.ways))
        consequences.push(`way of holding ${id} for ${thread} taken off: choose one for ${item.thread}`);
    if (detail !== undefined && changes.holes !== null)
      consequences.push(`its plate no longer that of detail ${detail.id}, but one of its own`);
    const notes = noteFinish(item, present, parts.rules.environment);
    if (detail !== undefined && detail.item !== null && detail.item !== item.id)
      notes.push(`standard detail ${detail.id} asks for ${detail.item}`);
    if (changes.boltClass?.to === '10.9' && item.boltFinishes.includes('galvanised'))
      notes.push('bolts 10.9: hot-dip galvanised only by a process that rules out hydrogen embrittlement');
    const cover = findLeastCover(room, item);
    if (cover !== null && cover < wanted)
      notes.push(`${cover} mm of cover behind the foot; the rules ask for ${wanted} mm`);
    return { consequences, notes };
  };
}
