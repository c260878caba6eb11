import { findThreadLength } from '../../engine/hardware/bolt-dimensions.ts';
import type { BoltPath, PackerRange } from '../../engine/hardware/bolt-length.ts';
import { type BoltAnswer, chooseBolt } from '../../engine/hardware/choose-bolt.ts';
import type { PropertyClass } from '../../engine/hardware/property-classes.ts';
import { findThread, type Thread } from '../../engine/hardware/threads.ts';
import type { Finish } from '../../engine/material/finish.ts';
import type { CatalogueItem } from '../../job/documents/catalogue.ts';
import type { AsCastInsert } from '../as-cast/as-cast-report.ts';
import { describeForBolt, USUAL_NUT_FACTOR } from '../bolt-of-connection.ts';
import type { AsBolted } from './as-bolted.ts';
import type { CardBolt, CardLength } from './bolt-up-report.ts';
import { findCardLengths, STANDARD_LENGTHS } from './card-lengths.ts';
import { findWashers, type WasherStack } from './card-washers.ts';
import { liftRange } from './packer-ranges.ts';

/** What all bolts of a connection have in common. Lengths mm, forces N. */
export interface BoltSpec {
  readonly propertyClass: PropertyClass;
  readonly finish: Finish;
  readonly minEngagement: number;
  readonly ranges: readonly PackerRange[];
  /** What the concrete carries at one insert today; null: not known. */
  readonly concreteTension: number | null;
  /** Top below the face of an insert that nobody surveyed, as it should be [mm]. */
  readonly designRecess: (insert: AsCastInsert) => number;
}

/** A bolt before its card: what was chosen for it, and the engine's answer about thread and torque. */
export interface ChosenBolt {
  readonly bolt: Omit<CardBolt, 'delivery' | 'faults'>;
  readonly answer: BoltAnswer;
}

/** An insert with what its bolt needs. */
interface Seat {
  readonly insert: AsCastInsert;
  readonly item: CatalogueItem;
  readonly hole: string | null;
  readonly thread: Thread;
  readonly recess: number;
  readonly recessFrom: CardBolt['recessFrom'];
  readonly washers: WasherStack;
  readonly path: BoltPath;
}

function listSeats({ plate, used, decided }: AsBolted, spec: BoltSpec): readonly Seat[] {
  return used.flatMap(({ insert, hole }): Seat[] => {
    const { item } = insert.item;
    if (item === null) return [];
    const thread = findThread(item.thread);
    const surveyed = insert.place?.depth ?? null;
    const recess = surveyed ?? spec.designRecess(insert);
    const washers = findWashers(thread, plate?.holes.find(({ id }) => id === hole) ?? null, decided);
    return [
      {
        insert,
        item,
        hole,
        thread,
        recess,
        recessFrom: surveyed === null ? 'as designed' : 'surveyed',
        washers,
        path: {
          thread,
          grip: plate?.thickness_mm ?? 0,
          washer: washers.thickness,
          thickestWasher: washers.thicknessMax,
          threadStart: item.threadStartsBelowTop_mm + recess,
          threadDepth: item.threadDepth_mm,
          minEngagement: spec.minEngagement,
        },
      },
    ];
  });
}

/** How far the foremost insert stands out of the face: the plate lies on it [mm]. */
function findLift(seats: readonly Pick<Seat, 'recess'>[]): number {
  return Math.max(0, ...seats.map(({ recess }) => -recess));
}

function answerBolt({ item, thread, recess, washers, path }: Seat, spec: BoltSpec, lift: number): BoltAnswer {
  return chooseBolt({
    thread,
    propertyClass: spec.propertyClass,
    boltFinish: spec.finish,
    boltCoating: null,
    insert: describeForBolt(item, recess),
    grip: path.grip,
    washer: washers.thickness,
    thickestWasher: washers.thicknessMax,
    minEngagement: spec.minEngagement,
    stock: STANDARD_LENGTHS,
    packers: { kind: 'each', ranges: spec.ranges.map((range) => liftRange(range, lift)) },
    nutFactor: USUAL_NUT_FACTOR,
    nutFactorRange: null,
    preloadFraction: 0,
    concreteTension: spec.concreteTension,
  });
}

/** What a person must know of the bolts as they are picked: a shank that is too long, a thread that strips first. */
function describeLengths(thread: Thread, lengths: readonly CardLength[], answer: BoltAnswer): readonly string[] {
  const notes = lengths.flatMap(({ choice }) => {
    if (choice === null) return [];
    const threaded = findThreadLength(thread, choice.length);
    const name = `${thread.name} × ${choice.length}`;
    return choice.engagement.greatest > threaded
      ? [`${name}: threaded to the head (ISO 4017); with a shank (ISO 4014) only ${threaded} mm are thread`]
      : [];
  });
  const full = answer.fullStrengthEngagement;
  const least = Math.min(...lengths.flatMap(({ choice }) => (choice === null ? [] : [choice.engagement.least])));
  const strips =
    full !== null && Number.isFinite(least) && least < full
      ? [`the thread strips before the bolt breaks: full strength needs ${Number(full.toFixed(1))} mm of thread`]
      : [];
  return [...new Set([...answer.pair.notes, ...notes, ...strips])];
}

/**
 * Chooses the bolts of a connection as it is to be bolted up: for each insert and range of packers the length by plate, washers, packers and the
 * recess as it came out; an insert that stands out of the face lifts the plate off all others.
 */
export function chooseCardBolts(asBolted: AsBolted, spec: BoltSpec): readonly ChosenBolt[] {
  const seats = listSeats(asBolted, spec);
  const lift = findLift(seats);
  const paths = seats.map(({ path }) => path);
  const byRange = spec.ranges.map((range) => findCardLengths(paths, range, lift));
  return seats.map((seat, i): ChosenBolt => {
    const { insert, hole, thread, recess, recessFrom, washers } = seat;
    const answer = answerBolt(seat, spec, lift);
    const lengths = byRange.map((ofRange) => ofRange[i]!);
    return {
      answer,
      bolt: {
        insert,
        hole,
        recess,
        recessFrom,
        lengths,
        washers: washers.washers,
        minEngagement: spec.minEngagement,
        minTurns: spec.minEngagement / thread.pitch,
        notes: describeLengths(thread, lengths, answer),
      },
    };
  });
}
