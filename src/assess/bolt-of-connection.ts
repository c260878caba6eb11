import { describeBolt } from '../engine/hardware/bolt-notes.ts';
import { type BoltAnswer, chooseBolt, type InsertForBolt } from '../engine/hardware/choose-bolt.ts';
import { isStainlessClass, type PropertyClass } from '../engine/hardware/property-classes.ts';
import { findThread } from '../engine/hardware/threads.ts';
import { listWashers, type Washer } from '../engine/hardware/washers.ts';
import type { Finish } from '../engine/material/finish.ts';
import type { CatalogueItem } from '../job/documents/catalogue.ts';
import type { ResolvedConnection } from '../job/resolve/resolved-connection.ts';
import type { Capacities } from './capacities.ts';
import type { Decisive } from './connection-answer.ts';

const N_MM_PER_N_M = 1000;

/** K of T = K d F where nothing is known of lubrication (common practice). */
export const USUAL_NUT_FACTOR = 0.2;

/** Age of the concrete where a connection names none [days]. */
const FULL_AGE = 28;

/** What the torque's limit "concrete" rests on. */
export interface ConcreteLimit {
  readonly mode: Decisive;
  readonly age_days: number;
}

/** The bolt of a connection: length, engagement, tightening. */
export interface ConnectionBolt {
  readonly finish: Finish;
  readonly propertyClass: PropertyClass;
  readonly washer: Washer;
  /** Packers that the connection states, part of the grip [mm]. */
  readonly packers: number;
  readonly answer: BoltAnswer;
  /** Null where the concrete sets no limit of the torque. */
  readonly concreteLimit: ConcreteLimit | null;
  readonly notes: readonly string[];
}

/** A finish, and whether it had to be chosen here. */
interface FinishChoice {
  readonly finish: Finish;
  readonly notes: readonly string[];
}

/**
 * The finish given, or the one that suits the insert, of those that it takes: stainless where the class is, galvanised for a
 * galvanised insert tapped oversize, zinc for all others.
 */
export function findBoltFinish(
  given: Finish | null,
  item: Pick<CatalogueItem, 'finish' | 'threadClass' | 'boltFinishes'>,
  propertyClass: PropertyClass,
): FinishChoice {
  if (given !== null) return { finish: given, notes: [] };
  const isStainless = isStainlessClass(propertyClass);
  const isOversize = item.threadClass !== '6H';
  const suiting = isStainless ? 'stainless' : item.finish === 'galvanised' && isOversize ? 'galvanised' : 'zinc';
  const finish = item.boltFinishes.includes(suiting)
    ? suiting
    : (item.boltFinishes.find((one) => (one === 'stainless') === isStainless && (one !== 'galvanised' || isOversize)) ??
      item.boltFinishes[0]!);
  return { finish, notes: [`finish not given: ${finish} taken`] };
}

/** An insert as its bolt meets it. @param recess how far its top lies below the face [mm]; above it negative */
export function describeForBolt(item: CatalogueItem, recess: number): InsertForBolt {
  const { crossHole } = item;
  return {
    threadClass: item.threadClass,
    finish: item.finish,
    threadStart: item.threadStartsBelowTop_mm + recess,
    threadDepth: item.threadDepth_mm,
    steel: { yield: item.steel.yield_MPa, ultimate: item.steel.ultimate_MPa },
    body: {
      diameter: item.bodyDiameter_mm,
      crossHole: crossHole === null ? null : { diameter: crossHole.diameter_mm, bore: crossHole.boreThere_mm },
    },
    maxTorque: item.maxTorque_Nm === null ? null : item.maxTorque_Nm * N_MM_PER_N_M,
  };
}

/** What the concrete and insert carry in tension at one insert, all loaded at once as when all are tightened; null: not known or not covered. */
function findTensionToday(capacities: Capacities | null): { readonly force: number; readonly mode: Decisive } | null {
  const tension = capacities?.group.find(({ direction }) => direction === null);
  if (tension === undefined || tension.reasons.length > 0) return null;
  const { perInsert: force, mode } = tension;
  return force === null || mode === null ? null : { force, mode };
}

/** With which packers the connection was checked, and what more of them do. */
function describePackers(packers: number): string {
  const checked = packers === 0 ? 'without packers' : `with ${Number(packers.toFixed(1))} mm of packers`;
  return `checked ${checked}; more packers bend the bolts: give packers_mm and check again`;
}

/**
 * The bolt of a connection from its plate, packers and recess, and the lowest limit of its torque. Nothing is asked of the bolt
 * but to be snug; a recess adds to its length as to its lever arm. Its length is for the packers that the connection states only, with
 * which it was checked, and for the thickest washer.
 * @param capacities what the connection carries at most, for the concrete's limit of the torque; null: not computed
 * @returns null where no plate is given: the grip is then not known
 */
export function chooseConnectionBolt(
  resolved: ResolvedConnection,
  capacities: Capacities | null,
): ConnectionBolt | null {
  const { plate, source } = resolved;
  if (plate === null) return null;
  const { item, bolt, engagement, castIns, connection } = source;
  const thread = findThread(item.thread);
  const { finish, notes } = findBoltFinish(connection.boltFinish, item, bolt.propertyClass);
  const [washer] = listWashers(thread);
  const packers = connection.packers_mm;
  const today = findTensionToday(capacities);
  const question = {
    thread,
    propertyClass: bolt.propertyClass,
    boltFinish: finish,
    boltCoating: null,
    insert: describeForBolt(item, Math.max(...castIns.map(({ recess_mm }) => recess_mm))),
    grip: plate.thickness + packers,
    washer: washer.thickness,
    thickestWasher: washer.thicknessMax,
    minEngagement: engagement,
    stock: null,
    packers: { kind: 'none' } as const,
    nutFactor: USUAL_NUT_FACTOR,
    nutFactorRange: null,
    preloadFraction: 0,
    concreteTension: today === null ? null : today.force,
  };
  const answer = chooseBolt(question);
  return {
    finish,
    propertyClass: bolt.propertyClass,
    washer,
    packers,
    answer,
    concreteLimit: today === null ? null : { mode: today.mode, age_days: connection.age_days ?? FULL_AGE },
    notes: [...notes, describePackers(packers), ...describeBolt(question, answer)],
  };
}
