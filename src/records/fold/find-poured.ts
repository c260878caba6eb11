import type { FactRecord, RecordOf } from '../record.ts';
import { findSeenBy, findSeenLater } from './find-seen-later.ts';
import { findWithdrawn } from './find-withdrawn.ts';
import { type OrderedRecords, orderRecords } from './order-records.ts';
import type { PieceState, PouredState } from './piece-state.ts';
import { worseOf } from './worse-of.ts';

type Clearance = PouredState['clearance'];

/** From the best to the worst. */
const CLEARANCES: readonly Clearance[] = [
  'cleared',
  'cleared with a condition',
  'on an override',
  'without clearance',
  'while held',
];

/** From what weighs least: a clearance that came for a pour all the same, one that came after it, none. */
const TOO_LATE: readonly PouredState['tooLate'][] = ['unknown to it', 'late', null];

interface OnePoured {
  readonly clearance: Clearance;
  readonly tooLate: PouredState['tooLate'];
}

function rate({ clearance, tooLate }: OnePoured): number {
  return CLEARANCES.indexOf(clearance) * TOO_LATE.length + TOO_LATE.indexOf(tooLate);
}

/** What the clearance of a piece is by these records: the worse one where several are the latest. */
function standing(ordered: OrderedRecords, places: readonly number[]): Clearance {
  const isEarlier = findSeenLater(ordered, [places]);
  const latest = places.filter((place) => isEarlier[place] === 0).map((place) => ordered.records[place]!);
  if (latest.length === 0) return 'without clearance';
  const counts = worseOf(latest);
  if (counts.kind === 'held') return 'while held';
  if (counts.kind === 'override') return 'on an override';
  return counts.kind === 'cleared' && counts.body.condition === null ? 'cleared' : 'cleared with a condition';
}

function isClearance({ kind }: FactRecord): boolean {
  return kind === 'cleared' || kind === 'held' || kind === 'override';
}

function judgeOne(ordered: OrderedRecords, state: PieceState, poured: number): OnePoured {
  const { records } = ordered;
  const isSeen = findSeenBy(ordered, poured);
  const known = records.flatMap((record, place) => (isSeen[place] === 1 && isClearance(record) ? [place] : []));
  // As it stood: by the corrections that the writer knew. As it stands: a clearance that turned out to be a mistake was none. A correction
  // made afterwards can thus show that something was missing, but never that nothing was.
  const withdrawnThen = findWithdrawn(records.filter((_, place) => isSeen[place] === 1));
  const stood = standing(
    ordered,
    known.filter((place) => !withdrawnThen.has(records[place]!.id)),
  );
  const stands = standing(
    ordered,
    known.filter((place) => !state.withdrawn.has(records[place]!.id)),
  );
  const clearance = CLEARANCES.indexOf(stood) > CLEARANCES.indexOf(stands) ? stood : stands;
  if (clearance !== 'without clearance' && clearance !== 'while held') return { clearance, tooLate: null };
  const others = records.flatMap((record, place) => {
    const counts = (record.kind === 'cleared' || record.kind === 'override') && !state.withdrawn.has(record.id);
    return counts && isSeen[place] === 0 ? [findSeenBy(ordered, place)[poured] === 1] : [];
  });
  if (others.length === 0) return { clearance, tooLate: null };
  return { clearance, tooLate: others.every((isAfter) => isAfter) ? 'late' : 'unknown to it' };
}

/**
 * How a poured piece stands to its clearance. What each poured record had seen decides, not what came since: a clearance that it did not know of, or that
 * came after it, makes nothing good. Of several poured records the worst counts, so that pouring it again on paper hides nothing. Null: not poured.
 */
export function findPoured(state: PieceState): PouredState | null {
  const poured = state.history.filter(
    (record): record is RecordOf<'poured'> => record.kind === 'poured' && !state.withdrawn.has(record.id),
  );
  if (poured.length === 0) return null;
  const ordered = orderRecords(new Map(state.history.map((record) => [record.id, record])));
  const ids = new Set(poured.map(({ id }) => id));
  const judged = ordered.records.flatMap(({ id }, place) => (ids.has(id) ? [judgeOne(ordered, state, place)] : []));
  const worst = judged.reduce((worse, one) => (rate(one) > rate(worse) ? one : worse));
  return { poured, ...worst };
}

/** Poured records that a correction took out: who reads the piece must see them, since a pour cannot be undone. */
export function findPouredWithdrawn(state: PieceState): readonly RecordOf<'poured'>[] {
  return state.history.filter(
    (record): record is RecordOf<'poured'> => record.kind === 'poured' && state.withdrawn.has(record.id),
  );
}
