import { findThread } from '../../engine/hardware/threads.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import type { PieceState } from '../../records/fold/piece-state.ts';
import { worseOf } from '../../records/fold/worse-of.ts';
import type { AsCastConnection, AsCastReport } from '../as-cast/as-cast-report.ts';
import { assessConnection } from '../assess-connection.ts';
import { findBoltFinish } from '../bolt-of-connection.ts';
import { findTensionCapacity } from '../capacities.ts';
import { findTop } from '../clash/find-top.ts';
import { reportStripped, type StrippedInsert } from '../yard/after-stripping.ts';
import type { PiecePlan } from '../yard/piece-plan.ts';
import type { YardContext } from '../yard/piece-report.ts';
import { ofKind, type PieceSlots, readSlots } from '../yard/piece-slots.ts';
import { type AsBolted, findAsBolted, indexAsCast, readCastPanel } from './as-bolted.ts';
import type { BoltUpCard, BoltUpReport, CardPackers } from './bolt-up-report.ts';
import { type BoltSpec, type ChosenBolt, chooseCardBolts } from './card-bolts.ts';
import { warnOfAlikeLengths } from './card-lengths.ts';
import { findStops } from './card-stops.ts';
import { findTightening } from './card-tightening.ts';
import { findDelivery, listDeliveryFaults } from './delivery.ts';
import { listPackerRanges } from './packer-ranges.ts';
import { listTemporary } from './temporary.ts';
import { findTightenedFaults } from './tightened-faults.ts';

/** What all cards of a piece are made from. */
interface Source {
  readonly context: YardContext;
  readonly plan: PiecePlan;
  readonly slots: PieceSlots;
  readonly asCast: AsCastReport;
  readonly opened: readonly StrippedInsert[];
}

type JobIndex = YardContext['index'];

/** What the concrete carries at one insert today, all pulled at once as when all are tightened [N]; null: not known or not covered. */
function findConcreteTension(moved: JobIndex, { connection }: AsBolted): number | null {
  const found = findTensionCapacity(resolveConnection(moved, connection));
  if (found.kind === 'refused' || found.value.reasons.length > 0) return null;
  return found.value.perInsert;
}

/** The bolts' common data; the finish by the first insert that has a type. */
function specify({ context: { index }, plan }: Source, moved: JobIndex, asBolted: AsBolted) {
  const { connection, used } = asBolted;
  const { setOut } = plan;
  const { defaults } = index.file.library.rules;
  const propertyClass = connection.boltClass ?? defaults.boltClass;
  const item = used.find(({ insert }) => insert.item.item !== null)?.insert.item.item ?? null;
  const { finish, notes } =
    item === null
      ? { finish: connection.boltFinish ?? ('zinc' as const), notes: ['no insert has a type: the finish is not known'] }
      : findBoltFinish(connection.boltFinish, item, propertyClass);
  const diameter = item === null ? 0 : findThread(connection.boltThread ?? item.thread).diameter;
  const spec: BoltSpec = {
    propertyClass,
    finish,
    minEngagement: connection.engagement_mm ?? defaults.engagement_d * diameter,
    ranges: listPackerRanges(connection.packers_mm),
    concreteTension: findConcreteTension(moved, asBolted),
    designRecess: ({ item: { castIn } }) => findTop(index, setOut.panel, castIn, setOut.bed),
  };
  return { spec, notes };
}

/** Each range with what the strength is, as cast, with the greatest packers of it. */
function judgePackers(moved: JobIndex, { connection }: AsBolted, ranges: BoltSpec['ranges']): readonly CardPackers[] {
  return ranges.map((range, k) => {
    const { state, ratio } = assessConnection(resolveConnection(moved, { ...connection, packers_mm: range[1] }));
    return { range, isStated: k === 0, state, ratio };
  });
}

/** `insert 7 lies`, `inserts 7, 8 lie`, in the order of their numbers. */
function tellMany(bolts: readonly ChosenBolt[], one: string, many: string): string {
  const numbers = bolts.map(({ bolt }) => bolt.insert.item.number).sort((a, b) => a - b);
  return numbers.length === 1 ? `insert ${numbers[0]} ${one}` : `inserts ${numbers.join(', ')} ${many}`;
}

