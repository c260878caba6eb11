import type { SlotState } from '../../records/fold/piece-state.ts';
import type { FactRecord, RecordOf } from '../../records/record.ts';
import type { SetOutItem } from '../set-out/set-out.ts';
import { findDecision, worseExtent } from './find-decision.ts';
import { type Axis, type FoundRecords, listFoundPlaces } from './find-places.ts';
import type { PiecePlan } from './piece-plan.ts';
import type { InsertReport, InsertState, YardContext } from './piece-report.ts';
import { ofKind, type PieceSlots, recordsOf } from './piece-slots.ts';
import type { FoundPlace, PlacingAnswer, PlacingMoment } from './placing-answer.ts';
import { judgePlacingOnce } from './remember-placing.ts';
import type { Extent } from './rights.ts';
import type { SeenIndex } from './seen-index.ts';

/** What reports of inserts share. */
export interface InsertSource {
  readonly context: YardContext;
  readonly plan: PiecePlan;
  readonly slots: PieceSlots;
  readonly seen: SeenIndex;
  /** Photos of the piece and of its inserts that were not taken back. */
  readonly photos: readonly FactRecord[];
  readonly found: ReadonlyMap<string, FoundRecords>;
  /** One place each, the worst, for whoever else's group it is in. */
  readonly places: ReadonlyMap<string, FoundPlace>;
  /** The cage is in, or the concrete: what lies under it can be taped no more. */
  readonly hasStage2Begun: boolean;
  readonly moment: PlacingMoment | null;
}

/** An insert with what the list of open points needs beyond the report. */
export interface InsertFinding extends InsertReport {
  /** What was not answered, in words. */
  readonly missing: readonly string[];
  /** By sight nothing is as it must be: most likely it is not there. */
  readonly isAbsent: boolean;
  readonly hasWrongType: boolean;
  /** Questions in which people who did not know of each other said different things. */
  readonly conflicts: readonly { readonly slot: SlotState; readonly words: string }[];
  /** Looked at by another check key than that of now, and not by that of now. */
  readonly isOld: boolean;
  /** Decisions and choices by people who may not. */
  readonly withoutRight: readonly FactRecord[];
}

/** How bad an answer is, to choose the worst of several. */
function rateAnswer({ advice, verdict, deviation }: PlacingAnswer): readonly [number, number] {
  const verdicts = { works: 1, 'not known': 2, 'does not work': 3 } as const;
  const isOff = advice === 'move' || advice === 'leave';
  const by = Math.max(...[deviation.x, deviation.y, deviation.level].map((one) => Math.abs(one ?? 0)));
  return [isOff ? verdicts[verdict] : 0, by];
}

function isWorse(a: PlacingAnswer, b: PlacingAnswer): boolean {
  const [ofA, ofB] = [rateAnswer(a), rateAnswer(b)];
  return ofA[0] > ofB[0] || (ofA[0] === ofB[0] && ofA[1] > ofB[1]);
}

/** Judges every place that the readings allow; the worst answer counts. Null: nothing was taped. */
function judgeWorst(source: InsertSource, item: SetOutItem, found: FoundRecords): PlacingAnswer | null {
  if (found.records.length === 0) return null;
  const { context, plan, places } = source;
  const now = source.moment ?? item.stage;
  return listFoundPlaces(found)
    .map((place) => judgePlacingOnce(context.index, plan, item, place, places, now))
    .reduce((worst, answer) => (isWorse(answer, worst) ? answer : worst));
}

/** What was seen of it, by its check key of now. Stages later than its own count too. */
function findSights({ slots, seen }: InsertSource, key: string, checkKey: string) {
  const all = ofKind(recordsOf(slots.of(key, 'sight 1'), slots.of(key, 'sight 2')), 'placed');
  const now = all.filter((record) => record.checkKey === checkKey);
  return { all, now, last: seen.standing(now) };
}

const SIGHT_FAULTS = [
  ['type', 'it is the wrong type'],
  ['face', 'it is in the wrong face or the wrong way round'],
  ['firm', 'it is not firm'],
] as const;

function tellSight(records: readonly RecordOf<'placed'>[]): string[] {
  const notes = records.flatMap(({ body }) => (body.note === null ? [] : [body.note]));
  const faults = SIGHT_FAULTS.flatMap(([what, words]) => (records.every(({ body }) => body[what]) ? [] : [words]));
  return faults.length === 0 ? [] : [...faults, ...notes];
}

const SCREED_FAULTS = [
  ['level', 'after screeding it is not level with what it must be'],
  ['plumb', 'after screeding it is not plumb'],
  ['cap', 'after screeding its cap is not on'],
] as const;

