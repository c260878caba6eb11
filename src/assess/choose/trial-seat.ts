import type { AnchorageGroup } from '../../engine/checks/anchorage-group.ts';
import type { UncoveredUse } from '../../engine/checks/uncovered-use.ts';
import type { Region } from '../../engine/geometry/region.ts';
import type { ThreadName } from '../../engine/hardware/threads.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import { type ConnectionSeat, type SeatParts, seatConnection } from '../../job/resolve/connection-seat.ts';
import { fillSeat, findGoverningInsert, ownHardware, type SeatHardware } from '../../job/resolve/fill-seat.ts';
import { type Judgement, judge, prepareOrSay } from '../judge.ts';
import { type LoadCase, solveLoadCases } from '../load-cases.ts';

/** Counts full checks, so that their number can be held. */
export interface CheckCounter {
  checks: number;
}

/** A judgement, and whether it could be a pass elsewhere: false where something that no place changes is not covered. */
export interface TrialJudgement extends Judgement {
  readonly canBeCovered: boolean;
}

/** A connection's seat in which inserts are tried, one after another. */
export interface TrialSeat {
  readonly seat: ConnectionSeat;
  /** The full check with an insert in all places, numbers only. */
  readonly judge: (item: CatalogueItem, hardware: SeatHardware) => TrialJudgement;
  /** The full check of the connection with the inserts, bolts and holes that it has. */
  readonly judgeAsIs: (items: readonly CatalogueItem[]) => TrialJudgement;
}

function refuse(reasons: readonly string[]): TrialJudgement {
  return { state: 'cannot be computed', ratio: null, governing: null, reasons, plate: null, canBeCovered: false };
}

/** Whether two members have the same outline and openings; their thickness may differ. */
function isSameFace(a: AnchorageGroup['member'], b: AnchorageGroup['member']): boolean {
  const rings = (member: AnchorageGroup['member']) => [member.outline ?? [], ...member.openings];
  const [one, other] = [rings(a), rings(b)];
  return (
    one.length === other.length &&
    one.every((ring, r) => {
      const twin = other[r]!;
      return ring.length === twin.length && ring.every(([x, y], i) => x === twin[i]![0] && y === twin[i]![1]);
    })
  );
}

/** Opens a seat for trials: its loads are solved once for each thread. */
export function openTrials(parts: SeatParts, counter: CheckCounter): TrialSeat {
  const seat = seatConnection(parts);
  const solved = new Map<ThreadName, readonly LoadCase[]>();
  // The face is the same for most inserts: its region is found with the first.
  let first: { readonly member: AnchorageGroup['member']; readonly region: Region } | null = null;
  const judgeWith = (item: CatalogueItem, hardware: SeatHardware, uses: readonly UncoveredUse[]): TrialJudgement => {
    counter.checks += 1;
    const filled = fillSeat(seat, item, hardware, uses);
    if ('ok' in filled) return refuse(filled.reasons);
    const { member } = filled.group;
    const prepared = prepareOrSay(
      filled.group,
      first !== null && isSameFace(first.member, member) ? first.region : null,
    );
    if (typeof prepared === 'string') return refuse([prepared]);
    first ??= { member, region: prepared.region };
    // Forces rest on the thread's stress area, not on the rest of the insert, nor on the class of the bolts or the size of holes.
    let cases = solved.get(item.thread);
    if (cases === undefined) {
      cases = solveLoadCases({ actions: seat.actions, plate: seat.plateFor(item.thread) }, prepared);
      solved.set(item.thread, cases);
    }
    const judgement = judge(prepared, cases, seat.actions.kind !== 'none', filled.notCovered);
    const { state, ratio, governing, reasons, plate } = judgement;
    const canBeCovered = prepared.uncovered.length === 0 && filled.partsAreCovered;
    return { state, ratio, governing, reasons, plate, canBeCovered };
  };
  return {
    seat,
    judge: (item, hardware) => judgeWith(item, hardware, seat.uses),
    judgeAsIs(items) {
      const { item, uses } = findGoverningInsert(seat, items);
      return judgeWith(item, ownHardware(seat), uses);
    },
  };
}
