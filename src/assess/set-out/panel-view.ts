import type { HoldingPlace } from '../../engine/form/holding-methods.ts';
import { type MouldView, mouldView } from '../../engine/form/mould-view.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { Panel } from '../../job/documents/panel.ts';

/** A panel as its document lays it into the form, seen from above. */
export function viewPanel({ outline_mm, drawnFace, faceDown, inForm }: Panel): MouldView {
  return mouldView({ outline: outline_mm, drawnFace, faceDown, turn: inForm.turn_deg, datum: inForm.datum });
}

/** Where a cast-in item sits while the concrete is placed. */
export function findPlace(panel: Panel, castIn: CastIn): HoldingPlace {
  if (castIn.face === 'edge') return 'edge';
  return castIn.face === panel.faceDown ? 'mould face' : 'trowelled face';
}
