import { describeBolt } from '../engine/hardware/bolt-notes.ts';
import { type BoltAnswer, chooseBolt } from '../engine/hardware/choose-bolt.ts';
import { isStainlessClass, type PropertyClass } from '../engine/hardware/property-classes.ts';
import { findThread } from '../engine/hardware/threads.ts';
import { listWashers, type Washer } from '../engine/hardware/washers.ts';
import type { Finish } from '../engine/material/finish.ts';
import type { ResolvedConnection } from '../job/resolve/resolved-connection.ts';
import type { Capacities } from './capacities.ts';

const N_MM_PER_N_M = 1000;

/** Packers that a connection drawn without any may still get on site [mm] (common practice: kits for 0 to 10 and 10 to 20). */
const USUAL_PACKERS = 20;

/** K of T = K d F where nothing is known of lubrication (common practice). */
const USUAL_NUT_FACTOR = 0.2;

/** The bolt of a connection: length by packers, engagement, tightening. */
export interface ConnectionBolt {
  readonly finish: Finish;
  readonly propertyClass: PropertyClass;
  readonly washer: Washer;
  /** Packers drawn, part of the grip [mm]. */
  readonly packers: number;
  readonly answer: BoltAnswer;
  readonly notes: readonly string[];
}

/** The finish given, or the first that the insert takes and the bolt's class can have. */
function findFinish({ source: { connection, item, bolt } }: ResolvedConnection): Finish {
  const isStainless = isStainlessClass(bolt.propertyClass);
  return (
    connection.boltFinish ??
    item.boltFinishes.find((finish) => (finish === 'stainless') === isStainless) ??
    item.boltFinishes[0]!
  );
}

/** Tension that the concrete and insert carry at one insert, all loaded at once as when all are tightened [N]. */
function findTensionToday(capacities: Capacities | null): number | null {
  return capacities?.group.find(({ direction }) => direction === null)?.perInsert ?? null;
}

/**
 * The bolt of a connection from its plate, packers and recess, and the lowest limit of its torque. Nothing is asked of the bolt
 * but to be snug; a recess adds to its length as to its lever arm.
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
  const finish = findFinish(resolved);
  const [washer] = listWashers(thread);
  const packers = connection.packers_mm;
  const { crossHole } = item;
  const question = {
    thread,
    propertyClass: bolt.propertyClass,
    boltFinish: finish,
    boltCoating: null,
    insert: {
      threadClass: item.threadClass,
      finish: item.finish,
      threadStart: item.threadStartsBelowTop_mm + Math.max(...castIns.map(({ recess_mm }) => recess_mm)),
      threadDepth: item.threadDepth_mm,
      steel: { yield: item.steel.yield_MPa, ultimate: item.steel.ultimate_MPa },
      body: {
        diameter: item.bodyDiameter_mm,
        crossHole: crossHole === null ? null : { diameter: crossHole.diameter_mm, bore: crossHole.boreThere_mm },
      },
      maxTorque: item.maxTorque_Nm === null ? null : item.maxTorque_Nm * N_MM_PER_N_M,
    },
    grip: plate.thickness + packers,
    washer: washer.thickness,
    minEngagement: engagement,
    stock: null,
    packers: packers > 0 ? ({ kind: 'none' } as const) : ({ kind: 'split', range: [0, USUAL_PACKERS] } as const),
    nutFactor: USUAL_NUT_FACTOR,
    nutFactorRange: null,
    preloadFraction: 0,
    concreteTension: findTensionToday(capacities),
  };
  const answer = chooseBolt(question);
  return { finish, propertyClass: bolt.propertyClass, washer, packers, answer, notes: describeBolt(question, answer) };
}
