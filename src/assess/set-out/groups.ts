import { printGroup, wholeMillimetres } from '../../engine/form/whole-millimetres.ts';
import { isBoardGroup } from './board-group.ts';
import type { SetOutGroup, SetOutItem } from './set-out.ts';

/** Distance of two members as the tape shows it [mm], from what is exact. */
function span(a: SetOutItem, b: SetOutItem): number {
  const height = (a.aboveBed ?? 0) - (b.aboveBed ?? 0);
  return Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1], height);
}

function findDiagonal(members: readonly SetOutItem[]): SetOutGroup['diagonal'] {
  let longest: SetOutGroup['diagonal'] = null;
  let most = 0;
  for (const [i, a] of members.entries()) {
    for (const b of members.slice(i + 1)) {
      const length = span(a, b);
      if (length <= most + 1e-9) continue;
      most = length;
      longest = { from: a.number, to: b.number, length: wholeMillimetres(length) };
    }
  }
  return longest;
}

/**
 * Inserts of one connection from the middle of their group. Printed centre + printed offset is the member's own printed place, so that nothing
 * adds up: each place is off by half a millimetre at most, whichever way it is measured.
 */
export function findGroups(items: readonly SetOutItem[]): readonly SetOutGroup[] {
  const byConnection = new Map<string, SetOutItem[]>();
  for (const item of items) {
    if (item.connection === null) continue;
    const members = byConnection.get(item.connection) ?? [];
    byConnection.set(item.connection, members);
    members.push(item);
  }
  return [...byConnection].map(([connection, members]) => {
    const { centre, offsets } = printGroup(members.map(({ taped }) => taped));
    return {
      connection,
      place: members[0]!.place,
      centre,
      members: members.map(({ number }, i) => ({
        number,
        dx: offsets[i]![0],
        dy: offsets[i]![1],
      })),
      diagonal: findDiagonal(members),
      hasTemplate: isBoardGroup(members.map(({ way }) => way)),
    };
  });
}
