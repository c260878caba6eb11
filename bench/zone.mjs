import { readFileSync } from 'node:fs';
import { takeMiddle } from './timing.mjs';

/**
 * Where one insert of four may sit, and all four together, under ten load combinations: the region traced to a quarter of a mm by strength, cover, clash and
 * the fit of the plate. Times are of a second and later tracing, with the connection prepared; every fifth corner of the boundary is checked in full.
 */

const DEMO = JSON.parse(readFileSync(new URL('../demo/job.json', import.meta.url), 'utf8'));
/** Connections of the demo job with four inserts. */
const MARKS = ['C15', 'C29', 'C41'];
const COMBINATIONS = 10;
const ROUNDS = 5;

/** @returns { insert_ms, group_ms, checks } */
export function benchZone(parts) {
  const reading = parts.readJobDocument(DEMO);
  if (!reading.ok) throw new Error('the demo job has faults');
  const { file } = reading;
  const index = parts.indexJob(file);
  const sites = MARKS.map((mark) => parts.openZone(index, load(file, mark), null, parts.ZONE_WINDOW));
  const times = { insert: [], group: [] };
  let checks = 0;
  for (let round = 0; round <= ROUNDS; round++)
    for (const site of sites)
      for (const [name, subject] of [
        ['insert', round % 4],
        ['group', 'group'],
      ]) {
        const start = performance.now();
        const zone = parts.tracePositionZone(site, subject);
        const ms = performance.now() - start;
        if (round === 0) refuseWrong(parts, site, subject, zone);
        else times[name].push(ms);
        checks = Math.max(checks, zone.checks);
      }
  return { insert_ms: takeMiddle(times.insert), group_ms: takeMiddle(times.group), checks };
}

/** A connection with its loads in ten sizes. */
function load({ job }, mark) {
  const connection = job.connections.find((one) => one.mark === mark);
  const { combinations } = connection.actions;
  const all = Array.from({ length: COMBINATIONS }, (_, k) => {
    const { name, ...one } = combinations[k % combinations.length];
    return { ...one, name: `${name} ${k}`, N_kN: one.N_kN * (1 - 0.03 * k), Vx_kN: one.Vx_kN * (1 - 0.05 * k) };
  });
  return { ...connection, actions: { kind: 'loads', combinations: all } };
}

function refuseWrong(parts, site, subject, zone) {
  if (zone.kind !== 'zone') throw new Error(`${site.connection.mark} has no zone`);
  for (const at of zone.boundary.filter((_, k) => k % 5 === 0))
    if (parts.findLimit(site, parts.shiftsOf(site, subject, at)) !== null)
      throw new Error(`${site.connection.mark} ${subject}: a corner at ${at} does not pass the full check`);
}
