import type { Draft } from 'immer';
import type { CastIn } from '../../documents/cast-in.ts';
import type { Connection } from '../../documents/connection.ts';
import type { Recipe } from '../edit-job.ts';

/** Puts a connection and its inserts, changed as a whole, in place of those with their permanent keys. */
export function putParts(connection: Connection, castIns: readonly CastIn[]): Recipe {
  return ({ job }) => {
    const at = job.connections.findIndex(({ key }) => key === connection.key);
    if (at >= 0) job.connections[at] = connection as Draft<Connection>;
    const changed = new Map(castIns.map((castIn) => [castIn.key, castIn]));
    for (const [k, { key }] of job.castIns.entries()) {
      const next = changed.get(key);
      if (next !== undefined) job.castIns[k] = next as Draft<CastIn>;
    }
  };
}
