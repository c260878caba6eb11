import { worseOf } from '../../records/fold/worse-of.ts';
import type { FactRecord, RecordOf } from '../../records/record.ts';
import type { YardContext } from './piece-report.ts';
import { ofKind, type PieceSlots, recordsOf } from './piece-slots.ts';
import { EXTENTS, type Extent, findPerson, mayDo } from './rights.ts';
import type { SeenIndex } from './seen-index.ts';

/** What was decided about an insert that is off. */
export interface DecisionAnswer {
  /** The one that counts; null: nobody decided on what is known now. */
  readonly record: RecordOf<'decision'> | null;
  /** It lets the insert stay as it is. */
  readonly isAccepted: boolean;
  /** Acceptances by somebody who may not: they change nothing. */
  readonly withoutRight: readonly RecordOf<'decision'>[];
}

/** The worse of two extents. */
export function worseExtent(a: Extent, b: Extent): Extent {
  return EXTENTS.indexOf(a) >= EXTENTS.indexOf(b) ? a : b;
}

/** A decision rests on what it had seen, and is about some of it. */
function isOn(decision: RecordOf<'decision'>, faults: readonly FactRecord[], seen: SeenIndex): boolean {
  return (
    faults.some(({ id }) => decision.body.about.includes(id)) && faults.every((fault) => seen.hasSeen(decision, fault))
  );
}

function mayAccept({ people }: YardContext, { person, body }: RecordOf<'decision'>, extent: Extent): boolean {
  const isNamed = body.role !== 'design engineer' || body.registration !== null;
  return isNamed && mayDo(findPerson(people, person), 'accept', extent, body.role).may;
}

/**
 * The decision that counts for the faults of an insert as they are known now. One made before a fault was known does not cover it; an acceptance by
 * somebody who may not is none; what was rejected once can only be accepted by a design engineer. Of several that did not know of each other the
 * worse counts.
 * @param item key of the insert; null: of the form
 * @param checkKey of now: what was decided on what it was to be before decides nothing
 * @param faults records that say what is wrong; not empty
 * @param extent how bad it is
 */
export function findDecision(
  context: YardContext,
  slots: PieceSlots,
  seen: SeenIndex,
  item: string | null,
  checkKey: string,
  faults: readonly FactRecord[],
  extent: Extent,
): DecisionAnswer {
  const all = ofKind(recordsOf(slots.of(item, 'decision')), 'decision').filter(
    (decision) => decision.checkKey === checkKey || decision.checkKey === null,
  );
  const now = all.filter((decision) => isOn(decision, faults, seen));
  const isRejected = (decision: RecordOf<'decision'>) =>
    all.some(
      (other) => other.body.verdict === 'rejected' && seen.hasSeen(decision, other) && isOn(other, faults, seen),
    );
  const withoutRight = now.filter(
    (decision) =>
      decision.body.verdict === 'accepted' &&
      !mayAccept(context, decision, isRejected(decision) ? worseExtent(extent, 'rejected') : extent),
  );
  const last = seen.standing(now.filter((decision) => !withoutRight.includes(decision)));
  const record = last.length === 0 ? null : worseOf(last);
  return { record, isAccepted: record?.body.verdict === 'accepted', withoutRight };
}
