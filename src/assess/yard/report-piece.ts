import { findPoured } from '../../records/fold/find-poured.ts';
import type { PieceState, PouredState } from '../../records/fold/piece-state.ts';
import type { FactRecord } from '../../records/record.ts';
import { raiseAfterFlags } from './after-flags.ts';
import { findAfterPhase } from './after-phase.ts';
import { type FoundRecords, findFarthest, findPlaces, listFoundPlaces } from './find-places.ts';
import { raiseFlags } from './flags.ts';
import { listOpenPoints } from './open-points.ts';
import { hashInputs } from './piece-inputs.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { OpenPoint, PiecePhase, PieceReport, YardContext } from './piece-report.ts';
import { ofKind, type PieceSlots, readSlots, recordsOf } from './piece-slots.ts';
import type { PlacingMoment, Recognised } from './placing-answer.ts';
import { recognise } from './recognise.ts';
import { type FormFinding, reportForm } from './report-form.ts';
import { type InsertFinding, reportInsert } from './report-insert.ts';
import { findPerson, mayDo } from './rights.ts';
import { indexSeen, type SeenIndex } from './seen-index.ts';
import { findStandingClearance, type StandingClearance } from './standing-clearance.ts';

/** What is known of the form and the inserts of a piece by some of its records. */
interface Checked {
  readonly slots: PieceSlots;
  readonly seen: SeenIndex;
  readonly form: FormFinding;
  readonly recognised: Recognised | null;
  readonly inserts: readonly InsertFinding[];
  readonly openPoints: readonly OpenPoint[];
}

/** Somebody looked at something of the second stage: the cage is in. */
function hasStage2Begun({ slots }: PieceState): boolean {
  return [...slots.values()].some(({ slot }) => slot === 'sight 2' || slot === 'place 2' || slot === 'screed');
}

/** Where the work is; null: wherever each insert belongs to. */
function findMoment(state: PieceState, slots: PieceSlots): PlacingMoment | null {
  const isOut = slots.of(null, 'stripped') !== null || slots.of(null, 'uncovered') !== null;
  if (isOut || state.beside.has('surveyed')) return 'hard';
  const isScreeded = [...state.slots.values()].some(({ slot }) => slot === 'screed');
  if (isScreeded || slots.of(null, 'poured') !== null) return 'after screed';
  return hasStage2Begun(state) ? 2 : null;
}

/** Mark of the handed partner, whichever of the two was drawn first; null: none. */
function findPartner({ index }: YardContext, { setOut }: PiecePlan): string | null {
  const { mark, handedOf } = setOut.panel;
  return handedOf ?? index.file.job.panels.find((panel) => panel.handedOf === mark)?.mark ?? null;
}

/** Inserts that somebody saw in the face or side form that they belong in. */
function findSeenInFace({ keys }: PiecePlan, slots: PieceSlots): ReadonlySet<string> {
  const seen = [...keys].filter(([item, key]) => {
    const sights = [slots.of(item, 'sight 1'), slots.of(item, 'sight 2')].flatMap((slot) => slot?.latest ?? []);
    const now = ofKind(sights, 'placed').filter(({ checkKey }) => checkKey === key);
    return now.length > 0 && now.every(({ body }) => body.face);
  });
  return new Set(seen.map(([item]) => item));
}

/** Form and inserts as they stand by these records. */
function check(context: YardContext, plan: PiecePlan, state: PieceState): Checked {
  const slots = readSlots(state);
  const seen = indexSeen(state);
  const { items } = plan.setOut;
  const found = new Map(
    items.map((item): [string, FoundRecords] => [item.castIn.key, findPlaces(context, plan, slots, seen, item)]),
  );
  const places = new Map(
    items.flatMap((item) => {
      const own = found.get(item.castIn.key)!; // of each, as above
      return own.records.length === 0 ? [] : [[item.castIn.key, findFarthest(listFoundPlaces(own), item)] as const];
    }),
  );
  const form = reportForm(context, plan, slots, seen);
  const recognised = recognise(plan, places, findPartner(context, plan), findSeenInFace(plan, slots));
  const moment = findMoment(state, slots);
  const photos = state.beside.get('photo') ?? [];
  const source = { context, plan, slots, seen, photos, found, places, hasStage2Begun: hasStage2Begun(state), moment };
  const inserts = items.map((item) => reportInsert(source, item));
  return { slots, seen, form, recognised, inserts, openPoints: listOpenPoints(form, recognised, inserts) };
}

function countStage(inserts: readonly InsertFinding[], stage: 1 | 2) {
  const states = inserts.filter(({ item }) => item.stage === stage).map(({ state }) => state);
  const count = (...of: readonly InsertFinding['state'][]) => states.filter((state) => of.includes(state)).length;
  return { done: count('good', 'accepted'), left: count('open', 'open again'), out: count('out', 'conflict') };
}