const AXIS_WORDS: Readonly<Record<Axis, string>> = { x: 'along x', y: 'along y', level: 'in level' };

/** Why it does not work where it is, short; null where it works, or where nobody knows. */
function tellWhyNot({ verdict, asPlaced, findings }: PlacingAnswer): string | null {
  if (verdict !== 'does not work') return null;
  // A mode is called as the engine calls it: its words are those of the trade.
  if (asPlaced?.after.state === 'fails') return asPlaced.after.why?.replaceAll('-', ' ') ?? null;
  if (findings[0] !== undefined) return findings[0];
  return asPlaced?.plate.kind === 'does not go on' ? `the plate does not go on at hole ${asPlaced.plate.hole}` : null;
}

/** Where it is and what to do about it, in one sentence. */
function tellPlace(answer: PlacingAnswer): string[] {
  const { deviation, advice, moves, verdict } = answer;
  if (advice === 'good' || advice === 'nothing measured') return [];
  const off = (['x', 'y', 'level'] as const).flatMap((axis) => {
    const by = deviation[axis];
    return by === null || Math.round(Math.abs(by)) === 0 ? [] : [`${Math.round(Math.abs(by))} mm ${AXIS_WORDS[axis]}`];
  });
  const way = moves.map(({ by, toward }) => `${by} mm ${toward}`).join(', ');
  const what = advice === 'move' ? `move it ${way === '' ? 'to its place' : way}` : 'it can be moved no more';
  const then = { works: 'it works where it is', 'does not work': 'it does not work where it is' } as const;
  const why = tellWhyNot(answer);
  const verdictWords = verdict === 'not known' ? 'whether it works there is not known' : then[verdict];
  const isOff = off.length === 0 ? 'off by less than 1 mm' : `off by ${off.join(' and ')}`;
  return [`${isOff}: ${what}; ${verdictWords}${why === null ? '' : ` (${why})`}`];
}

/** Digits that are asked for and were not taken. */
function findMissingDigits({ plan }: InsertSource, key: string, found: FoundRecords): readonly Axis[] {
  return plan.stops
    .flatMap(({ asks }) => asks)
    .filter((ask) => ask.key === key && found.values[ask.axis].length === 0)
    .map(({ axis }) => axis);
}

/** Slots of an insert in which people who did not know of each other said different things, by its check key of now. */
function findConflicts({ slots }: InsertSource, item: string, checkKey: string): readonly SlotState[] {
  const asked = ['sight 1', 'sight 2', 'place 1', 'place 2', 'screed', 'decision'];
  return asked.flatMap((name) => {
    const slot = slots.of(item, name);
    if (slot === null || !slot.isConflict) return [];
    const now = slot.latest.filter((record) => record.checkKey === checkKey || record.checkKey === null);
    return now.length > 1 ? [slot] : [];
  });
}

/** What two readings of one question say, short. */
function tellConflict({ slot, latest }: SlotState): string {
  const values = ofKind(latest, 'measured').map(({ body }) =>
    [body.x_mm, body.y_mm, body.level_mm].map((value) => (value === null ? '–' : String(value))).join(' / '),
  );
  const said = values.length === 0 ? '' : ` (x / y / level: ${values.join(' and ')} mm)`;
  const what = slot.startsWith('place') ? 'taped' : slot === 'decision' ? 'decided' : 'looked at';
  return `it was ${what} twice by people who did not know of each other, and they say different things${said}`;
}

/** Of an insert under the cage: what cannot be taped or seen any more. Null: nothing of it. */
function tellNotMeasurable(
  { hasStage2Begun }: InsertSource,
  item: SetOutItem,
  isSeen: boolean,
  missing: readonly Axis[],
): string | null {
  if (item.stage !== 1 || !hasStage2Begun || (isSeen && missing.length === 0)) return null;
  const what = isSeen ? `${missing.join(' and ')} not taped` : 'not looked at';
  return `${what} before the cage went in: not measurable now; basis: photo or earlier record`;
}

interface Faults {
  readonly why: readonly string[];
  readonly records: readonly FactRecord[];
  readonly extent: Extent | null;
}

/**
 * What may be taken for looking at it in time, where nobody did: a look in a later stage, else one by an earlier revision, else photos of it. Empty: there
 * is nothing, and so nobody can take it as it is.
 */
function findBasis(
  { photos, seen }: InsertSource,
  key: string,
  { last, all }: ReturnType<typeof findSights>,
): readonly FactRecord[] {
  if (last.length > 0) return last;
  if (all.length > 0) return seen.standing(all);
  return photos.filter(({ item }) => item === key);
}

