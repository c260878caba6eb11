import { findBoardMovement } from '../../engine/form/holding-scatter.ts';
import { addScatter, type Scatter, scatterOfGroup, scatterOfPlace } from '../../engine/form/position-scatter.ts';
import type { TapeClass } from '../../engine/form/tape-error.ts';
import { middleOf } from '../../engine/form/whole-millimetres.ts';
import type { Point } from '../../engine/geometry/point.ts';
import type { CastIn } from '../../job/documents/cast-in.ts';
import type { HoldingWay } from '../../job/documents/holding-parts.ts';
import { isBoardGroup } from './board-group.ts';
import type { AssemblyDraft } from './find-assembly.ts';
import type { SetOutItem } from './set-out.ts';

/** An item with what is measured to it and how it is held. */
type Taped = Pick<SetOutItem, 'castIn' | 'taped' | 'way' | 'place'>;

/**
 * What holding adds to the taping, along each axis [mm]. A board's holes are in the scatter of its group already: what is left is how the whole
 * board moves. What a yard has measured of a way counts in full.
 */
function findHeld({ way, place }: Taped, draft: AssemblyDraft | null, isOnBoard: boolean): number {
  if (isOnBoard) return measured(way) ?? findBoardMovement(place);
  return draft?.scatter.position ?? 0;
}

function measured(way: HoldingWay | null): number | null {
  return way?.scatter?.position_mm ?? null;
}

/**
 * Standard deviations of the places of items [mm]: of what is measured by tape (a single item from the datum, a group from its centre, by least
 * squares), and of how each is held while the concrete is placed.
 * @param stops groups, or single items
 */
export function findScatters(
  stops: readonly (readonly Taped[])[],
  drafts: ReadonlyMap<CastIn, AssemblyDraft | null>,
  tapeClass: TapeClass,
): ReadonlyMap<CastIn, Scatter> {
  return new Map(
    stops.flatMap((members) => {
      const places = members.map(({ taped }) => taped);
      const isOnBoard = isBoardGroup(members.map(({ way }) => way));
      const taped =
        members.length === 1 ? [scatterOfPlace(tapeClass, places[0]!)] : ofGroup(places, isOnBoard, tapeClass);
      return members.map((member, i) => {
        const held = findHeld(member, drafts.get(member.castIn) ?? null, isOnBoard);
        return [member.castIn, addScatter(taped[i]!, { x: held, y: held })] as const;
      });
    }),
  );
}

function ofGroup(places: readonly Point[], hasTemplate: boolean, tapeClass: TapeClass): readonly Scatter[] {
  const centre = middleOf(places);
  return scatterOfGroup({
    tapeClass,
    centre,
    offsets: places.map(([x, y]): Point => [x - centre[0], y - centre[1]]),
    hasTemplate,
    diagonal: null,
  }).members;
}
