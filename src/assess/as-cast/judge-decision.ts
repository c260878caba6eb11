import type { FactRecord, RecordOf } from '../../records/record.ts';
import type { YardContext } from '../yard/piece-report.ts';
import { ofKind, type PieceSlots, recordsOf } from '../yard/piece-slots.ts';
import { type Act, findPerson, mayDo } from '../yard/rights.ts';
import type { SeenIndex } from '../yard/seen-index.ts';
import type { AsCastConnection, RemedyKind } from './as-cast-report.ts';

type Decision = RecordOf<'remedy-decided'>;

/** From the one that leaves most as it is to the one that leaves nothing: of decisions that did not know of each other the last counts. */
const BY_WEIGHT: readonly RemedyKind[] = [
  'as is',
  'plate moved',
  'packers or other bolts',
  'holes enlarged',
  'holes slotted',
  'plate drilled anew',
  'fewer inserts',
  'not usable',
];

/** What was decided about a connection. */
export interface DecisionFound {
  readonly decision: Decision | null;
  /** Decisions that did not know of each other, and differ. */
  readonly isConflict: boolean;
  readonly fallen: AsCastConnection['fallen'];
  /** Decisions by somebody who may not. */
  readonly withoutRight: readonly Decision[];
}

/** Why a person may not decide it; null: he may. */
function findLackOfRight({ people }: YardContext, { person, body }: Decision, act: Act): string | null {
  if (body.role === 'design engineer' && body.registration === null)
    return 'decided as design engineer without a registration';
  const permission = mayDo(findPerson(people, person), act, 'inside the limits', body.role);
  return permission.may ? null : permission.why;
}

function saySame(a: Decision, b: Decision): boolean {
  return a.body.remedy === b.body.remedy && JSON.stringify(a.body.change) === JSON.stringify(b.body.change);
}

/**
 * The decision that counts: by somebody who may, who had seen every survey and measurement that the places rest on now. A newer survey of a member opens the
 * connection again. Of several that did not know of each other the one that gives up most counts, and they are a conflict where they differ.
 *
 * @param key permanent key of the connection
 * @param rests records of the places of its inserts as they count now
 * @param actOf who may decide what was decided, as it is computed now
 */
export function judgeDecisions(
  context: YardContext,
  slots: PieceSlots,
  seen: SeenIndex,
  key: string,
  rests: readonly FactRecord[],
  actOf: (decision: Decision) => Act,
): DecisionFound {
  const all = ofKind(recordsOf(slots.of(null, `remedy ${key}`)), 'remedy-decided');
  const fallen: { record: Decision; why: string }[] = [];
  const withoutRight: Decision[] = [];
  const counting = all.filter((record) => {
    const unseen = rests.filter((one) => !seen.hasSeen(record, one));
    if (unseen.length > 0) {
      const what = unseen.some(({ kind }) => kind === 'surveyed') ? 'a survey' : 'a measurement';
      fallen.push({ record, why: `${what} of its inserts came that it had not seen: decide anew` });
      return false;
    }
    const lack = findLackOfRight(context, record, actOf(record));
    if (lack === null) return true;
    fallen.push({ record, why: lack });
    withoutRight.push(record);
    return false;
  });
  const standing = seen.standing(counting);
  const weight = ({ body }: Decision) => BY_WEIGHT.indexOf(body.remedy);
  const [first] = standing;
  if (first === undefined) return { decision: null, isConflict: false, fallen, withoutRight };
  const decision = standing.reduce((most, one) => (weight(one) > weight(most) ? one : most), first);
  return { decision, isConflict: standing.some((one) => !saySame(one, decision)), fallen, withoutRight };
}
