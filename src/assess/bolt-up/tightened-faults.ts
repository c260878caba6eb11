import { leastClearance, placeBolt } from '../../engine/hardware/bolt-length.ts';
import type { Person } from '../../records/person.ts';
import type { RecordOf } from '../../records/record.ts';
import { findPerson, mayDo } from '../yard/rights.ts';
import type { CardTightening } from './bolt-up-report.ts';
import type { ChosenBolt } from './card-bolts.ts';
import { liftRange } from './packer-ranges.ts';

const N_MM_PER_N_M = 1000;

/** Lengths are sums of decimals [mm]. */
const ROUNDING = 1e-9;

/** What a record of tightening is held against. */
export interface Picked {
  readonly bolts: readonly ChosenBolt[];
  readonly tightening: CardTightening;
  readonly stops: readonly string[];
  readonly people: readonly Person[];
}

function showLength(length: number): string {
  return `${Number(length.toFixed(1))} mm`;
}

/** One bolt as it was put in, with the packers that were under its plate. */
function judgeBolt(
  { bolt, answer: { path } }: ChosenBolt,
  used: RecordOf<'tightened'>['body']['bolts'][number],
  lift: number,
): string[] {
  const range = liftRange([used.packers_mm, used.packers_mm], lift);
  const { engagement, clearToBottom } = placeBolt(path, used.length_mm, range);
  const name = `insert ${bolt.insert.item.number}: a bolt of ${used.length_mm} mm with ${showLength(used.packers_mm)} of packers`;
  const faults: string[] = [];
  if (engagement.least < path.minEngagement - ROUNDING)
    faults.push(
      `${name} has ${showLength(Math.max(0, engagement.least))} of thread, ${showLength(path.minEngagement)} needed: TOO SHORT`,
    );
  if (clearToBottom < leastClearance(path.thread) - ROUNDING)
    faults.push(
      `${name} stands on the bottom of its thread or too near it: the plate may be LOOSE though it feels tight`,
    );
  if (used.turns !== null && used.turns * path.thread.pitch < path.minEngagement - ROUNDING)
    faults.push(
      `insert ${bolt.insert.item.number}: ${used.turns} turns by hand, ${Number(bolt.minTurns.toFixed(1))} needed`,
    );
  return faults;
}

/**
 * What is wrong with how a connection was tightened, in words; empty: nothing that can be seen from the record. Every bolt is held against the recess, washers and
 * packers that it went through, not against the length that was picked.
 */
export function findTightenedFaults({ body, person }: RecordOf<'tightened'>, picked: Picked): readonly string[] {
  const { bolts, tightening, stops, people } = picked;
  const lift = Math.max(0, ...bolts.map(({ bolt }) => -bolt.recess));
  const faults = stops.map((stop) => `bolted up though: ${stop}`);
  const permission = mayDo(findPerson(people, person), 'tighten');
  if (!permission.may) faults.push(`recorded by somebody who is ${permission.why}`);
  for (const chosen of bolts) {
    const { castIn, number } = chosen.bolt.insert.item;
    const used = body.bolts.filter(({ item }) => item === castIn.key);
    if (used.length === 0) faults.push(`insert ${number} has NO BOLT in the record`);
    for (const one of used) faults.push(...judgeBolt(chosen, one, lift));
  }
  const known = new Set(bolts.map(({ bolt }) => bolt.insert.item.castIn.key));
  if (body.bolts.some(({ item }) => !known.has(item)))
    faults.push('a bolt is recorded in an insert that gets none in this connection');
  const { most, isStainless } = tightening;
  if (most !== null && body.torque_Nm !== null && body.torque_Nm * N_MM_PER_N_M > most.torque + ROUNDING)
    faults.push(
      `tightened to ${body.torque_Nm} N m, ABOVE the most of ${Math.floor(most.torque / N_MM_PER_N_M)} N m (${most.kind}): ask the design engineer before it is loaded`,
    );
  if (most === null && body.torque_Nm !== null)
    faults.push(`tightened to ${body.torque_Nm} N m though no limit is known of these inserts: snug only was asked`);
  if (body.torque_Nm !== null && (body.tool?.calibratedUntil ?? null) === null)
    faults.push('a torque is recorded without the calibration date of the wrench');
  if (isStainless && !body.lubricated)
    faults.push('stainless bolts were put in dry: they may have seized short of tight');
  return faults;
}
