import { nameCorner } from '../set-out/form-check.ts';
import { findDatumSides } from '../set-out/form-words.ts';
import type { PanelSetOut, SetOutItem } from '../set-out/set-out.ts';
import type { Move, PlacingAnswer } from './placing-answer.ts';

/** What lies at the zero end of a taped length, and what at its other end; null: the length runs upward from the bed. */
type TapedEnds = { readonly from: string; readonly to: string } | null;

/** Between what the two lengths of an item run, in the yard's words: a form has no left and no right. */
function findTapedEnds(setOut: PanelSetOut, { castIn, printed }: SetOutItem): readonly [TapedEnds, TapedEnds] {
  const { end, otherEnd, rail, otherRail } = findDatumSides(setOut.words, setOut.datum);
  const along = { from: end, to: otherEnd };
  const across = { from: rail, to: otherRail };
  if (printed.kind === 'plan') return [along, across];
  const { from } = printed;
  if (from === end) return [along, null];
  if (from === rail) return [across, null];
  // A side form of its own runs from corner to corner.
  const corners = [castIn.edge ?? 0, ((castIn.edge ?? 0) + 1) % setOut.outline.length].map(nameCorner);
  return [{ from, to: corners.find((corner) => corner !== from) ?? from }, null];
}

/** The way back of an insert whose top lies deeper below its face than it should, or less deep. */
function findLevelWay({ place }: SetOutItem, isTooDeep: boolean): string {
  if (place === 'trowelled face') return isTooDeep ? 'up' : 'down';
  const form = place === 'edge' ? 'the side form' : 'the form';
  return isTooDeep ? `toward ${form}` : `away from ${form}`;
}

/**
 * How an insert gets to its place from where it was found, in whole mm; lengths that round to 0 are left out.
 * @param deviation found less designed [mm]
 */
export function findMoves(
  setOut: PanelSetOut,
  item: SetOutItem,
  deviation: PlacingAnswer['deviation'],
): readonly Move[] {
  const [x, y] = findTapedEnds(setOut, item);
  const step = (off: number | null, nameWay: (isTooFar: boolean) => string): Move[] => {
    const by = Math.round(Math.abs(off ?? 0));
    return off === null || by === 0 ? [] : [{ by, toward: nameWay(off > 0) }];
  };
  const along = (ends: TapedEnds) => (isTooFar: boolean) => {
    if (ends === null) return isTooFar ? 'down' : 'up';
    return `toward ${isTooFar ? ends.from : ends.to}`;
  };
  return [
    ...step(deviation.x, along(x)),
    ...step(deviation.y, along(y)),
    ...step(deviation.level, (isTooDeep) => findLevelWay(item, isTooDeep)),
  ];
}
