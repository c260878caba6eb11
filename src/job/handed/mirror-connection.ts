import type { Combination, Connection } from '../documents/connection.ts';
import type { Fixture } from '../documents/fixture.ts';
import type { Panel } from '../documents/panel.ts';
import { findMirrorHoles, mirrorFixture } from './mirror-fixture.ts';
import { handedKey, mirrorPlace } from './mirror-panel.ts';
import { mirrorDirection, mirrorPoint } from './mirror-values.ts';

/** Added to the mark of the connection that a partner's is made from. */
const HANDED_MARK = '-H';

/** The mark of a connection's mirror image. */
export function handedMark(mark: string): string {
  return `${mark}${HANDED_MARK}`;
}

/**
 * Loads mirrored in the plate's y axis: what points along x turns round. Of the moments Mx (N at +y gives +Mx) stays; My (N at +x gives −My) and T turn
 * round.
 */
function mirrorLoads(load: Combination): Combination {
  return {
    ...load,
    Vx_kN: 0 - load.Vx_kN,
    My_kNm: 0 - load.My_kNm,
    T_kNm: 0 - load.T_kNm,
    at_mm: mirrorPoint(0, load.at_mm),
  };
}

/** The plate of a mirrored connection: the standard detail where that is its own mirror image, else one of its own. */
function mirrorPlate(
  connection: Connection,
  fixture: Fixture | null,
): Pick<Connection, 'detail' | 'fixture' | 'inserts'> {
  const { detail, inserts } = connection;
  if (fixture === null) return { detail, fixture: null, inserts };
  const pairs = detail === null ? null : findMirrorHoles(fixture);
  if (pairs === null) return { detail: null, fixture: mirrorFixture(fixture), inserts };
  const putInto = (hole: string | null) => (hole === null ? null : (pairs.get(hole) ?? hole));
  return { detail, fixture: null, inserts: inserts.map(({ insert, hole }) => ({ insert, hole: putInto(hole) })) };
}

/**
 * The mirror image of a connection.
 *
 * A plate's axes are those of one who stands in front of its face; there too the mirror image is left for right. So the plate is mirrored in
 * its own y axis and turned the other way.
 *
 * @param fixture its plate, or that of its detail; null: none
 */
export function mirrorConnection(
  panel: Panel,
  connection: Connection,
  fixture: Fixture | null,
  mark: string,
): Connection {
  const { edge, at } = mirrorPlace(panel, connection, connection.origin_mm);
  const { actions } = connection;
  return {
    ...connection,
    key: handedKey(connection.key),
    mark: handedMark(connection.mark),
    panel: mark,
    edge,
    origin_mm: at,
    turn_deg: 0 - connection.turn_deg,
    ...mirrorPlate(connection, fixture),
    // Computed for the other hand: the partner's own is asked for there.
    positionBox: null,
    hairpins: connection.hairpins.map((loop) => ({ ...loop, toward_deg: mirrorDirection(loop.toward_deg) })),
    actions:
      actions.kind === 'loads' ? { kind: 'loads', combinations: actions.combinations.map(mirrorLoads) } : actions,
  };
}