function describeCard(bolts: readonly ChosenBolt[], { connection }: AsBolted): readonly string[] {
  const designed = bolts.filter(({ bolt }) => bolt.recessFrom === 'as designed');
  const lifted = bolts.filter(({ bolt }) => bolt.recess < 0);
  const notes: string[] = [];
  if (designed.length > 0)
    notes.push(
      `how deep ${tellMany(designed, 'lies', 'lie')} was not surveyed: lengths are for the depth as designed; measure before the bolts are fetched`,
    );
  if (lifted.length > 0)
    notes.push(
      `${tellMany(lifted, 'stands', 'stand')} out of the face: the plate lies there and not on the concrete, unless packers take it up`,
    );
  if (connection.packers_mm > 0)
    notes.push(
      `packers of ${Number(connection.packers_mm.toFixed(1))} mm are part of the design${connection.isFilled ? ', filled with mortar' : ''}`,
    );
  return notes;
}

function makeCard(source: Source, moved: JobIndex, asCast: AsCastConnection): BoltUpCard {
  const { context, slots, opened } = source;
  const asBolted = findAsBolted(context.index, asCast);
  const { connection, plate, unused } = asBolted;
  const { spec, notes } = specify(source, moved, asBolted);
  const chosen = plate === null ? [] : chooseCardBolts(asBolted, spec);
  const { state, stops } = findStops(context.index, source.plan.setOut.panel, asCast, asBolted, chosen);
  const tightening = findTightening(chosen, spec.finish);
  const tightened = ofKind(slots.of(null, `tightened ${connection.key}`)?.latest ?? [], 'tightened');
  const offered = ofKind(slots.of(null, `offered ${connection.key}`)?.latest ?? [], 'offered');
  const threads = [...new Set(chosen.map(({ answer }) => answer.path.thread))];
  const judged = { bolts: chosen, tightening, stops, people: context.people };
  const lengths = chosen.flatMap(({ bolt }) => bolt.lengths.flatMap(({ choice }) => choice?.length ?? []));
  return {
    asCast,
    connection,
    plate,
    state: tightened.length > 0 ? 'tightened' : state,
    stops,
    seenFrom: connection.face,
    thread: threads.length === 1 ? threads[0]! : null,
    propertyClass: spec.propertyClass,
    finish: spec.finish,
    packers: judgePackers(moved, asBolted, spec.ranges),
    bolts: chosen.map(({ bolt }) => {
      const { key } = bolt.insert.item.castIn;
      const delivery = findDelivery(slots, key);
      const inYard = opened.find(({ item }) => item.castIn.key === key);
      return { ...bolt, delivery, faults: listDeliveryFaults(delivery, inYard) };
    }),
    unused,
    tightening,
    lookAlikes: threads.length === 1 ? warnOfAlikeLengths(threads[0]!.name, lengths) : [],
    notes: [...notes, ...describeCard(chosen, asBolted)],
    offered: offered.length === 0 ? null : worseOf(offered),
    tightened: tightened.length === 0 ? null : worseOf(tightened),
    tightenedFaults: [...new Set(tightened.flatMap((record) => findTightenedFaults(record, judged)))],
  };
}

/**
 * Everything about bolting up one piece: a card for each connection of its panel, with bolts by what came out and what was decided, and what becomes of the inserts that were
 * needed for a time only.
 */
export function reportBoltUp(
  context: YardContext,
  plan: PiecePlan,
  state: PieceState,
  asCast: AsCastReport,
): BoltUpReport {
  const { mark } = plan.setOut.panel;
  const slots = readSlots(state);
  const cast = readCastPanel(context.index, plan, asCast);
  const opened = reportStripped(context, plan, state).inserts;
  const source = { context, plan, slots, asCast, opened };
  const cards = asCast.connections.map((one) => makeCard(source, indexAsCast(cast, one.connection), one));
  const located = ofKind(slots.of(null, 'location')?.latest ?? [], 'located');
  const place = located.length === 0 ? null : worseOf(located).body.place;
  const isDone =
    cards.length > 0 && cards.every((card) => card.state === 'tightened' && card.tightenedFaults.length === 0);
  const count = (...states: readonly BoltUpCard['state'][]) =>
    cards.filter((card) => states.includes(card.state)).length;
  const [tightened, ready] = [count('tightened'), count('ready')];
  return {
    piece: plan.piece,
    panel: mark,
    place,
    cards,
    temporary: listTemporary(plan, cards, slots, { isErected: place !== null, isDone }),
    counts: { tightened, ready, waiting: cards.length - tightened - ready },
    isDone,
  };
}
