import type { CastIn } from '../job/documents/cast-in.ts';
import type { CatalogueItem } from '../job/documents/catalogue.ts';
import type { Connection } from '../job/documents/connection.ts';
import type { Detail } from '../job/documents/details.ts';
import type { Fixture } from '../job/documents/fixture.ts';
import type { JobFile } from '../job/documents/job-file.ts';
import type { Panel } from '../job/documents/panel.ts';
import { indexJob, type JobIndex } from '../job/job-index.ts';
import { resolveConnection } from '../job/resolve/resolve-connection.ts';
import { type WorkedConnection, workOut } from './assess-connection.ts';
import { type Explanation, explainWorked } from './explain/explanation.ts';

/** One connection with all that a page about it starts from. */
export interface LookedAt {
  /** Of its panel alone, with the whole library. */
  readonly index: JobIndex;
  readonly connection: Connection;
  readonly panel: Panel;
  /** Its own plate or that of its detail; null where none is given. */
  readonly fixture: Fixture | null;
  readonly detail: Detail | null;
  /** In the order of the connection. */
  readonly inserts: readonly { readonly castIn: CastIn; readonly item: CatalogueItem | null }[];
  readonly explanation: Explanation;
  /** Null where it cannot be computed. */
  readonly worked: WorkedConnection | null;
}

/** The part of a job that one panel needs; nothing is copied. */
function sliceFor({ job, library, ...file }: JobFile, mark: string): JobFile {
  return {
    ...file,
    library,
    job: {
      ...job,
      panels: job.panels.filter((panel) => panel.mark === mark),
      castIns: job.castIns.filter(({ panel }) => panel === mark),
      connections: job.connections.filter(({ panel }) => panel === mark),
    },
  };
}

/** Works out one connection of a sound job, without steps: fast enough for each frame. Null where the job has none of that mark. */
export function lookAtConnection(file: JobFile, mark: string): LookedAt | null {
  const connection = file.job.connections.find((one) => one.mark === mark);
  if (connection === undefined) return null;
  const index = indexJob(sliceFor(file, connection.panel));
  const panel = index.panels.get(connection.panel);
  if (panel === undefined) return null;
  const { answer, worked } = workOut(resolveConnection(index, connection));
  return {
    index,
    connection,
    panel,
    fixture: index.fixtureOf(connection),
    detail: connection.detail === null ? null : (index.details.get(connection.detail) ?? null),
    inserts: connection.inserts.flatMap(({ insert }) => {
      const castIn = index.castIn(panel.mark, insert);
      if (castIn === undefined) return [];
      return [{ castIn, item: castIn.item === null ? null : (index.items.get(castIn.item) ?? null) }];
    }),
    explanation: worked === null ? { answer, modes: [], skipped: [], loads: [] } : explainWorked(worked),
    worked,
  };
}
