/**
 * Choosing an insert, against numbers-only checks of the same connection; and a whole job, against one of a quarter of its size.
 *
 * One connection: four inserts beside an opening in ten combinations, sixty inserts of the catalogue that all fit. A numbers-only
 * check is `assessConnection` of the connection as resolved with one insert: forces of the plate, its bending, geometry, all modes.
 * A second row leaves to the peer only geometry and modes, the forces ready: the strictest reading of "a check". Before
 * anything is timed, each insert's ratio must be the same by choosing and by a check of the job with it.
 */

import { readFileSync } from 'node:fs';
import { timeInTurns } from './timing.mjs';
import { makeLargeJob } from './whole-job/job.mjs';

const DEMO = JSON.parse(readFileSync(new URL('../demo/job.json', import.meta.url), 'utf8'));
const MARK = 'C02';
const INSERTS = 60;
const COMBINATIONS = 10;
const SAME = 1e-12;
const NO_CHANGES = { move: 0, drills: false, strongerBolts: false, daysToPour: null };
const EACH_FAILING = { connection: null, panel: null, all: false };

/** 105 copies of the demo job hold 12,600 fixing inserts in 4,200 connections; four times as many, 50,400 in 16,800. */
const SMALL = 4_200;
const LARGE = 4 * SMALL;
const ROUNDS = 3;

/**
 * @param parts Onepour's parts
 * @returns { inserts, combinations, ours_us, check: { us, ratio }, modes: { us, ratio } }: times of choosing, of as many checks, and
 *   of as many runs of the modes alone; each ratio is choosing over these
 */
export function benchOneChoice(parts) {
  const file = read(parts, makeCatalogueJob());
  const connection = file.job.connections.find(({ mark }) => mark === MARK);
  const { items } = file.library.catalogue;
  const draft = new parts.JobDraft(file);
  const choose = () => parts.chooseConnection(draft, connection, NO_CHANGES);
  const checks = items.map((item) => prepareCheck(parts, file, connection, item));
  refuseOther(choose(), checks);
  const runModes = ({ resolution: { group }, actions }) => {
    const prepared = parts.prepare(group);
    return actions.reduce((sum, one) => sum + parts.checkAnchorage(prepared, one).ratio, 0);
  };
  const ways = [
    () => choose().checks,
    () => checks.reduce((sum, { resolution }) => sum + parts.assessConnection(resolution).ratio, 0),
    () => checks.reduce((sum, check) => sum + runModes(check), 0),
  ];
  // Once for the compiler alone: all ways run the same engine, which is compiled anew while they are first taken in turns.
  timeInTurns(ways, { roundMs: 60, rounds: 11 });
  const times = timeInTurns(ways, { roundMs: 60, rounds: 31 });
  const compare = (way) => ({ us: times.us(way), ratio: 1 / times.ratio(0, way) });
  return {
    inserts: items.length,
    combinations: COMBINATIONS,
    ours_us: times.us(0),
    check: compare(1),
    modes: compare(2),
  };
}

/**
 * @param parts Onepour's parts
 * @returns { inserts, connections, smallMs, largeMs, ratio }: times of choosing for a whole job and for one of a quarter of its size
 */
export function benchWholeChoice(parts) {
  const small = read(parts, makeLargeJob(DEMO, SMALL));
  const large = read(parts, makeLargeJob(DEMO, LARGE));
  const times = { small: [], large: [] };
  timeChoice(parts, small);
  for (let round = 0; round < ROUNDS; round++) {
    times.small.push(timeChoice(parts, small));
    times.large.push(timeChoice(parts, large));
  }
  const [smallMs, largeMs] = [Math.min(...times.small), Math.min(...times.large)];
  const inserts = large.job.castIns.filter(({ role }) => role === 'fixing').length;
  return { inserts, connections: LARGE, smallMs, largeMs, ratio: largeMs / smallMs };
}

function timeChoice(parts, file) {
  const start = performance.now();
  const { choices } = parts.chooseJob(file, EACH_FAILING, NO_CHANGES);
  const ms = performance.now() - start;
  if (choices.length === 0) throw new Error('nothing to choose in the large job');
  return ms;
}

function read(parts, document) {
  const reading = parts.readJobDocument(document);
  if (!reading.ok) throw new Error(`the job is not read: ${JSON.stringify(reading.faults.slice(0, 3))}`);
  return reading.file;
}

/** The demo job with a catalogue of inserts of one thread that differ in length, foot and price, all short enough for the panel. */
function makeCatalogueJob() {
  const { items } = DEMO.library.catalogue;
  const first = items.find(({ id }) => id === 'F16-103');
  const more = Array.from({ length: INSERTS }, (_, i) => ({
    ...first,
    id: i === 0 ? first.id : `G${i}`,
    length_mm: first.length_mm - 20 + i,
    embedment_mm: first.embedment_mm - 20 + i,
    foot: { ...first.foot, diameter_mm: first.foot.diameter_mm + (i % 7) },
    price: { amount: 5 + ((7 * i) % 13), currency: 'EUR' },
  }));
  const job = {
    ...DEMO.job,
    // Only the one connection, so that no other insert of the demo is missing from the catalogue.
    castIns: DEMO.job.castIns
      .filter(({ panel, item }) => panel === 'P01' && item !== null)
      .map((castIn) => ({ ...castIn, item: first.id, holding: null, recess_mm: 0 })),
    connections: DEMO.job.connections.filter(({ mark }) => mark === MARK).map(giveCombinations),
  };
  const catalogue = { ...DEMO.library.catalogue, items: more };
  const details = { ...DEMO.library.details, details: [] };
  return { ...DEMO, job, library: { ...DEMO.library, catalogue, details } };
}

function giveCombinations(connection) {
  const combinations = Array.from({ length: COMBINATIONS }, (_, i) => ({
    ...connection.actions.combinations[0],
    name: `combination ${i + 1}`,
    N_kN: 40 + 5 * i,
    Vx_kN: 3 * Math.cos(i),
    Vy_kN: -10 + i,
    Mx_kNm: 0.2 * i,
  }));
  return { ...connection, actions: { kind: 'loads', combinations } };
}

/** The connection resolved with one insert, with the forces on its inserts and its ratio. */
function prepareCheck(parts, file, connection, { id }) {
  const castIns = file.job.castIns.map((castIn) => ({ ...castIn, item: id }));
  const index = parts.indexJob({ ...file, job: { ...file.job, castIns } });
  const resolution = parts.resolveConnection(index, connection);
  const prepared = parts.prepare(resolution.group);
  const actions = parts.spreadActions(resolution, prepared).map((combination) => combination.actions);
  return { id, resolution, actions, ratio: parts.assessConnection(resolution).ratio };
}

function refuseOther({ ranked, rejected }, checks) {
  const found = new Map([...ranked, ...rejected].map(({ item, ratio }) => [item.id, ratio]));
  for (const { id, ratio } of checks) {
    const ours = found.get(id);
    if (ours === null || ours === undefined || !(Math.abs(ours / ratio - 1) <= SAME))
      throw new Error(`${id}: ratio ${ours} by choosing, ${ratio} by a check of the job with it; expected the same`);
  }
}
