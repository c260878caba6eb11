import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Panel } from '../../job/documents/panel.ts';
import { frameOf, placeInPlate, placeOnFace } from '../../job/face-frame.ts';
import type { JobIndex } from '../../job/job-index.ts';
import { resolveConnection } from '../../job/resolve/resolve-connection.ts';
import { assessConnection } from '../assess-connection.ts';
import type { ConnectionAnswer } from '../connection-answer.ts';

/** A connection whose inserts are elsewhere than designed. */
export interface MovedConnection {
  /** The job as designed. */
  readonly index: JobIndex;
  /** The same job with everything where it is. */
  readonly moved: JobIndex;
  readonly panel: Panel;
  readonly connection: Connection;
  /** Its inserts where they are, in its order. */
  readonly members: readonly CastIn[];
}

/** The connection with its plate where its inserts are in the mean, and its loads with it. */
function followInserts({ index, panel, connection, members }: MovedConnection): Connection {
  const mean = (axis: 'x_mm' | 'y_mm') =>
    members.reduce((sum, member) => sum + member[axis] - (index.castIn(panel.mark, member.id) ?? member)[axis], 0) /
    members.length;
  const [x, y] = connection.origin_mm;
  return { ...connection, origin_mm: [x + mean('x_mm'), y + mean('y_mm')] };
}

/** A plate that followed its inserts, its loads where they were drawn. */
export function leaveLoads(panel: Panel, drawn: Connection, followed: Connection): Connection {
  const { actions } = drawn;
  if (actions.kind !== 'loads') return followed;
  const frame = frameOf(panel, drawn);
  const combinations = actions.combinations.map((load) => {
    const at = placeOnFace(frame, drawn.origin_mm, drawn.turn_deg, load.at_mm);
    return { ...load, at_mm: placeInPlate(frame, followed.origin_mm, followed.turn_deg, at) };
  });
  return { ...followed, actions: { ...actions, combinations } };
}

/** States from the one that speaks least against a connection to the worst. */
const BY_WEIGHT = ['passes', 'strength not checked', 'not covered', 'cannot be computed', 'fails'] as const;

/** Of two answers the one that speaks more against the connection. */
export function worseOf(a: ConnectionAnswer, b: ConnectionAnswer): ConnectionAnswer {
  const [ofA, ofB] = [a, b].map(({ state }) => BY_WEIGHT.indexOf(state)) as [number, number]; // one each
  if (ofA !== ofB) return ofA > ofB ? a : b;
  return (b.ratio ?? 0) > (a.ratio ?? 0) ? b : a;
}

/**
 * The strength with the inserts where they are. The plate goes where they are in the mean. Where the load is then nobody knows: the plate brings it
 * along, or it stays where it was drawn; the worse counts. On one bolt the load always goes with the plate.
 */
export function assessMoved(question: MovedConnection): ConnectionAnswer {
  const { moved, panel, connection, members } = question;
  const followed = followInserts(question);
  const along = assessConnection(resolveConnection(moved, followed));
  if (members.length < 2 || connection.actions.kind !== 'loads') return along;
  return worseOf(along, assessConnection(resolveConnection(moved, leaveLoads(panel, connection, followed))));
}
