import { prepareRegion, type Region } from '../../engine/geometry/region.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Panel } from '../../job/documents/panel.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { type CountedAreas, findAreas } from '../areas/find-areas.ts';
import { workOut } from '../assess-connection.ts';
import { type Explanation, explainWorked } from '../explain/explanation.ts';

/** A panel while something on it is moved: only places change, so the job is indexed and the outline prepared once. */
export interface LivePanel {
  readonly index: JobIndex;
  readonly panel: Panel;
  readonly region: Region;
}

/** The answer of a connection as it would be. */
export interface LiveAnswer {
  readonly explanation: Explanation;
  /** Null where it could not be worked out. */
  readonly areas: CountedAreas | null;
}

/** @throws Error when the job has no such panel */
export function openLive(index: JobIndex, mark: string): LivePanel {
  const panel = index.panels.get(mark);
  if (panel === undefined) throw new Error(`no panel ${mark}`);
  return { index, panel, region: prepareRegion(panel.outline_mm, panel.openings_mm) };
}

/** The job with a few cast-in items elsewhere; nothing is copied. */
export function overlayPlaces(index: JobIndex, moved: readonly CastIn[]): JobIndex {
  if (moved.length === 0) return index;
  const find = (panel: string, id: string) => moved.find((one) => one.id === id && one.panel === panel);
  return {
    ...index,
    castIn: (panel, id) => find(panel, id) ?? index.castIn(panel, id),
    castInsOf: (panel) => index.castInsOf(panel).map((castIn) => find(panel, castIn.id) ?? castIn),
  };
}

/**
 * Works out a connection with its inserts where they are held at this moment: no steps, no copy of the job, so that it can be asked for at each
 * frame. Everything must stand in the concrete (`findMisplaced`).
 * @param connection as it is held: its plate may have moved too
 * @param moved cast-in items of the panel that are elsewhere than the job says
 */
export function answerLive({ index }: LivePanel, connection: Connection, moved: readonly CastIn[]): LiveAnswer {
  const { answer, worked } = workOut(resolveConnection(overlayPlaces(index, moved), connection));
  if (worked === null) return { explanation: { answer, modes: [], skipped: [], loads: [] }, areas: null };
  const explanation = explainWorked(worked);
  return { explanation, areas: findAreas(worked, explanation.modes) };
}