/** Everything that is wrong with it, with the records that say so. */
function findFaults(
  sights: readonly RecordOf<'placed'>[],
  screeds: readonly RecordOf<'screed-checked'>[],
  found: FoundRecords,
  answer: PlacingAnswer | null,
  unmeasurable: readonly FactRecord[],
): Faults {
  const badSights = sights.filter(({ body }) => !(body.type && body.face && body.firm));
  const badScreeds = screeds.filter(({ body }) => !(body.level && body.plumb && body.cap));
  const place = answer === null ? [] : tellPlace(answer);
  const extents: Extent[] = [
    ...badSights.map(({ body }): Extent => (body.type ? 'beyond the limits' : 'wrong type')),
    ...badScreeds.map((): Extent => 'beyond the limits'),
    ...(place.length === 0 ? [] : ([answer?.decides === 'qa' ? 'inside the limits' : 'beyond the limits'] as const)),
    ...unmeasurable.map((): Extent => 'not measurable'),
  ];
  return {
    why: [
      ...tellSight(badSights),
      ...place,
      ...SCREED_FAULTS.flatMap(([what, words]) => (badScreeds.every(({ body }) => body[what]) ? [] : [words])),
    ],
    records: [...badSights, ...badScreeds, ...(place.length === 0 ? [] : found.records), ...unmeasurable],
    extent: extents.length === 0 ? null : extents.reduce(worseExtent),
  };
}

/** How one insert stands: nothing but records by its check key of now counts; a conflict before what is wrong before what is open. */
export function reportInsert(source: InsertSource, item: SetOutItem): InsertFinding {
  const { context, plan, slots, seen } = source;
  const { key } = item.castIn;
  const checkKey = plan.keys.get(key)!; // of every item of the set-out
  const found = source.found.get(key)!; // as above
  const sights = findSights(source, key, checkKey);
  const screed = slots.of(key, 'screed');
  const screeds = seen.standing(
    ofKind(recordsOf(screed), 'screed-checked').filter((one) => one.checkKey === checkKey || one.checkKey === null),
  );
  const answer = judgeWorst(source, item, found);
  const missingDigits = findMissingDigits(source, key, found);
  const isSeen = sights.now.some(({ body }) => body.stage <= item.stage);
  const notMeasurable = tellNotMeasurable(source, item, isSeen, missingDigits);
  const later = notMeasurable === null ? [] : findBasis(source, key, sights);
  const faults = findFaults(sights.last, screeds, found, answer, later);
  const decided =
    faults.extent === null || faults.records.length === 0
      ? { record: null, isAccepted: false, withoutRight: [] }
      : findDecision(context, slots, seen, key, checkKey, faults.records, faults.extent);
  const conflicts = findConflicts(source, key, checkKey).map((slot) => ({ slot, words: tellConflict(slot) }));
  const isOld = sights.now.length === 0 && sights.all.length > 0;
  const isOpen = !isSeen || missingDigits.length > 0;
  const isWrong = faults.why.length > 0;
  const isTakenAsItIs = decided.isAccepted && notMeasurable !== null;

  const state = ((): InsertState => {
    if (conflicts.length > 0 || found.withoutRight.length > 0) return 'conflict';
    if (isWrong && !decided.isAccepted) return 'out';
    if (isOpen && !isTakenAsItIs) return isOld ? 'open again' : 'open';
    return isWrong || isTakenAsItIs ? 'accepted' : 'good';
  })();
  const missing = [
    ...(isSeen ? [] : [sights.last.length > 0 ? 'looked at in a later stage only' : 'not looked at']),
    ...missingDigits.map((axis) => `${axis} not taped`),
  ];
  const letters = [...new Set(sights.all.map(({ revision }) => revision?.letter ?? 'none'))].join(', ');
  const again =
    state === 'open again' ? [`checked by revision ${letters}; revision ${context.revision.letter} changed it`] : [];
  return {
    item,
    key: checkKey,
    state,
    why: [...conflicts.map(({ words }) => words), ...faults.why, ...again, ...(state === 'open' ? missing : [])],
    sight: slots.of(key, `sight ${item.stage}`),
    place: slots.of(key, `place ${item.stage}`),
    answer,
    decision: decided.record,
    screed,
    uncovered: slots.of(key, 'uncovered'),
    notMeasurable,
    extent: faults.extent,
    about: faults.records,
    missing: isTakenAsItIs ? [] : missing,
    isAbsent: sights.last.some(({ body }) => !(body.type || body.face || body.firm)),
    hasWrongType: sights.last.some(({ body }) => !body.type || !body.face),
    conflicts,
    isOld,
    withoutRight: [...decided.withoutRight, ...found.withoutRight],
  };
}
