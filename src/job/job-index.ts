import type { CastIn } from './documents/cast-in.ts';
import type { CatalogueItem } from './documents/catalogue.ts';
import type { Connection } from './documents/connection.ts';
import type { Fixture } from './documents/fixture.ts';
import type { HoldingPart, HoldingWay } from './documents/holding-parts.ts';
import type { JobFile } from './documents/job-file.ts';
import type { Panel } from './documents/panel.ts';

/** A job with its parts by name, so that resolving many connections stays linear in the size of the job. */
export interface JobIndex {
  readonly file: JobFile;
  readonly panels: ReadonlyMap<string, Panel>;
  readonly items: ReadonlyMap<string, CatalogueItem>;
  readonly details: ReadonlyMap<string, JobFile['library']['details']['details'][number]>;
  readonly concretes: ReadonlyMap<string, JobFile['job']['concretes'][number]>;
  readonly ways: ReadonlyMap<string, HoldingWay>;
  readonly parts: ReadonlyMap<string, HoldingPart>;
  /** Cast-in items of a panel by their id. */
  castIn(panel: string, id: string): CastIn | undefined;
  /** All of a panel, in the order of the job. */
  castInsOf(panel: string): readonly CastIn[];
  connectionsOf(panel: string): readonly Connection[];
  /** A connection's own plate, or that of its standard detail; null where the drawing shows none. */
  fixtureOf(connection: Pick<Connection, 'fixture' | 'detail'>): Fixture | null;
}

/** Indexes a job; the job is not copied. */
export function indexJob(file: JobFile): JobIndex {
  const { job, library } = file;
  const castIns = new Map<string, Map<string, CastIn>>();
  for (const castIn of job.castIns) {
    const ofPanel = castIns.get(castIn.panel) ?? new Map<string, CastIn>();
    ofPanel.set(castIn.id, castIn);
    castIns.set(castIn.panel, ofPanel);
  }
  const connections = new Map<string, Connection[]>();
  for (const connection of job.connections) {
    const ofPanel = connections.get(connection.panel) ?? [];
    connections.set(connection.panel, ofPanel);
    ofPanel.push(connection);
  }
  const details = new Map(library.details.details.map((detail) => [detail.id, detail]));
  return {
    file,
    panels: new Map(job.panels.map((panel) => [panel.mark, panel])),
    items: new Map(library.catalogue.items.map((item) => [item.id, item])),
    details,
    concretes: new Map(job.concretes.map((concrete) => [concrete.id, concrete])),
    ways: new Map(library.holding.ways.map((way) => [way.id, way])),
    parts: new Map(library.holding.parts.map((part) => [part.id, part])),
    castIn: (panel, id) => castIns.get(panel)?.get(id),
    castInsOf: (panel) => [...(castIns.get(panel)?.values() ?? [])],
    connectionsOf: (panel) => connections.get(panel) ?? [],
    fixtureOf: ({ fixture, detail }) => fixture ?? (detail === null ? null : (details.get(detail)?.fixture ?? null)),
  };
}
