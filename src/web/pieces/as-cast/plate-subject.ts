import type { AsCastConnection, Remedy } from '../../../assess/as-cast/as-cast-report.ts';
import { findHoleRooms, findTightest } from '../../../assess/as-cast/hole-rooms.ts';
import type { PlateAsCast } from '../../../drawing/as-cast/plate-picture.ts';
import { answerFit, type FitAnswer } from '../../../say/fit-answer.ts';
import type { OpenPiece } from '../read-piece.ts';

/** Of places that were turned and shifted [mm]. */
const ROUNDING = 1e-6;

type Ground = Pick<OpenPiece, 'context' | 'plan'>;

/** The plate of a connection with a remedy, to be drawn; null: no plate is known. Without a remedy as designed. */
export function findPlate(
  { context, plan }: Ground,
  found: AsCastConnection,
  remedy: Remedy | null,
): PlateAsCast | null {
  const fixture = context.index.fixtureOf(found.connection);
  if (fixture === null) return null;
  return {
    panel: plan.setOut.panel,
    designed: found.connection,
    fixed: remedy?.connection ?? found.connection,
    fixture,
    holes: remedy?.holes ?? fixture.holes,
    members: found.members,
    hasLengths: true,
    unused: new Set(remedy?.change.unused ?? []),
  };
}

/** What moves the plate alone: where it lies best in the holes that it has. */
export function findBestFit({ remedies }: AsCastConnection): Remedy | null {
  return remedies.find(({ kind }) => kind === 'plate moved') ?? remedies.find(({ kind }) => kind === 'as is') ?? null;
}

function findLeastRoom(ground: Ground, found: AsCastConnection, remedy: Remedy | null) {
  const plate = findPlate(ground, found, remedy);
  return plate === null ? null : findTightest(findHoleRooms(plate.panel, plate.fixed, plate.holes, plate.members));
}

/** Whether the bracket of a connection goes on, for the person who stands before it. */
export function answerConnection(ground: Ground, found: AsCastConnection): FitAnswer {
  return answerFit(found, ground.plan.setOut.panel, {
    roomAsDrawn: findLeastRoom(ground, found, null)?.room ?? null,
    findLacking: () => {
      const tightest = findLeastRoom(ground, found, findBestFit(found));
      return tightest === null || tightest.room >= -ROUNDING ? null : { id: tightest.hole.id, lacks: -tightest.room };
    },
  });
}
