import type { CastIn } from '../../job/documents/cast-in.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { Connection } from '../../job/documents/connection.ts';
import { gatherItems, gatherParts, type SeatParts } from '../../job/resolve/connection-seat.ts';
import {
  type Changes,
  type ChooseOptions,
  type ConnectionChoice,
  countChanges,
  NO_CHANGES,
  type PassingInsert,
  type RejectedInsert,
} from './choice.ts';
import { type Fit, openFitting } from './fit.ts';
import type { JobDraft, OtherInserts } from './job-draft.ts';
import { findDelivery, haveOneCurrency, rankInserts } from './rank.ts';
import { openRemarks, type Remarks } from './remarks.ts';
import { findLeastCover, type Room, surveyRoom } from './room.ts';
import { type BoltedJudgement, findStrongerClasses, judgeWithBolts } from './stronger-bolts.ts';
import { type CheckCounter, openTrials, type TrialJudgement, type TrialSeat } from './trial-seat.ts';
import { canMoveHelp, type Surroundings, tryMove } from './try-move.ts';

/** All that the trials of one connection share. */
interface Trials {
  readonly draft: JobDraft;
  readonly options: ChooseOptions;
  readonly parts: SeatParts;
  /** The connection as it stands. */
  readonly before: TrialJudgement;
  readonly present: ReadonlySet<string>;
  readonly trial: TrialSeat;
  readonly room: Room;
  readonly surroundings: Surroundings;
  readonly others: OtherInserts;
  readonly findFit: (item: CatalogueItem) => Fit;
  readonly findRemarks: (item: CatalogueItem, changes: Changes) => Remarks;
  readonly counter: CheckCounter;
}

function isPassing(insert: PassingInsert | RejectedInsert): insert is PassingInsert {
  return 'isAsDesigned' in insert;
}

function isRejected(insert: PassingInsert | RejectedInsert): insert is RejectedInsert {
  return 'why' in insert;
}

/** What stands in the panel besides a connection's own inserts. */
export function lookAround(draft: JobDraft, { connection, castIns }: SeatParts): Surroundings {
  const own = new Set(castIns.map(({ id }) => id));
  const others = draft.castInsOf(connection.panel).filter(({ id }) => !own.has(id));
  const isHere = (castIn: CastIn) => castIn.face === connection.face && castIn.edge === connection.edge;
  const neighbours = others.filter(isHere).flatMap((castIn) => {
    const item = castIn.item === null ? undefined : draft.index.items.get(castIn.item);
    return item === undefined ? [] : [{ castIn, body: item.bodyDiameter_mm }];
  });
  return { others, neighbours };
}

function reject(item: CatalogueItem, why: RejectedInsert['why'], reason: string): RejectedInsert {
  return { item, why, reasons: [reason], ratio: null, governing: null, tried: [] };
}

/** An insert that its maker rates for braces or lifting is no fixing, unless the job already uses it as one. */
function findOtherRole(draft: JobDraft, item: CatalogueItem): string | null {
  if (item.ratedLoads.length === 0 || draft.hasFixing(item.id)) return null;
  const roles = [...new Set(item.ratedLoads.map(({ role }) => role))].join(' and ');
  return `its maker rates it for ${roles}; this job has none as a fixing, and none shall be taken for the other`;
}

function rejectJudged(
  { options }: Trials,
  item: CatalogueItem,
  { first, judgement, boltClass }: BoltedJudgement,
  hasMoved: boolean,
): RejectedInsert {
  const { state, reasons, ratio, governing } = first;
  const tried = [
    ...(judgement !== first ? [`bolts up to ${boltClass}`] : []),
    ...(hasMoved ? [`moved up to ${options.move} mm`] : []),
  ];
  const why = state === 'fails' || state === 'not covered' ? state : 'cannot be computed';
  return { item, why, reasons, ratio, governing, tried };
}

function describePassing(
  { options, parts, before, present, others, findRemarks }: Trials,
  item: CatalogueItem,
  { judgement }: BoltedJudgement,
  changes: Changes,
): PassingInsert {
  const isSame = present.size === 1 && present.has(item.id) && countChanges(changes) === 0;
  const { price } = item;
  return {
    item,
    ratio: judgement.ratio!,
    governing: judgement.governing!,
    changes,
    isAsDesigned: isSame && before.state === 'passes',
    inPanel: others.countInPanel(item.id),
    inJob: others.countInJob(item.id),
    delivery: findDelivery(item.leadTime_days, options.daysToPour),
    lookAlikes: others.findLookAlikes(item),
    cost: price === null ? null : { amount: price.amount * parts.castIns.length, currency: price.currency },
    ...findRemarks(item, changes),
  };
}

