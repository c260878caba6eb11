import type { Panel } from '../../job/documents/panel.ts';
import type { JobIndex } from '../../job/job-index.ts';
import type { AsCastConnection } from '../as-cast/as-cast-report.ts';
import { fitPlate, listBolts } from '../yard/fit-plate.ts';
import type { AsBolted } from './as-bolted.ts';
import type { BoltUpCard } from './bolt-up-report.ts';
import type { ChosenBolt } from './card-bolts.ts';

/** Why a connection may not be bolted up yet, and what that makes of its card. */
export interface Stops {
  readonly state: BoltUpCard['state'];
  readonly stops: readonly string[];
}

function listNumbers(members: AsCastConnection['members']): string {
  return members.map(({ item }) => item.number).join(', ');
}

/** What stands against it as cast, before any bolt is thought of. */
function stopAsCast(asCast: AsCastConnection): Stops | null {
  switch (asCast.state) {
    case 'fine':
      // Its inserts are where they were drawn; that makes no sound connection of one that was drawn too weak.
      return asCast.before.state === 'fails'
        ? {
            state: 'decide first',
            stops: [
              'its inserts are in their places, but as designed it does not carry its loads: the design engineer decides first',
            ],
          }
        : null;
    case 'decided':
      return asCast.decided?.verdict === 'does not work'
        ? {
            state: 'decide first',
            stops: [
              `what was decided does not work as it is computed today: ${asCast.decided.why.join('; ')}; it is decided anew`,
            ],
          }
        : null;
    case 'not usable': {
      const reason = asCast.decision?.body.reason;
      return {
        state: 'not usable',
        stops: [
          reason === undefined
            ? 'nothing that was tried works: the design engineer decides what becomes of it'
            : `decided: not usable. ${reason}`,
        ],
      };
    }
    case 'fine as it is':
      return {
        state: 'decide first',
        stops: ['it is off its place, works and goes on as it is: whoever may decide on site must say so first'],
      };
    case 'needs a remedy':
      return {
        state: 'decide first',
        stops: ['it does not work as it came out: somebody who may must choose a remedy first'],
      };
    case 'not surveyed': {
      const missing = asCast.members.filter(({ state }) => state === 'not surveyed');
      return {
        state: 'survey first',
        stops: [`where insert ${listNumbers(missing)} came out is not surveyed: measure it first`],
      };
    }
    case 'conflict':
      return {
        state: 'survey first',
        stops: ['surveys differ and did not know of each other: measure again and settle which is right'],
      };
  }
}

/** What stands against its bolts: nothing to pick them by, a thread that they do not go into, no length for the packers that are stated. */
function stopBolts({ plate, used, connection }: AsBolted, bolts: readonly ChosenBolt[]): readonly string[] {
  if (plate === null) return ['no plate is given, so that no bolt can be picked: the design engineer gives it'];
  const stops: string[] = [];
  const untyped = used.filter(({ insert }) => insert.item.item === null);
  if (untyped.length > 0)
    stops.push(
      `insert ${listNumbers(untyped.map(({ insert }) => insert))} has no type of the catalogue: no bolt is known for it`,
    );
  const threads = [...new Set(bolts.map(({ answer }) => answer.path.thread.name))];
  if (threads.length > 1)
    stops.push(
      `its inserts have different threads, ${threads.join(' and ')}: no standard covers that; the design engineer decides`,
    );
  const { boltThread } = connection;
  if (boltThread !== null && threads.some((thread) => thread !== boltThread))
    stops.push(
      `bolts ${boltThread} are asked for, the insert has ${threads.join(', ')}: they do not go in; the design engineer decides`,
    );
  if (bolts.some(({ answer }) => !answer.goesIn)) {
    const notes = bolts.flatMap(({ answer }) => answer.pair.notes);
    stops.push(
      [
        'the bolts asked for do not go into these threads: take another finish or class, as the design engineer says',
        ...new Set(notes),
      ].join('; '),
    );
  }
  for (const { bolt } of bolts) {
    const why = bolt.lengths[0]?.why ?? null;
    if (why !== null) stops.push(`insert ${bolt.insert.item.number}: ${why}`);
  }
  return stops;
}

/** A plate that does not go on even shifted and turned in its holes. */
function stopPlate(index: JobIndex, panel: Panel, { plate, used, connection }: AsBolted): readonly string[] {
  if (plate === null) return [];
  const castIns = used.map(({ insert: { item, place } }) =>
    place === null ? item.castIn : { ...item.castIn, x_mm: place.x, y_mm: place.y },
  );
  const fit = fitPlate(listBolts(index, panel, connection, castIns));
  if (fit.kind !== 'does not go on') return [];
  const lacks = Number(fit.lacks.toFixed(1));
  return [
    `the plate does not go on, however it is shifted and turned: hole ${fit.hole} lacks ${lacks} mm; the design engineer decides`,
  ];
}

/** What stands against bolting up a connection, in words that say who decides. */
export function findStops(
  index: JobIndex,
  panel: Panel,
  asCast: AsCastConnection,
  asBolted: AsBolted,
  bolts: readonly ChosenBolt[],
): Stops {
  const stop = stopAsCast(asCast);
  if (stop !== null) return stop;
  const stops = [...stopPlate(index, panel, asBolted), ...stopBolts(asBolted, bolts)];
  return { state: stops.length > 0 ? 'no bolts' : 'ready', stops };
}