function countScreed(plan: PiecePlan, slots: PieceSlots) {
  const counts = { done: 0, left: 0, out: 0 };
  for (const { castIn } of plan.afterScreed) {
    const latest = ofKind(slots.of(castIn.key, 'screed')?.latest ?? [], 'screed-checked');
    if (latest.length === 0) counts.left += 1;
    else if (latest.every(({ body }) => body.level && body.plumb && body.cap)) counts.done += 1;
    else counts.out += 1;
  }
  return counts;
}

/** Scrapping and marking anew by people who may not: it does not count, and is flagged. */
function findWithoutRight({ people }: YardContext, slots: PieceSlots): readonly FactRecord[] {
  const lacks = (act: 'scrap' | 're-mark') => (record: FactRecord) =>
    !mayDo(findPerson(people, record.person), act).may;
  return [
    ...recordsOf(slots.of(null, 'scrapped')).filter(lacks('scrap')),
    ...recordsOf(slots.of(null, 'mark')).filter(lacks('re-mark')),
  ];
}

function findPhase(
  { index }: YardContext,
  mark: string,
  state: PieceState,
  slots: PieceSlots,
  poured: PouredState | null,
  { is }: StandingClearance,
  withoutRight: readonly FactRecord[],
): PiecePhase {
  const isScrapped = recordsOf(slots.of(null, 'scrapped')).some((record) => !withoutRight.includes(record));
  if (isScrapped) return 'scrapped';
  const after = findAfterPhase(index, mark, state, slots);
  if (after !== null) return after;
  if (slots.of(null, 'uncovered') !== null) return 'opened up';
  if (slots.of(null, 'stripped') !== null) return 'stripped';
  if (poured !== null) return 'poured';
  if (is === 'held') return 'held';
  if (is !== 'none') return 'cleared';
  return state.history.length > 0 ? 'in the form' : 'not started';
}

/** From the best to the worst. */
const CLEARANCES: readonly StandingClearance['is'][] = [
  'cleared',
  'cleared with a condition',
  'override',
  'none',
  'held',
];

/** Of two poured records that did not know of each other the one with less behind it counts. */
function isWorseClearance(a: StandingClearance, b: StandingClearance): boolean {
  return CLEARANCES.indexOf(a.is) > CLEARANCES.indexOf(b.is);
}

/** The poured state with clearances that do not count taken out. */
function judgePoured(state: PieceState, { withoutRight, fallen }: StandingClearance): PouredState | null {
  const uncounted = [...withoutRight, ...(fallen === null ? [] : [fallen.record])];
  const withdrawn = new Map([...state.withdrawn, ...uncounted.map(({ id }) => [id, id] as const)]);
  const poured = findPoured({ ...state, withdrawn });
  if (poured === null || fallen === null) return poured;
  const isWorse = poured.clearance === 'while held' || poured.clearance === 'without clearance';
  return isWorse ? poured : { ...poured, clearance: 'without clearance' };
}

function findLast(history: readonly FactRecord[]): FactRecord | null {
  return history.reduce<FactRecord | null>((last, record) => {
    if (last === null) return record;
    const [a, b] = [Date.parse(record.measuredAt), Date.parse(last.measuredAt)];
    return a > b || (a === b && record.id > last.id) ? record : last;
  }, null);
}

/**
 * Everything that is said about one piece, from what it is to be and what is recorded. The same set of records gives the same report, in whatever order
 * they came. Records by an older check key count for nothing; facts are never dropped, and whoever decided without the right to decided nothing.
 * @param plan by the panel that `head` names
 */
export function reportPiece(
  context: YardContext,
  plan: PiecePlan,
  state: PieceState,
  head: { readonly mark: string; readonly serial: string },
): PieceReport {
  const checked = check(context, plan, state);
  const { slots, seen, form, recognised, inserts, openPoints } = checked;
  const source = {
    ...{ context, plan, state, slots, seen },
    pointsOf: (some: PieceState) => (some === state ? openPoints : check(context, plan, some).openPoints),
  };
  const clearance = (findPoured(state)?.poured ?? [null])
    .map((record) => findStandingClearance(source, record))
    .reduce((worse, one) => (isWorseClearance(one, worse) ? one : worse));
  const poured = judgePoured(state, clearance);
  const withoutRight = [...findWithoutRight(context, slots), ...form.withoutRight];
  return {
    piece: plan.piece,
    mark: head.mark,
    serial: head.serial,
    phase: findPhase(context, plan.setOut.panel.mark, state, slots, poured, clearance, withoutRight),
    plan,
    state,
    form,
    inserts,
    recognised,
    counts: { 1: countStage(inserts, 1), 2: countStage(inserts, 2) },
    screed: countScreed(plan, slots),
    openPoints,
    clearance: {
      is: clearance.is,
      record: clearance.is === 'none' ? null : clearance.record,
      inputs: hashInputs(context.revision.fingerprint, plan, state),
    },
    poured,
    flags: [
      ...raiseFlags({ context, plan, state, poured, clearance, inserts, recognised, withoutRight }),
      ...raiseAfterFlags(context, plan, state),
    ],
    last: findLast(state.history),
  };
}
