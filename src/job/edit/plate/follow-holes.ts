import type { Draft } from 'immer';
import type { Point } from '../../../engine/geometry/point.ts';
import type { CastIn } from '../../documents/cast-in.ts';
import type { Connection } from '../../documents/connection.ts';
import type { Fixture } from '../../documents/fixture.ts';
import type { JobFile } from '../../documents/job-file.ts';
import type { Panel } from '../../documents/panel.ts';
import { frameOf, placeInPlate, placeOnFace } from '../../face-frame.ts';

/** Turned and shifted places are kept to a millionth of a mm, so that going there and back gives the same number. */
const round = (value: number) => Math.round(value * 1e6) / 1e6;

/** A connection of a job that is being edited, with what it stands on. */
export interface DraftConnection {
  readonly connection: Draft<Connection>;
  readonly panel: Draft<Panel>;
  /** In the order of the connection. */
  readonly castIns: readonly Draft<CastIn>[];
}

/**
 * A connection in a job that is being edited.
 * @throws Error when the job has none of that mark: an edit for a connection that is gone
 */
export function findDraft({ job }: Draft<JobFile>, mark: string): DraftConnection {
  const connection = job.connections.find((one) => one.mark === mark);
  const panel = job.panels.find((one) => one.mark === connection?.panel);
  if (connection === undefined || panel === undefined) throw new Error(`connection ${mark} is not in the job`);
  const own = new Map(job.castIns.filter((one) => one.panel === panel.mark).map((one) => [one.id, one]));
  return { connection, panel, castIns: connection.inserts.flatMap(({ insert }) => own.get(insert) ?? []) };
}

/** Where the inserts of a connection are in the axes of its plate. */
export function placesInPlate({ connection, panel, castIns }: DraftConnection): readonly Point[] {
  const frame = frameOf(panel, connection);
  return castIns.map(({ x_mm, y_mm }) =>
    placeInPlate(frame, connection.origin_mm, connection.turn_deg, frame.toFace([x_mm, y_mm])),
  );
}

/** Puts the inserts of a connection at places in the axes of its plate, as it lies now. */
export function putInPlate({ connection, panel, castIns }: DraftConnection, places: readonly Point[]): void {
  const frame = frameOf(panel, connection);
  for (const [i, castIn] of castIns.entries()) {
    const place = places[i];
    if (place === undefined) continue;
    // A frame is its own inverse.
    const [x, y] = frame.toFace(placeOnFace(frame, connection.origin_mm, connection.turn_deg, place));
    castIn.x_mm = round(x);
    castIn.y_mm = round(y);
  }
}

/** Takes each insert along with the hole that its bolt goes through: by as much as the hole moved. */
export function followHoles(found: DraftConnection, before: Fixture['holes'], after: Fixture['holes']): void {
  const places = placesInPlate(found).map((place, i): Point => {
    const { hole } = found.connection.inserts[i]!;
    const [was, is] = [before, after].map((holes) => holes.find(({ id }) => id === hole)?.at_mm);
    if (was === undefined || is === undefined) return place;
    return [place[0] + is[0] - was[0], place[1] + is[1] - was[1]];
  });
  putInPlate(found, places);
}