/** Tries one insert: as it is, with stronger bolts where steel governs, then moved, as far as that may be changed. */
function tryInsert(trials: Trials, item: CatalogueItem): PassingInsert | RejectedInsert {
  const { draft, options, trial, before, present } = trials;
  const otherRole = findOtherRole(draft, item);
  if (otherRole !== null) return reject(item, 'other role', otherRole);
  const fit = trials.findFit(item);
  if (fit.kind === 'does not fit') return reject(item, 'does not fit', fit.reason);
  const { hardware } = fit;
  const isThere = present.size === 1 && present.has(item.id);
  const first = isThere && fit.changes.holes === null ? before : trial.judge(item, hardware);
  if (first.state === 'passes' && fit.changes.holes === null && fit.changes.boltThread === null)
    return describePassing(trials, item, { first, judgement: first, boltClass: hardware.boltClass }, NO_CHANGES);
  const stronger = options.strongerBolts ? findStrongerClasses(hardware.boltClass) : [];
  const bolted = judgeWithBolts(trial, item, hardware, stronger, first);
  const pass = (found: BoltedJudgement, move: Changes['move']): PassingInsert =>
    describePassing(trials, item, found, {
      ...fit.changes,
      move,
      boltClass: found.boltClass === hardware.boltClass ? null : { from: hardware.boltClass, to: found.boltClass },
    });
  if (bolted.judgement.state === 'passes') return pass(bolted, null);
  if (options.move === 0 || !canMoveHelp(bolted)) return rejectJudged(trials, item, bolted, false);
  const asked = trial.seat.rules.cover.behindFoot_mm;
  const cover = isThere ? (findLeastCover(trials.room, item) ?? asked) : asked;
  const moved = tryMove(
    trial.seat,
    item,
    { ...hardware, boltClass: bolted.boltClass },
    stronger.slice(stronger.indexOf(bolted.boltClass) + 1),
    options.move,
    trials.surroundings,
    Math.min(asked, cover),
    trials.counter,
  );
  return moved === null ? rejectJudged(trials, item, bolted, true) : pass(moved, moved.move);
}

/**
 * Tries every insert of the catalogue in a connection, all its inserts of one type, and ranks those with which it passes (see
 * `rankInserts`); each of the others comes with the reason why not.
 * @param draft the job with the choices made so far; it is not changed
 */
export function chooseConnection(draft: JobDraft, connection: Connection, options: ChooseOptions): ConnectionChoice {
  const parts = gatherParts(draft.index, connection);
  const items = gatherItems(draft.index, parts);
  const present = new Set(items.map(({ id }) => id));
  const counter: CheckCounter = { checks: 0 };
  const trial = openTrials(parts, counter);
  const before = trial.judgeAsIs(items);
  const { castIns, panel } = parts;
  const { state, ratio, governing, reasons, plate } = before;
  const head = {
    mark: connection.mark,
    panel: panel.mark,
    face: trial.seat.face,
    inserts: castIns.map(({ id }) => id),
  };
  const start = { before: { ...head, state, ratio, governing, reasons, plate }, present: [...present] };
  const left = (outcome: ConnectionChoice['outcome']): ConnectionChoice => ({
    ...start,
    outcome,
    ranked: [],
    rejected: [],
    hasSeveralCurrencies: false,
    checks: counter.checks,
  });
  if (connection.actions.kind === 'none') return left('no action');
  if (castIns.some(({ role }) => role !== 'fixing')) return left('other role');
  if (trial.seat.uses.length > 0 || parts.mix.lightweight) return left('never covered');
  const surroundings = lookAround(draft, parts);
  const room = surveyRoom(panel, trial.seat.region, castIns, surroundings.neighbours);
  const trials: Trials = {
    draft,
    options,
    parts,
    before,
    present,
    trial,
    room,
    surroundings,
    others: draft.countOthers(panel.mark, castIns),
    findFit: openFitting(trial.seat, room, options.drills, present),
    findRemarks: openRemarks(parts, room, items, draft.index.file.library),
    counter,
  };
  const tried = draft.index.file.library.catalogue.items.map((item) => tryInsert(trials, item));
  const passing = tried.filter(isPassing);
  return {
    ...start,
    outcome: passing.length > 0 ? 'chosen' : 'none passes',
    ranked: rankInserts(passing),
    rejected: tried.filter(isRejected),
    hasSeveralCurrencies: !haveOneCurrency(passing),
    checks: counter.checks,
  };
}
