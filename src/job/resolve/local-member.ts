import type { Region } from '../../engine/geometry/region.ts';
import type { CastIn } from '../documents/cast-in.ts';
import type { Connection } from '../documents/connection.ts';
import type { Panel } from '../documents/panel.ts';
import type { LocalMember } from './local-member-type.ts';
import { memberOfEdge } from './member-of-edge.ts';
import { surveyLargeFace } from './member-of-large-face.ts';

/**
 * The concrete that a connection's inserts stand in, in coordinates of their face [mm], for any embedment. `region`: the panel as drawn.
 *
 * Large faces: the panel's outline and openings; the thickness is the least structural layer at the inserts and in zones within
 * 1.5 h_ef of them. Edges: the edge is a face of its own, length × structural layer, and what lies behind it is its thickness.
 */
export function surveyMember(
  connection: Connection,
  panel: Panel,
  castIns: readonly CastIn[],
  region: Region,
): (embedment: number) => LocalMember {
  if (connection.face !== 'edge') return surveyLargeFace(connection, panel, castIns, region, connection.face);
  if (connection.edge === null)
    throw new Error(`connection ${connection.mark}: an edge face without the number of its edge`);
  const member = memberOfEdge(connection, panel, castIns, region, connection.edge);
  return () => member;
}
