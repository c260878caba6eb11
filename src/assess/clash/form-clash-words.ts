import { placeOnEdge } from '../../engine/form/edge-place.ts';
import type { Point } from '../../engine/geometry/point.ts';
import { describeSide } from '../set-out/describe-side.ts';
import { nameCorner } from '../set-out/form-check.ts';
import { viewPanel } from '../set-out/panel-view.ts';
import type { PanelSetOut } from '../set-out/set-out.ts';
import type { ClashWords, Turn } from './describe-clash.ts';

/** A direction nearer than this to an axis of the form [degrees] is along it. */
const ALONG = 0.1;

/** The side of the form that a direction of the plan points at, or the angle from the direction of the bed. */
function nameSide({ words }: PanelSetOut, [x, y]: Point): string {
  const angle = ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360;
  const sides = [words.finish, words.railB, words.start, words.railA];
  const quarter = Math.round(angle / 90) % 4;
  if (Math.abs(angle - 90 * Math.round(angle / 90)) < ALONG) return sides[quarter]!;
  const between = Math.floor(angle / 90) % 4;
  return `between ${sides[between]} and ${sides[(between + 1) % 4]}, ${(angle % 90).toFixed(1)}° from toward the first`;
}

/** Where a cross bar in a side lies then, in the upright plane of the side. */
function nameSlope({ outline, faceDown }: PanelSetOut, edge: number, direction: number): string {
  const slope = Math.round(Math.min(direction, 180 - direction));
  if (slope === 0) return 'level';
  if (slope === 90) return 'upright';
  // It turns from along the side toward the inside face, which lies up or down.
  const isSecondHigher = direction < 90 === (faceDown === 'outside');
  const higher = nameCorner(isSecondHigher ? (edge + 1) % outline.length : edge);
  return `${slope}° out of level, its end toward ${higher} the higher one`;
}

/** Places and directions as the sheet of a panel has them: its numbers, and the yard's names of ends and rails. */
export function formClashWords(setOut: PanelSetOut): ClashWords {
  const { panel, items } = setOut;
  const { faceDown } = panel;
  const view = viewPanel(panel);
  const numbers = new Map(items.map(({ castIn, number }) => [castIn.id, number]));
  const step = (amount: number, direction: Point) =>
    amount === 0
      ? []
      : [
          `${Math.abs(amount)} mm toward ${nameSide(setOut, view.turnVector(amount > 0 ? direction : [-direction[0], -direction[1]]))}`,
        ];
  const turned = ({ face, edge, direction_deg }: Turn) => {
    if (face === 'edge' && edge !== null) return `so that it lies ${nameSlope(setOut, edge, direction_deg)}`;
    const fromBed = Math.round(view.turnDirection(direction_deg)) % 180;
    if (fromBed === 0) return 'so that it lies along the bed';
    if (fromBed === 90) return 'so that it lies across the bed';
    return `so that it lies ${fromBed}° counter-clockwise from along the bed, seen from above`;
  };
  const byNumber = (id: string) => `no. ${numbers.get(id) ?? id}`;
  return {
    insert: byNumber,
    item: byNumber,
    toward: (direction) => nameSide(setOut, view.turnVector(direction)),
    edge: (edge) =>
      describeSide(view, placeOnEdge(view, { edge, along: 0, fromOutside: 0 }, panel.thickness_mm), edge, setOut.words)
        .side,
    turned,
    steps: (face, dx, dy) => {
      if (face !== 'edge') return [...step(dx, [1, 0]), ...step(dy, [0, 1])];
      const up = faceDown === 'outside' ? dy : -dy;
      return [
        ...(dx === 0
          ? []
          : [`${Math.abs(dx)} mm along the side, ${dx > 0 ? 'away from' : 'toward'} its first corner in the drawing`]),
        ...(up === 0 ? [] : [`${Math.abs(up)} mm ${up > 0 ? 'higher' : 'lower'}`]),
      ];
    },
  };
}
