import { viewPanel } from '../../assess/set-out/panel-view.ts';
import type { PanelSetOut, SetOutGroup } from '../../assess/set-out/set-out.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { Connection } from '../../job/documents/connection.ts';
import type { Fixture } from '../../job/documents/fixture.ts';
import { frameOf, panelSide, placeOnFace } from '../../job/face-frame.ts';
import { findDetailView } from './detail-view.ts';

/**
 * Outline of a connection's plate as it will lie on the panel, in the view of the connection's detail (`detail-view.ts`) [mm]. The plate's own
 * axes are seen from the front of its face; on the mould face they are seen through the panel.
 */
export function layPlate(
  setOut: PanelSetOut,
  group: SetOutGroup,
  connection: Connection,
  fixture: Fixture,
): readonly Point[] {
  const { panel } = setOut;
  const { faceDown, thickness_mm } = panel;
  const frame = frameOf(panel, connection);
  const view = viewPanel(panel);
  const detail = findDetailView(setOut, group);
  return fixture.outline_mm.map((corner) => {
    const onFace = placeOnFace(frame, connection.origin_mm, connection.turn_deg, corner);
    // A frame turns positions of the documents into those of the face, and is its own inverse.
    const given = frame.toFace(onFace);
    if (connection.face !== 'edge' || connection.edge === null) return detail.toView(view.toPlan(given), null);
    const { from, along } = panelSide(panel, connection.edge);
    const plan = view.toPlan([from[0] + along[0] * given[0], from[1] + along[1] * given[0]]);
    return detail.toView(plan, faceDown === 'outside' ? given[1] : thickness_mm - given[1]);
  });
}
