import type { Connection } from '../../job/documents/connection.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { chooseConnectionBolt } from '../bolt-of-connection.ts';
import { addLines } from './add-lines.ts';
import type { OpenPoint } from './open-point.ts';
import { boltKind, type PartLine, washerKind } from './part-kind.ts';

/** Bolts and washers of one connection, and what is not known of them. */
export interface SiteKit {
  readonly lines: readonly PartLine[];
  readonly open: readonly OpenPoint[];
}

/** Washer of a bolt whose length is open: the normal series, as it is taken for the others. */
const USUAL_WASHER = 'ISO 7089';

/** Bolts of a length that is not known: counted all the same, so that nothing is missing from the order. */
function countOpen({ file, items, castIn }: JobIndex, connection: Connection, why: string): SiteKit {
  const { mark, panel, inserts, boltThread, boltClass, boltFinish } = connection;
  const lines = inserts.flatMap(({ insert }) => {
    const id = castIn(panel, insert)?.item ?? null;
    const thread = boltThread ?? (id === null ? undefined : items.get(id)?.thread);
    if (thread === undefined) return [];
    const propertyClass = boltClass ?? file.library.rules.defaults.boltClass;
    return [
      { kind: boltKind({ thread, length: null, propertyClass, finish: boltFinish }), count: 1 },
      { kind: washerKind(thread, USUAL_WASHER, boltFinish), count: 1 },
    ];
  });
  const text = `connection ${mark}: length of its bolts not known, ${why}`;
  return { lines: addLines([{ lines, times: 1 }]), open: [{ kind: 'bolt length', panel, text }] };
}

/**
 * The bolts and washers of a connection: one of each for every insert, as `chooseConnectionBolt` takes them. Packs and lead times of bolts are
 * not in the job.
 */
export function findSiteKit(index: JobIndex, connection: Connection): SiteKit {
  const resolution = resolveConnection(index, connection);
  if (resolution.kind === 'unresolved') return countOpen(index, connection, resolution.reasons.join('; '));
  const { castIns, item } = resolution.source;
  const isMixed = castIns.some(({ item: id }) => id !== null && index.items.get(id)?.thread !== item.thread);
  if (isMixed) return countOpen(index, connection, 'its inserts have different threads');
  const bolt = chooseConnectionBolt(resolution, null);
  if (bolt === null) return countOpen(index, connection, 'no plate is given: add one, or a standard detail');
  const { finish, propertyClass, washer, answer } = bolt;
  if (answer.choice === null)
    return countOpen(index, connection, 'no nominal length suits its plate, packers, recess and thread depth');
  const count = castIns.length;
  return {
    lines: [
      { kind: boltKind({ thread: item.thread, length: answer.choice.length, propertyClass, finish }), count },
      { kind: washerKind(item.thread, washer.standard, finish), count },
    ],
    open: [],
  };
}
