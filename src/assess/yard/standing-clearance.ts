import { foldPiece } from '../../records/fold/fold-piece.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import { worseOf } from '../../records/fold/worse-of.ts';
import type { FactRecord, RecordOf } from '../../records/record.ts';
import { hashInputs } from './piece-inputs.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { OpenPoint, PieceReport, YardContext } from './piece-report.ts';
import { type PieceSlots, recordsOf } from './piece-slots.ts';
import { findPerson, mayDo } from './rights.ts';
import type { SeenIndex } from './seen-index.ts';

/** What lets a piece be poured. */
type Given = RecordOf<'cleared'> | RecordOf<'override'>;
type ClearanceRecord = Given | RecordOf<'held'>;

/** What is decided about pouring a piece. */
export interface StandingClearance {
  readonly is: PieceReport['clearance']['is'];
  readonly record: ClearanceRecord | null;
  /** Given, and standing no more: why. */
  readonly fallen: { readonly record: ClearanceRecord; readonly why: string } | null;
  readonly withoutRight: readonly ClearanceRecord[];
}

/** What the judging of a clearance is made with. */
export interface ClearanceSource {
  readonly context: YardContext;
  readonly plan: PiecePlan;
  readonly state: PieceState;
  readonly slots: PieceSlots;
  readonly seen: SeenIndex;
  /** Open points of the piece by some of its records, as they are judged today. */
  readonly pointsOf: (state: PieceState) => readonly OpenPoint[];
}

function isClearance(record: FactRecord): record is ClearanceRecord {
  return record.kind === 'cleared' || record.kind === 'held' || record.kind === 'override';
}

function mayGive({ people }: YardContext, record: ClearanceRecord): boolean {
  if (record.kind === 'held') return true;
  const act =
    record.kind === 'override' ? 'override' : record.body.condition === null ? 'clear' : 'clear with a condition';
  return mayDo(findPerson(people, record.person), act, undefined, record.body.role).may;
}

/** Numbers of the inserts that were checked by another key than that of now, and the form. */
function listChanged(plan: PiecePlan, known: PieceState): readonly string[] {
  const isOther = (item: string | null, key: string | undefined) =>
    [...known.slots.values()].some(
      (slot) =>
        slot.item === item &&
        (item === null ? slot.slot === 'form' : slot.slot.startsWith('sight') || slot.slot.startsWith('place')) &&
        slot.latest.every(({ checkKey }) => checkKey !== key),
    );
  const numbers = plan.setOut.items
    .filter(({ castIn }) => isOther(castIn.key, plan.keys.get(castIn.key)))
    .map(({ number }) => `no. ${number}`);
  return isOther(null, plan.formKey) ? ['the form', ...numbers] : numbers;
}

/** Why it does not rest on what the piece is to be by the revision of now; null: it does. */
function findOtherInputs({ context, plan }: ClearanceSource, { body, seen }: Given, known: PieceState): string | null {
  const { revision, inputs } = body.frozen;
  if (hashInputs(revision.fingerprint, plan, known) === inputs) return null;
  const here = new Set(known.history.map(({ id }) => id));
  if (seen.some((id) => !here.has(id))) return 'not everything that it was given on has arrived here yet';
  const changed = listChanged(plan, known);
  if (changed.length > 0)
    return `cleared by revision ${revision.letter}; revision ${context.revision.letter} changed ${changed.join(', ')}`;
  if (revision.fingerprint !== context.revision.fingerprint)
    return `cleared by revision ${revision.letter}; revision ${context.revision.letter} has other inserts in it`;
  return 'what it says it was given on is not what the records say';
}

/** Why it was not for a clearance to let this be, by what was open then; null: it was. */
function findBreach(record: Given, open: readonly string[], hard: string | null): string | null {
  if (record.kind === 'override') return null;
  if (record.body.condition === null && open.length > 0)
    return `cleared without a condition though it was open: ${open[0]}`;
  return hard === null ? null : `cleared though no condition can lift this: ${hard}`;
}

/** What came up between a clearance and what is known then, by the work of now; null: nothing. */
function findNews(before: readonly OpenPoint[], then: readonly OpenPoint[]): string | null {
  const had = new Set(before.map(({ words }) => words));
  const since = then.find(({ words }) => !had.has(words));
  return since === undefined ? null : `since then: ${since.words}`;
}

/** Why a clearance does not stand by the work of now; null: it does. It rests on what its writer knew, and nothing may have come up since. */
function findFall(source: ClearanceSource, record: Given, known: PieceState, then: PieceState): string | null {
  const other = findOtherInputs(source, record, known);
  if (other !== null) return other;
  const before = source.pointsOf(known);
  const hard = before.find(({ isHard }) => isHard)?.words ?? null;
  const open = before.map(({ words }) => words);
  return findBreach(record, open, hard) ?? findNews(before, source.pointsOf(then));
}

/**
 * The same for a piece that was poured by an older revision: what it was to be then is not known here. So it says itself what was open, and whatever
 * was looked at anew between clearance and pour, of an insert that is to be another now, speaks against it.
 */
function findOldFall(source: ClearanceSource, record: Given, known: PieceState, then: PieceState): string | null {
  const breach = findBreach(record, record.body.frozen.open, null);
  if (breach !== null) return breach;
  const { keys, setOut } = source.plan;
  const had = new Set(known.history.map(({ id }) => id));
  const anew = then.history.find((one) => {
    if (had.has(one.id) || one.item === null || one.checkKey === keys.get(one.item)) return false;
    return one.kind === 'measured' || (one.kind === 'placed' && !(one.body.type && one.body.face && one.body.firm));
  });
  if (anew !== undefined) {
    const number = setOut.items.find(({ castIn }) => castIn.key === anew.item)?.number;
    return `since then: ${number === undefined ? 'an insert that is no more in it' : `no. ${number}`} was looked at anew`;
  }
  return findNews(source.pointsOf(known), source.pointsOf(then));
}

function nameClearance(record: ClearanceRecord): StandingClearance['is'] {
  if (record.kind === 'held') return 'held';
  if (record.kind === 'override') return 'override';
  return record.body.condition === null ? 'cleared' : 'cleared with a condition';
}

/**
 * What stands about pouring a piece: what people who may have decided, the worse of several who did not know of each other, as long as it rests on what
 * is known. Of a poured piece, what stood when it was poured.
 * @param poured the poured record that counts; null: not poured
 */
export function findStandingClearance(source: ClearanceSource, poured: RecordOf<'poured'> | null): StandingClearance {
  const { context, slots, seen, state } = source;
  const all = recordsOf(slots.of(null, 'clearance')).filter(isClearance);
  const withoutRight = all.filter((record) => !mayGive(context, record));
  const rightful = all.filter(
    (record) => !withoutRight.includes(record) && (poured === null || seen.hasSeen(poured, record)),
  );
  const last = seen.standing(rightful);
  if (last.length === 0) return { is: 'none', record: null, fallen: null, withoutRight };
  const record = worseOf(last);
  if (record.kind === 'held') return { is: 'held', record, fallen: null, withoutRight };
  const then = poured === null ? state : foldPiece(state.piece, seen.knownTo(poured));
  const known = foldPiece(state.piece, seen.knownTo(record));
  const isByOldRevision = poured !== null && poured.revision?.fingerprint !== context.revision.fingerprint;
  const why = (isByOldRevision ? findOldFall : findFall)(source, record, known, then);
  if (why !== null) return { is: 'none', record, fallen: { record, why }, withoutRight };
  return { is: nameClearance(record), record, fallen: null, withoutRight };
}
