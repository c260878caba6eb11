import type { EdgePlace } from '../../engine/form/edge-place.ts';
import type { MouldView } from '../../engine/form/mould-view.ts';
import { nameCorner } from './form-check.ts';
import { findDatumSides } from './form-words.ts';
import type { FormWords } from './set-out.ts';

/** Lengths that lie this close together [mm] are the same. */
const ROUNDING = 1e-6;

/** Whether two corners lie at one end of an extent, so that the side between them is in the form's own rail or end. */
function isOnExtent(first: number, second: number, extent: number): boolean {
  return [0, extent].some((end) => Math.abs(first - end) < ROUNDING && Math.abs(second - end) < ROUNDING);
}

/**
 * The side of the form that an edge insert is in: what the yard calls it, and from where the tape runs along it [mm].
 *
 * Only a side on the panel's extent is in a rail or an end of the form. Any other (a step of the outline, a skew side) is in a side form of its
 * own, named by its corners and taped from the corner nearer to the datum corner.
 */
export function describeSide(
  view: MouldView,
  { form, side: [first, second], inward }: EdgePlace,
  edge: number,
  words: FormWords,
): { readonly side: string; readonly along: number; readonly from: string } {
  const sides = findDatumSides(words, view.lay.datum);
  if (isOnExtent(first[1], second[1], view.width))
    return { side: inward[1] > 0 ? words.railA : words.railB, along: form[0], from: sides.end };
  if (isOnExtent(first[0], second[0], view.length))
    return { side: inward[0] > 0 ? words.start : words.finish, along: form[1], from: sides.rail };
  const corners = [edge, (edge + 1) % view.outline.length].map((corner) => ({ corner, at: view.outline[corner]! }));
  const near = corners.reduce((a, b) => (Math.hypot(...b.at) < Math.hypot(...a.at) ? b : a));
  return {
    side: `the side from ${nameCorner(corners[0]!.corner)} to ${nameCorner(corners[1]!.corner)}`,
    along: Math.hypot(form[0] - near.at[0], form[1] - near.at[1]),
    from: nameCorner(near.corner),
  };
}
