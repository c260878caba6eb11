import {
  type PositionZone,
  tracePositionZone,
  ZONE_WINDOW,
  type ZoneSubject,
} from '../../../src/assess/zone/trace-position-zone.ts';
import { openZone, type ZoneSite } from '../../../src/assess/zone/zone-site.ts';
import type { Point, Polygon } from '../../../src/engine/geometry/point.ts';
import type { Connection } from '../../../src/job/documents/connection.ts';
import type { JobFile } from '../../../src/job/documents/job-file.ts';
import { indexJob } from '../../../src/job/job-index.ts';
import { demoFile } from '../yard/yard-sample.ts';

/** A connection of a job, the demo job if none is given, ready to be tried elsewhere; `change`: what a test changes of it. */
export function siteOf(
  mark: string,
  change: (connection: Connection) => Connection = (connection) => connection,
  file: JobFile = demoFile(),
): ZoneSite {
  const connection = file.job.connections.find((one) => one.mark === mark);
  if (connection === undefined) throw new Error(`no connection ${mark}`);
  return openZone(indexJob(file), change(connection), null, ZONE_WINDOW);
}

export function mustTrace(site: ZoneSite, subject: ZoneSubject): PositionZone {
  const zone = tracePositionZone(site, subject);
  if (zone.kind === 'none') throw new Error(`${site.connection.mark} has no zone: ${zone.limit.kind}`);
  return zone;
}

/** Whether a point lies in a ring, by how often a ray from it crosses. */
function liesIn(ring: Polygon, [x, y]: Point): boolean {
  let inside = false;
  for (const [k, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(k + 1) % ring.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

export function isInZone({ boundary, holes }: Pick<PositionZone, 'boundary' | 'holes'>, at: Point): boolean {
  return liesIn(boundary, at) && !holes.some((hole) => liesIn(hole, at));
}

/** Distance to the nearest part of the boundary or of a hole's. */
export function distanceToRim({ boundary, holes }: Pick<PositionZone, 'boundary' | 'holes'>, [x, y]: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ring of [boundary, ...holes])
    for (const [k, [ax, ay]] of ring.entries()) {
      const [bx, by] = ring[(k + 1) % ring.length]!;
      const [dx, dy] = [bx - ax, by - ay];
      const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      least = Math.min(least, Math.hypot(ax + t * dx - x, ay + t * dy - y));
    }
  return least;
}
