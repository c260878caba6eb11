import { findDatumSides } from '../../../assess/set-out/form-words.ts';
import type { PanelSetOut, SetOutItem } from '../../../assess/set-out/set-out.ts';
import type { TapedAxis } from './walk/walk-session.ts';

/** What a tape is laid along for a length of an insert: from where, in the yard's own words. */
export function tellTape(setOut: PanelSetOut, { printed, place }: SetOutItem, axis: TapedAxis): string {
  if (axis === 'level')
    return place === 'edge' ? 'level: how far it lies inside the side form' : 'level: below the face';
  if (printed.kind === 'edge') return axis === 'x' ? `along, from ${printed.from}` : 'height above the bed';
  const { end, rail } = findDatumSides(setOut.words, setOut.datum);
  return axis === 'x' ? `x, from the ${end}` : `y, from the ${rail}`;
}
