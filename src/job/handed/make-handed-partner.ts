import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { Fixture } from '../documents/fixture.ts';
import type { JobFile } from '../documents/job-file.ts';
import type { Panel } from '../documents/panel.ts';
import { showValue } from '../fault.ts';
import { findNearestWord } from '../nearest-word.ts';
import { mirrorConnection } from './mirror-connection.ts';
import { findMirrorHoles } from './mirror-fixture.ts';
import { mirrorCastIn, mirrorPanel } from './mirror-panel.ts';

/** A job with the partner in it and what a person must look at; or why there can be none. */
export type HandedPartner =
  | {
      readonly ok: true;
      readonly file: JobFile;
      readonly notes: readonly string[];
      /** True where the partner was there already and was made anew. */
      readonly isRemade: boolean;
    }
  | { readonly ok: false; readonly text: string };

/** The longest mark and key that a document takes. */
const LONGEST_MARK = 60;
const LONGEST_KEY = 120;

function refuse(text: string): HandedPartner {
  return { ok: false, text };
}

/** What stops a partner of that name; null: nothing. */
function findObstacle(panels: readonly Panel[], mark: string, newMark: string): string | null {
  const source = panels.find((panel) => panel.mark === mark);
  const marks = panels.map((panel) => panel.mark);
  if (source === undefined) {
    const near = findNearestWord(mark, marks);
    return `there is no panel ${mark}; ${near === null ? `expected one of ${marks.join(', ')}` : `did you mean ${near}?`}`;
  }
  if (source.handedOf !== null)
    return `panel ${mark} is itself the handed partner of ${source.handedOf}; expected a panel of its own`;
  if (newMark === '' || newMark.length > LONGEST_MARK)
    return `${showValue(newMark)} is no mark; expected a text of 1 to ${LONGEST_MARK} signs`;
  const there = panels.find((panel) => panel.mark === newMark);
  if (there !== undefined && there.handedOf !== mark)
    return `panel ${newMark} is there already and no partner of ${mark}; expected a new mark`;
  return null;
}

/** What is not the same thing mirrored, so that another must be ordered or made. */
function noteHanded(
  file: JobFile,
  source: { readonly castIns: readonly CastIn[]; readonly connections: readonly Connection[] },
  made: readonly Connection[],
  plates: readonly (Fixture | null)[],
): string[] {
  const boards = new Set(
    file.library.holding.ways.filter(({ method }) => method === 'template board').map(({ id }) => id),
  );
  const ofConnections = source.connections.flatMap((connection, i) => {
    const plate = plates[i] ?? null;
    if (plate === null || findMirrorHoles(plate) !== null) return [];
    const { mark } = made[i]!;
    const whose = connection.detail === null ? '' : ` (detail ${connection.detail} does not fit it)`;
    const ids = new Set(connection.inserts.map(({ insert }) => insert));
    const isOnBoard = source.castIns.some(({ id, holding }) => ids.has(id) && holding !== null && boards.has(holding));
    return [
      `bracket of ${mark} is handed: order a mirrored one${whose}`,
      ...(isOnBoard ? [`template board of ${mark} is handed: make a mirrored one`] : []),
    ];
  });
  const inWords = source.castIns.flatMap(({ id, item, description }) =>
    item === null && description !== null ? [`item ${id} (${description}): see whether it is the same mirrored`] : [],
  );
  return [...ofConnections, ...inWords];
}

/** Puts entries where those that they replace stood, or at the end. */
function replace<T>(list: readonly T[], isOld: (entry: T) => boolean, entries: readonly T[]): readonly T[] {
  const first = list.findIndex(isOld);
  const at = first < 0 ? list.length : first;
  const rest = (entry: T) => !isOld(entry);
  return [...list.slice(0, at).filter(rest), ...entries, ...list.slice(at).filter(rest)];
}

/**
 * Makes the handed partner of a panel: its mirror image with cast-in items, connections and loads, named and linked. Made anew where it is there
 * already. Permanent keys follow from the source's, so that the same panel gives the same partner.
 *
 * @returns refused where there is no such panel, where it is itself a partner, or where a name is taken or too long
 */
export function makeHandedPartner(file: JobFile, mark: string, newMark: string): HandedPartner {
  const { job, library } = file;
  const obstacle = findObstacle(job.panels, mark, newMark);
  if (obstacle !== null) return refuse(obstacle);
  const panel = job.panels.find((candidate) => candidate.mark === mark)!; // its absence is an obstacle
  const castIns = job.castIns.filter((castIn) => castIn.panel === mark);
  const connections = job.connections.filter((connection) => connection.panel === mark);
  const details = new Map(library.details.details.map(({ id, fixture }) => [id, fixture]));
  const plates = connections.map(
    ({ fixture, detail }) => fixture ?? (detail === null ? null : (details.get(detail) ?? null)),
  );
  const newPanel = mirrorPanel(panel, newMark);
  const newCastIns = castIns.map((castIn) => mirrorCastIn(panel, castIn, newMark));
  const newConnections = connections.map((connection, i) =>
    mirrorConnection(panel, connection, plates[i] ?? null, newMark),
  );

  const others = job.connections.filter((connection) => connection.panel !== newMark);
  const taken = newConnections.find((made) => others.some((connection) => connection.mark === made.mark));
  if (taken !== undefined)
    return refuse(`connection ${taken.mark} is there already in another panel; expected that name to be free`);
  const long = newConnections.find((made) => made.mark.length > LONGEST_MARK);
  if (long !== undefined)
    return refuse(`the mark ${long.mark} is longer than ${LONGEST_MARK} signs; expected a shorter one`);
  const longKey = [newPanel, ...newCastIns, ...newConnections].find(({ key }) => key.length > LONGEST_KEY);
  if (longKey !== undefined)
    return refuse(
      `the permanent key ${longKey.key} is longer than ${LONGEST_KEY} signs; expected a shorter one in ${mark}`,
    );

  const isOfPartner = (entry: { readonly panel: string }) => entry.panel === newMark;
  return {
    ok: true,
    isRemade: job.panels.some((candidate) => candidate.mark === newMark),
    notes: noteHanded(file, { castIns, connections }, newConnections, plates),
    file: {
      ...file,
      job: {
        ...job,
        panels: replace(job.panels, (candidate) => candidate.mark === newMark, [newPanel]),
        castIns: replace(job.castIns, isOfPartner, newCastIns),
        connections: replace(job.connections, isOfPartner, newConnections),
      },
    },
  };
}
