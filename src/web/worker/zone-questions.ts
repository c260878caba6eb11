import { findPositionBox, type NoBox, type PositionBox } from '../../assess/zone/find-box.ts';
import {
  type NoZone,
  type PositionZone,
  tracePositionZone,
  ZONE_WINDOW,
  type ZoneSubject,
} from '../../assess/zone/trace-position-zone.ts';
import { openZone, type ZoneSite } from '../../assess/zone/zone-site.ts';
import { hashZoneBasis } from '../../job/position-box.ts';
import type { HeldJob } from './held-job.ts';

/** A box with the hash of what it was computed from. */
export interface FoundBox {
  readonly box: PositionBox | NoBox;
  readonly computedFrom: string;
}

function findConnection({ file }: HeldJob, mark: string) {
  const connection = file.job.connections.find((one) => one.mark === mark);
  if (connection === undefined) throw new Error(`connection ${mark} is not in the job`);
  return connection;
}

function open(held: HeldJob, mark: string): ZoneSite {
  // On which bed it is cast is not known here: chairs are taken as for any.
  return openZone(held.index, findConnection(held, mark), null, ZONE_WINDOW);
}

/** Where an insert of a connection, or all together, may sit. @throws Error where the job has none of that mark */
export function askZone(held: HeldJob, mark: string, subject: ZoneSubject): PositionZone | NoZone {
  return tracePositionZone(open(held, mark), subject);
}

/** The box that holds for all inserts of a connection at once. @throws Error as `askZone` */
export function askBox(held: HeldJob, mark: string): FoundBox {
  return {
    box: findPositionBox(open(held, mark)),
    computedFrom: hashZoneBasis(held.index, findConnection(held, mark)),
  };
}
