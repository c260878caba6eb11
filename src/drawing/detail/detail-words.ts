import { findDatumSides } from '../../assess/set-out/form-words.ts';
import type { PlanBar } from '../../assess/set-out/lay-bars.ts';
import type { PanelSetOut, SetOutGroup, SetOutItem } from '../../assess/set-out/set-out.ts';
import { writeNumbers } from '../../assess/set-out/write-numbers.ts';
import { nameFaces, writeMm } from '../section/section-words.ts';
import { describeBar, findNearestBar } from './near-bar.ts';

/** From where one looks, so that nobody takes it for its mirror image. */
function describeSight({ faceDown, isMirrored, panel }: PanelSetOut, place: string, side: string | null): string {
  const faces = nameFaces(faceDown);
  if (place === 'edge')
    return `edge at ${side}, seen from inside the form; ${faces.mould} below, ${faces.trowelled} above`;
  const face = place === 'mould face' ? faces.mould : faces.trowelled;
  const hand = isMirrored ? 'MIRROR IMAGE of' : 'same hand as';
  return `${face}, seen from above; ${hand} the drawing (${panel.drawnFace} face)`;
}

function describeCentre({ words, datum }: PanelSetOut, { centre, place }: SetOutGroup, first: SetOutItem): string {
  if (place === 'edge' && first.printed.kind === 'edge')
    return `centre: ${centre[0]} along, from ${first.printed.from}; ${centre[1]} above the bed`;
  const { end, rail } = findDatumSides(words, datum);
  return `centre: ${centre[0]} from ${end}, ${centre[1]} from ${rail}`;
}

function describeBars(bars: readonly PlanBar[], items: readonly SetOutItem[]): string[] {
  const nearest = findNearestBar(bars, items);
  if (nearest === null) return [];
  const kinds = [...new Set(bars.map(describeBar))];
  return [
    `grey: ${kinds.join(', ')}`,
    `nearest to an insert: ${describeBar(nearest.bar)}, ${writeMm(nearest.distance)} from ${nearest.number}, axis to axis from above`,
  ];
}

/** Lines under the detail of a connection, beside its title. @param bars those in the picture */
export function describeGroup(
  setOut: PanelSetOut,
  group: SetOutGroup,
  items: readonly SetOutItem[],
  bars: readonly PlanBar[],
  hasPlate: boolean,
  unlabelled: readonly number[],
): readonly string[] {
  const { diagonal, hasTemplate, place } = group;
  // A group has a member at least: it is gathered from its members.
  const first = items[0]!;
  const { handedOf } = setOut.panel;
  const others = [
    ...(hasTemplate ? ['set by one template board'] : []),
    ...(handedOf === null ? [] : [`this panel is the handed partner of ${handedOf}`]),
    ...(hasPlate ? ['dashed: the plate, bolted on later'] : []),
    ...describeBars(bars, items),
    ...(unlabelled.length === 0
      ? []
      : [`no room for the numbers of ${writeNumbers(unlabelled)}: find them by their figures`]),
  ].join('; ');
  const check = diagonal === null ? '' : `; check diagonal ${diagonal.from} to ${diagonal.to}: ${diagonal.length}`;
  return [
    describeSight(setOut, place, first.side),
    `${describeCentre(setOut, group, first)}${check}`,
    ...(others === '' ? [] : [others]),
  ];
}
